/**
 * @typedef {{ file: string, isEntry?: boolean, imports?: string[], dynamicImports?: string[] }} Chunk
 * @typedef {Readonly<Record<string, Chunk>>} Manifest what Vite writes to `.vite/manifest.json`, by source
 */

/** The stage for machines without a GPU is loaded instead of the other, never besides it. */
const INSTEAD = /^stage\/canvasRenderer\./

/**
 * The code files that the page needs before its first picture: the entry, what it imports, and the stage with what
 * that imports, even where the entry asks for it lazily. Lazy parts that are not the stage come later.
 * @param {Manifest} manifest
 * @returns {readonly string[]} file names, each once, sorted
 * @throws when there is not exactly one entry, or the manifest names a chunk it does not have
 */
export function firstPicture(manifest) {
  const entries = Object.keys(manifest).filter((key) => manifest[key]?.isEntry)
  if (entries.length !== 1) throw new Error(`one entry expected, got ${entries.length}: ${entries.join(', ')}`)
  const files = new Set()
  const seen = new Set()
  const waiting = [...entries]
  for (let key = waiting.pop(); key !== undefined; key = waiting.pop()) {
    if (seen.has(key)) continue
    seen.add(key)
    const chunk = manifest[key]
    if (chunk === undefined) throw new Error(`the manifest does not know its own chunk "${key}"`)
    if (chunk.file.endsWith('.js')) files.add(chunk.file)
    const stage = (chunk.dynamicImports ?? []).filter((lazy) => lazy.startsWith('stage/') && !INSTEAD.test(lazy))
    waiting.push(...(chunk.imports ?? []), ...stage)
  }
  return [...files].sort()
}
