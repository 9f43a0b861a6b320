/** What of a module is asked here. */
type Module = { readonly importers: readonly string[] }

/** Where the first picture comes from: the entry, which draws it, and the stage, which it asks for lazily. */
const FIRST = /[\\/]src[\\/](main\.tsx|stage[\\/]stage\.ts)$/

/** Whether a module is needed for the first picture: it is imported from where that comes from, at whatever remove. */
export function neededFirst(id: string, moduleOf: (id: string) => Module | null): boolean {
  const seen = new Set([id])
  // A set goes on with what is added to it meanwhile.
  for (const one of seen) {
    if (FIRST.test(one)) return true
    for (const importer of moduleOf(one)?.importers ?? []) seen.add(importer)
  }
  return false
}
