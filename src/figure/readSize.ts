import { fault } from '../problem.ts'
import { type Metres, metres } from '../units.ts'
import { type Reading, read, refuse } from './reading.ts'
import { shownText } from './shownText.ts'

/** Longer than the longest lunge, in metres. */
const MOST = 2

/** What the text looks like, for those who check without reading. */
export const SIZE_PATTERN = '^\\s*[0-9]{1,4}(\\.[0-9]{1,4})?\\s*(cm|m)\\s*$'

/** "40 cm" or "0.4 m". */
export function readSize(text: string): Reading<Metres> {
  const found = /^(\d{1,4}(?:\.\d{1,4})?)\s*(cm|m)$/.exec(text.trim().slice(0, 40))
  if (!found) {
    return refuse(fault('value-unknown', { key: 'size', value: shownText(text), nearest: '', allowed: '40 cm, 0.4 m' }))
  }
  const size = Number(found[1]) / (found[2] === 'cm' ? 100 : 1)
  if (size > MOST) {
    return refuse(fault('number-out-of-range', { key: 'size', value: shownText(text), from: 0, to: MOST, unit: 'm' }))
  }
  return read(metres(size))
}
