import { posix } from 'node:path'
import {
  GSAP_FILE,
  LAST_CORE_LAYER,
  LAYERS,
  LINE_LIMIT,
  NAMED_AFTER_NOTHING,
  NARROWER,
  PACKAGES,
  PROGRAMS,
} from './layers.ts'
import { type Import, scanModule } from './scanModule.ts'

const ENDING = /(\.d\.ts|\.tsx?|\.mjs)$/
const ASSET = /\.(css|svg|png|woff2)$/

/** `src/clock/tempo.ts` → `clock`, `src/player.ts` → `player`. */
const layerOf = (file: string): string => (file.split('/')[1] ?? '').replace(ENDING, '')

const rank = (layer: string): number => (LAYERS as readonly string[]).indexOf(layer)

/** Why the layer `from` may not import from the layer `to`; null when it may. */
function layerReason(from: string, to: string): string | null {
  if (from === to) return null
  if (PROGRAMS.includes(to)) return `${to} is a program of its own: nobody imports it`
  const narrower = NARROWER[from]
  if (narrower) return narrower.may.includes(to) ? null : narrower.reason
  return rank(to) < rank(from) ? null : `${to} comes after ${from}: ${LAYERS.join(' < ')}`
}

/** Why `file` may not import the package; null when it may. */
function packageReason(file: string, specifier: string): string | null {
  const entry = Object.entries(PACKAGES).find(
    ([name]) => specifier === name || specifier.startsWith(name.endsWith(':') ? name : `${name}/`),
  )
  if (!entry) return 'the package is not in the list of tests/tools/layers.ts'
  const [name, allowed] = entry
  if (allowed.includes(file) || allowed.includes(layerOf(file))) return null
  return `only ${allowed.join(', ')} may import ${name}`
}

function importReason(file: string, { specifier, reExport }: Import): string | null {
  if (reExport) return 'no re-exports: import a thing from where it lives'
  if (!specifier.startsWith('.')) return packageReason(file, specifier)
  const target = posix.join(posix.dirname(file), specifier)
  if (!target.startsWith('src/')) return 'it lies outside src'
  const from = layerOf(file)
  if (ASSET.test(target)) return ['ui', 'main'].includes(from) ? null : 'only ui and main bring styles and pictures'
  if (!ENDING.test(target)) return 'a relative import ends in .ts, .tsx or .mjs'
  const to = layerOf(target)
  if (target === GSAP_FILE && rank(from) <= rank(LAST_CORE_LAYER))
    return 'the core must not reach gsap: inject the driver'
  return layerReason(from, to)
}

/** `parse.ts` is named after `parseFigure`, `clock.ts` after `createClock`, `csp.mjs` after `CSP_META`. */
function isNamedAfter(file: string, exports: readonly string[]): boolean {
  const name = posix.basename(file).replace(ENDING, '')
  const words = (text: string) =>
    text
      .replace(/([a-z0-9])([A-Z])/g, '$1_$2')
      .toLowerCase()
      .split('_')
  const whole = words(name).join('_')
  // `glyphs.ts` may hold what there is to say about a glyph.
  const forms = [whole, whole.replace(/s$/, '')]
  return exports.some((it) => {
    const full = words(it).join('_')
    return forms.some((own) => full === own || full.startsWith(`${own}_`) || full.endsWith(`_${own}`))
  })
}

/**
 * Everything in the sources that is against the house's order, as lines `file:line: imports "x": reason`.
 * @param sources path from the repository's root (with `/`) → text; every `.ts`, `.tsx`, `.mjs` of `src/`
 */
export function checkArchitecture(sources: Readonly<Record<string, string>>): readonly string[] {
  return Object.entries(sources).flatMap(([file, source]) => {
    const found: string[] = []
    const layer = layerOf(file)
    if (layer !== 'serve' && rank(layer) < 0) return [`${file}: "${layer}" is not a layer: ${LAYERS.join(' < ')}`]
    const { imports, exports, lines } = scanModule(file, source)
    for (const one of imports) {
      const reason = importReason(file, one)
      if (reason !== null) found.push(`${file}:${one.line}: imports "${one.specifier}": ${reason}`)
    }
    if (lines > LINE_LIMIT) found.push(`${file}: ${lines} lines, ${LINE_LIMIT} are the end: one idea a file`)
    if (exports.includes('default')) found.push(`${file}: a default export: name it`)
    if (/(^|\/)index\.[^/]+$/.test(file)) found.push(`${file}: an index file hides where things live`)
    else if (!file.endsWith('.d.ts') && !NAMED_AFTER_NOTHING.includes(file) && !isNamedAfter(file, exports)) {
      found.push(`${file}: not named after one of its exports (${exports.join(', ') || 'there are none'})`)
    }
    return found
  })
}
