/** "a", "a and b", "a, b and c". */
export function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? ''
  const rest = words.slice(0, -1)
  return rest.length === 0 ? last : `${rest.join(', ')} and ${last}`
}
