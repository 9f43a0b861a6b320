/** Names of which none is there twice: "late", "late 2". */
export function numbered(names: readonly string[]): string[] {
  const seen = new Map<string, number>()
  return names.map((name) => {
    const times = (seen.get(name) ?? 0) + 1
    seen.set(name, times)
    return times === 1 ? name : `${name} ${times}`
  })
}
