import { fault } from '../problem.ts'
import { type BeatValue, beatValue } from '../units.ts'
import { FRACTION_WORD_PATTERN, readFraction } from './readFraction.ts'
import { type Reading, read, refuse } from './reading.ts'
import { shownText } from './shownText.ts'

/** Beats; the longest line held by one action. */
const MOST = 16
const PARTS = beatValue(1)

/** What the text looks like, for those who check without reading. */
export const VALUES_PATTERN = `^[\\s,|]*((${FRACTION_WORD_PATTERN})([\\s,|]+|$))*$`

/** Beat values with spaces between them: "3/4 1/2 3/4". Each more than 0, in whole 1/48 of a beat. */
export function readValues(text: string): Reading<readonly BeatValue[]> {
  const values: BeatValue[] = []
  for (const word of text.split(/[\s,|]+/)) {
    if (word === '') continue
    const value = shownText(word)
    const fraction = readFraction(word)
    if (!fraction || (fraction.numerator * PARTS) % fraction.denominator !== 0) {
      return refuse(fault('value-unknown', { key: 'values', value, nearest: '', allowed: '1, 1/2, 3/4, 3/2' }))
    }
    const beats = fraction.numerator / fraction.denominator
    if (beats === 0 || beats > MOST) {
      return refuse(fault('number-out-of-range', { key: 'values', value, from: 1 / PARTS, to: MOST, unit: 'beat' }))
    }
    values.push(beatValue(fraction.numerator, fraction.denominator))
  }
  return read(values)
}
