/**
 * @typedef {{ file: string, isEntry?: boolean, imports?: string[], dynamicImports?: string[] }} Chunk
 * @typedef {Readonly<Record<string, Chunk>>} Manifest what Vite writes to `.vite/manifest.json`, by source
 */

/** Runs before the page's entry, as an entry of its own. */
const EARLY = /^stage\/earlyContext\./
/** Asked for lazily, but at once. */
const AT_ONCE = /^(stage\/|ui\/mountPage\.)/
/** The stage for machines without a GPU is loaded instead of the other, never besides it. */
const INSTEAD = /^stage\/canvasRenderer\./

/**
 * The code files that the page needs before its first picture and to answer after it: the entry and the script that runs
 * before it, what they import, and the stage and the page with what those import, though the entry asks for them lazily.
 * Other lazy parts come later.
 * @param {Manifest} manifest
 * @returns {readonly string[]} file names, each once, sorted
 * @throws when there is not exactly one page, or the manifest names a chunk it does not have
 */
export function firstPicture(manifest) {
  const entries = Object.keys(manifest).filter((key) => manifest[key]?.isEntry)
  const pages = entries.filter((key) => !EARLY.test(key))
  if (pages.length !== 1) throw new Error(`one entry expected, got ${pages.length}: ${pages.join(', ')}`)
  const files = new Set()
  const seen = new Set()
  const waiting = [...entries]
  for (let key = waiting.pop(); key !== undefined; key = waiting.pop()) {
    if (seen.has(key)) continue
    seen.add(key)
    const chunk = manifest[key]
    if (chunk === undefined) throw new Error(`the manifest does not know its own chunk "${key}"`)
    if (chunk.file.endsWith('.js')) files.add(chunk.file)
    const atOnce = (chunk.dynamicImports ?? []).filter((lazy) => AT_ONCE.test(lazy) && !INSTEAD.test(lazy))
    waiting.push(...(chunk.imports ?? []), ...atOnce)
  }
  return [...files].sort()
}
