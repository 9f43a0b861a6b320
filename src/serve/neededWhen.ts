/** What of a module is asked here. */
type Module = { readonly importers: readonly string[] }

/** Where the first picture comes from: the entry, which draws it, and the stage, which it asks for lazily. */
const FIRST = /[\\/]src[\\/](main\.tsx|stage[\\/]stage\.ts)$/
/** What makes the page answer after it. */
const PAGE = /[\\/]src[\\/]ui[\\/]mountPage\.tsx$/

/**
 * When a module is needed: for the first picture, for the page that answers, or later, by what is asked for; it is imported from
 * where that comes from, at whatever remove.
 */
export function neededWhen(id: string, moduleOf: (id: string) => Module | null): 'first' | 'page' | 'later' {
  const seen = new Set([id])
  // A set goes on with what is added to it meanwhile.
  for (const one of seen) for (const importer of moduleOf(one)?.importers ?? []) seen.add(importer)
  const all = [...seen]
  if (all.some((one) => FIRST.test(one))) return 'first'
  return all.some((one) => PAGE.test(one)) ? 'page' : 'later'
}
