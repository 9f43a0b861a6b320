import { LAST_COUNT_ON } from './barCounter.ts'

type Sign =
  | { readonly kind: 'letter'; readonly sign: 'S' | 'Q' }
  | { readonly kind: 'split'; readonly sign: '&' | 'a' }
  /** "2": a step. */
  | { readonly kind: 'count'; readonly count: number }
  /** "(2)": a beat more for the step before. */
  | { readonly kind: 'held'; readonly count: number }
  /** "-1" of "4-1", "–8" of "1–8": a dash from a count to another. */
  | { readonly kind: 'dash'; readonly from: number; readonly count: number }
  /** "×2": all before, so many times altogether. */
  | { readonly kind: 'repeat'; readonly times: number }
  /** "(hold)": the count before it is a hold. */
  | { readonly kind: 'hold' }
  | { readonly kind: 'unknown' }

/** One sign of a timing; `at`: where it begins in the text, from 0. */
export type TimingToken = Sign & { readonly text: string; readonly at: number }

/** How far a bar is counted, and whether the counts go on beyond it, to 16. */
type Counts = { readonly beatsPerBar: number; readonly countsOn: boolean }

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

function afterSpaces(text: string, from: number): number {
  let next = from
  while (text.charAt(next) === ' ') next++
  return next
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

/** The count at `at`, to which a dash leads: two digits where one is no count that could come after `from`. */
function countAfterDash(text: string, at: number, from: number, { beatsPerBar, countsOn }: Counts): string {
  const digit = text.charAt(at)
  const two = text.slice(at, at + 2)
  if (!isDigit(two[1])) return digit
  if (countsOn) return Number(two) > from && Number(two) <= LAST_COUNT_ON ? two : digit
  const one = Number(digit)
  return one === (from % beatsPerBar) + 1 || (one > from && one <= beatsPerBar) ? digit : two
}

/** The dash at `at` and the count it leads to: "-1", "– 8" or ".1"; null when it leads to none. */
function dashAt(text: string, at: number, from: number, counts: Counts): (Sign & { readonly text: string }) | null {
  const dot = text.charAt(at) === '.'
  const next = dot ? at + 1 : afterSpaces(text, at + 1)
  if (!isDigit(text[next])) return null
  const digits = dot ? countAt(text, next, from, counts.countsOn) : countAfterDash(text, next, from, counts)
  return { kind: 'dash', from, count: Number(digits), text: text.slice(at, next + digits.length) }
}

/** The "×2" or "x 3" at `at`; null when no number comes. */
function repeatAt(text: string, at: number): (Sign & { readonly text: string }) | null {
  const next = afterSpaces(text, at + 1)
  let end = next
  while (isDigit(text[end])) end++
  return end === next ? null : { kind: 'repeat', times: Number(text.slice(next, end)), text: text.slice(at, end) }
}

/** The signs of a timing, in order, in one pass over the text. Spaces, bar lines and commas part signs and say nothing. */
export function scanTiming(text: string, counts: Counts): readonly TimingToken[] {
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
      const digits = countAt(text, at, previous, counts.countsOn)
      add({ kind: 'count', count: Number(digits) }, digits.length)
    } else if (sign === '&') {
      add({ kind: 'split', sign }, 1)
    } else if (sign === '(') {
      const bracket = bracketAt(text, at)
      add(bracket, bracket.text.length)
    } else if (/[-–.]/.test(sign)) {
      const from = tokens.at(-1)
      const dash = from?.kind === 'count' ? dashAt(text, at, from.count, counts) : null
      add(dash ?? { kind: 'unknown' }, dash?.text.length ?? 1)
    } else if (run <= 1 && /[x×]/i.test(sign)) {
      const repeat = repeatAt(text, at)
      add(repeat ?? { kind: 'unknown' }, repeat?.text.length ?? 1)
    } else if (run > 0 && /^[sqa]+$/i.test(text.slice(at, at + run))) {
      for (const letter of text.slice(at, at + run).toLowerCase()) add(LETTERS[letter] ?? { kind: 'unknown' }, 1)
    } else {
      add({ kind: 'unknown' }, run || String.fromCodePoint(text.codePointAt(at) ?? 0).length)
    }
  }
  return tokens
}
