import { fault } from '../problem.ts'
import { type Radians, radians } from '../units.ts'
import { FRACTION_PATTERN, readFraction } from './readFraction.ts'
import { type Reading, read, refuse } from './reading.ts'
import { shownText } from './shownText.ts'

/** Whole turns in one action; more is a slip of the pen. */
const MOST = 2

/** What a turn looks like, for those who check without reading: "1/4 right", "3/8 to left", "none". */
export const TURN_PATTERN = `^\\s*(none|(${FRACTION_PATTERN}|[0-9]{1,3})\\s+(to\\s+)?(left|right))\\s*$`

/**
 * "1/4 right", "3/8 to left", "none": parts of a whole turn. To the right is positive.
 * @param key what is read, for the fault: turn, pivot, body turn
 */
export function readTurn(text: string, key: string): Reading<Radians> {
  if (text.trim() === 'none') return read(radians(0))
  const found = /^(.{1,20}?)\s+(?:to\s+)?(left|right)$/u.exec(text.trim().slice(0, 60))
  const part = found && readFraction(found[1] ?? '')
  if (!found || !part) return refuse(fault('turn-not-a-turn', { key, value: shownText(text) }))
  const turns = part.numerator / part.denominator
  if (turns > MOST) {
    return refuse(fault('number-out-of-range', { key, value: shownText(text), from: 0, to: MOST, unit: 'turn' }))
  }
  // Not −0, which JSON does not keep.
  return read(radians(turns === 0 ? 0 : (found[2] === 'left' ? -1 : 1) * turns * 2 * Math.PI))
}
