import { fault } from '../problem.ts'
import { type BeatValue, beatValue } from '../units.ts'
import { FRACTION_WORD_PATTERN, readFraction } from './readFraction.ts'
import { type Reading, read, type Slip } from './reading.ts'
import { shownText } from './shownText.ts'

/** Beats; the longest line held by one action. */
const MOST = 16
const PARTS = beatValue(1)
const ALLOWED = '1, 1/2, 3/4, 3/2'
/** Of one text: the first tell enough. */
const MOST_SLIPS = 20

/** What the text looks like, for those who check without reading. */
export const VALUES_PATTERN = `^[\\s,|]*((${FRACTION_WORD_PATTERN})([\\s,|]+|$))*$`

/** Beat values with spaces between them: "3/4 1/2 3/4". Each more than 0, in whole 1/48 of a beat. */
export function readValues(text: string): Reading<readonly BeatValue[]> {
  const values: BeatValue[] = []
  const slips: Slip[] = []
  for (const { 0: word, index: at } of text.matchAll(/[^\s,|]+/g)) {
    const value = shownText(word)
    const fraction = readFraction(word)
    if (!fraction || (fraction.numerator * PARTS) % fraction.denominator !== 0) {
      slips.push({ fault: fault('value-unknown', { key: 'values', value, nearest: '', allowed: ALLOWED }), at })
      continue
    }
    const beats = fraction.numerator / fraction.denominator
    if (beats === 0 || beats > MOST) {
      const range = { from: 1 / PARTS, to: MOST, unit: 'beat' } as const
      slips.push({ fault: fault('number-out-of-range', { key: 'values', value, ...range }), at })
      continue
    }
    values.push(beatValue(fraction.numerator, fraction.denominator))
  }
  return slips.length > 0 ? { ok: false, slips: slips.slice(0, MOST_SLIPS) } : read(values)
}
