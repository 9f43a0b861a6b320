import { fault } from '../problem.ts'
import { nearestWord } from './nearestWord.ts'
import { type Reading, read, refuse } from './reading.ts'
import { shownText } from './shownText.ts'

/** Of the rise: 0 = down, 1 = up. */
const RISES: Readonly<Record<string, number>> = { down: 0, 'half up': 0.5, up: 1 }
/** Of the sway: to the right is positive. */
const SWAYS: Readonly<Record<string, number>> = {
  left: -1,
  'slightly left': -0.5,
  none: 0,
  'slightly right': 0.5,
  right: 1,
}

/** "down", "half up", "up" or "30 %" of the way up. */
export function readRise(text: string): Reading<number> {
  const plain = text.slice(0, 40).trim()
  if (Object.hasOwn(RISES, plain)) return read(RISES[plain] as number)
  const value = shownText(text)
  const perCent = /^(\d{1,3})\s*%$/.exec(plain)
  if (perCent) {
    const part = Number(perCent[1]) / 100
    if (part <= 1) return read(part)
    return refuse(fault('number-out-of-range', { key: 'rise and fall', value, from: 0, to: 1, unit: 'rise' }))
  }
  const nearest = nearestWord(plain, Object.keys(RISES))
  const allowed = `${Object.keys(RISES).join(', ')}, 30 %`
  return refuse(fault('value-unknown', { key: 'rise and fall', value, nearest, allowed }))
}

/** "left", "slightly right", "none". */
export function readSway(text: string): Reading<number> {
  const plain = text.slice(0, 40).trim()
  if (Object.hasOwn(SWAYS, plain)) return read(SWAYS[plain] as number)
  const nearest = nearestWord(plain, Object.keys(SWAYS))
  const allowed = Object.keys(SWAYS).join(', ')
  return refuse(fault('value-unknown', { key: 'sway', value: shownText(text), nearest, allowed }))
}
