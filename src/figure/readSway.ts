import { fault } from '../problem.ts'
import { nearestWord } from './nearestWord.ts'
import { type Reading, read, refuse } from './reading.ts'
import { shownText } from './shownText.ts'

/** Of the sway: to the right is positive. */
export const swayWords: Readonly<Record<string, number>> = {
  left: -1,
  'slightly left': -0.5,
  none: 0,
  'slightly right': 0.5,
  right: 1,
}

/** What the text looks like, for those who check without reading. */
export const SWAY_PATTERN = `^\\s*(${Object.keys(swayWords).join('|')})\\s*$`

/** "left", "slightly right", "none". */
export function readSway(text: string): Reading<number> {
  const plain = text.trim().slice(0, 40)
  if (Object.hasOwn(swayWords, plain)) return read(swayWords[plain] as number)
  const nearest = nearestWord(plain, Object.keys(swayWords))
  const allowed = Object.keys(swayWords).join(', ')
  return refuse(fault('value-unknown', { key: 'sway', value: shownText(text), nearest, allowed }))
}
