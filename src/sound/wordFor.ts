const NUMBERS = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight'] as const
const SIGNS: Readonly<Record<string, string>> = { S: 'slow', Q: 'quick', '&': 'and', a: 'a' }

/**
 * The key in the voice of a count as written ("S", "&", "3"); null where the trade has no word for it.
 * A bar's number beyond eight begins again at one: music is mostly counted in phrases of eight bars, so that the ninth bar
 * is the first of the next phrase; no longer word would fit into a beat either.
 */
export function wordFor(text: string): string | null {
  const number = Number(text)
  if (Number.isInteger(number) && number >= 1) return NUMBERS[(number - 1) % NUMBERS.length] ?? null
  return SIGNS[text] ?? null
}
