import { fault } from '../problem.ts'
import { nearestWord } from './nearestWord.ts'
import { type Reading, read, refuse } from './reading.ts'
import { shownText } from './shownText.ts'

/** Of the rise: 0 = down, 1 = up. */
export const riseWords: Readonly<Record<string, number>> = { down: 0, 'half up': 0.5, up: 1 }

/** What the text looks like, for those who check without reading. */
export const RISE_PATTERN = `^\\s*(${Object.keys(riseWords).join('|')}|(0?[0-9]{1,2}|100)\\s*%)\\s*$`

/** "down", "half up", "up" or "30 %" of the way up. */
export function readRise(text: string): Reading<number> {
  const plain = text.trim().slice(0, 40)
  if (Object.hasOwn(riseWords, plain)) return read(riseWords[plain] as number)
  const value = shownText(text)
  const perCent = /^(\d{1,3})\s*%$/.exec(plain)
  if (perCent) {
    const part = Number(perCent[1]) / 100
    if (part <= 1) return read(part)
    return refuse(fault('number-out-of-range', { key: 'rise and fall', value, from: 0, to: 1, unit: 'rise' }))
  }
  const nearest = nearestWord(plain, Object.keys(riseWords))
  const allowed = `${Object.keys(riseWords).join(', ')}, 30 %`
  return refuse(fault('value-unknown', { key: 'rise and fall', value, nearest, allowed }))
}
