type Sign =
  | { readonly kind: 'letter'; readonly sign: 'S' | 'Q' }
  | { readonly kind: 'split'; readonly sign: '&' | 'a' }
  /** "2": a step; "(2)": a beat more for the step before; "-1" of "4-1": the same, tied to the count before. */
  | { readonly kind: 'count' | 'held' | 'tied'; readonly count: number }
  /** "(hold)": the count before it is a hold. */
  | { readonly kind: 'hold' }
  | { readonly kind: 'unknown' }

/** One sign of a timing; `at`: where it begins in the text, from 0. */
export type TimingToken = Sign & { readonly text: string; readonly at: number }

const LETTERS: Readonly<Record<string, Sign>> = {
  s: { kind: 'letter', sign: 'S' },
  q: { kind: 'letter', sign: 'Q' },
  a: { kind: 'split', sign: 'a' },
}

/** The longest that can stand in brackets, brackets included. */
const BRACKETS = 12

const isDigit = (sign: string | undefined): boolean => sign !== undefined && sign >= '0' && sign <= '9'

/** The length of the run of letters that begins at `from`. */
function letters(text: string, from: number): number {
  let end = from
  while (end < text.length && /\p{L}/u.test(text.charAt(end))) end++
  return end - from
}

/**
 * The count at `at`, by the digits. Figures write counts without spaces (123, 12&3), so that a digit is a count;
 * two digits are one only where the dance counts on beyond the bar and nine came before.
 */
function countAt(text: string, at: number, previous: number | null, countsOn: boolean): string {
  const two = text.slice(at, at + 2)
  return countsOn && previous !== null && two === String(previous + 1) ? two : text.charAt(at)
}

/** What stands in brackets at `at`. */
function bracketAt(text: string, at: number): Sign & { readonly text: string } {
  const near = text.slice(at, at + BRACKETS)
  const end = near.indexOf(')')
  if (end < 0) return { kind: 'unknown', text: near.trimEnd() }
  const whole = near.slice(0, end + 1)
  const inside = whole.slice(1, -1).trim()
  if (/^\d{1,2}$/.test(inside)) return { kind: 'held', count: Number(inside), text: whole }
  return { kind: inside.toLowerCase() === 'hold' ? 'hold' : 'unknown', text: whole }
}

/** The tie at `at` and the count it leads to: "-1", "– 1" or ".1"; null when it ties nothing. */
function tieAt(text: string, at: number, previous: number | null, countsOn: boolean) {
  let next = at + 1
  if (text.charAt(at) !== '.') while (text.charAt(next) === ' ') next++
  if (!isDigit(text[next])) return null
  const digits = countAt(text, next, previous, countsOn)
  return { kind: 'tied' as const, count: Number(digits), text: text.slice(at, next + digits.length) }
}

/**
 * The signs of a timing, in order, in one pass over the text. Spaces, bar lines and commas part signs and say nothing.
 * @param countsOn whether the dance's counts go on beyond the bar, to 16
 */
export function scanTiming(text: string, countsOn: boolean): readonly TimingToken[] {
  const tokens: TimingToken[] = []
  let previous: number | null = null
  let at = 0
  const add = (sign: Sign, length: number): void => {
    tokens.push({ ...sign, text: text.slice(at, at + length), at })
    if ('count' in sign) previous = sign.count
    at += length
  }
  while (at < text.length) {
    const sign = text.charAt(at)
    const run = letters(text, at)
    if (/[\s|,/]/.test(sign)) {
      at++
    } else if (isDigit(sign)) {
      const digits = countAt(text, at, previous, countsOn)
      add({ kind: 'count', count: Number(digits) }, digits.length)
    } else if (sign === '&') {
      add({ kind: 'split', sign }, 1)
    } else if (sign === '(') {
      const bracket = bracketAt(text, at)
      add(bracket, bracket.text.length)
    } else if (/[-–.]/.test(sign)) {
      const tie = tokens.at(-1)?.kind === 'count' ? tieAt(text, at, previous, countsOn) : null
      add(tie ?? { kind: 'unknown' }, tie?.text.length ?? 1)
    } else if (run > 0 && /^[sqa]+$/i.test(text.slice(at, at + run))) {
      for (const letter of text.slice(at, at + run).toLowerCase()) add(LETTERS[letter] ?? { kind: 'unknown' }, 1)
    } else {
      add({ kind: 'unknown' }, run || String.fromCodePoint(text.codePointAt(at) ?? 0).length)
    }
  }
  return tokens
}
