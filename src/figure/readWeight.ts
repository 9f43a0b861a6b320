import { fault } from '../problem.ts'
import { type Share, share } from '../units.ts'
import { nearestWord } from './nearestWord.ts'
import { FRACTION_PATTERN, readFraction } from './readFraction.ts'
import { type Reading, read, refuse } from './reading.ts'
import { shownText } from './shownText.ts'

export const weightWords: Readonly<Record<string, number>> = { full: 1, half: 0.5, none: 0 }

/** The part of 1 that the text names, by word, fraction or per cent; null for anything else. */
function part(text: string): number | null {
  const word = Object.hasOwn(weightWords, text) ? weightWords[text] : undefined
  if (word !== undefined) return word
  const perCent = /^(\d{1,3})\s*%$/.exec(text)
  if (perCent) return Number(perCent[1]) / 100
  // A bare number could be meant as a per cent: only what is written as a fraction is one.
  const fraction = /[^\d]/.test(text) ? readFraction(text) : null
  return fraction && fraction.numerator / fraction.denominator
}

/** What the text looks like, for those who check without reading. */
export const WEIGHT_PATTERN = `^\\s*(${Object.keys(weightWords).join('|')}|(0?[0-9]{1,2}|100)\\s*%|${FRACTION_PATTERN})\\s*$`

/** "full", "half", "none", "1/3" or "30 %". */
export function readWeight(text: string): Reading<Share> {
  const weight = part(text.trim().slice(0, 40))
  const value = shownText(text)
  if (weight === null) {
    const nearest = nearestWord(text, Object.keys(weightWords))
    return refuse(fault('value-unknown', { key: 'weight', value, nearest, allowed: 'full, half, none, 1/3, 30 %' }))
  }
  if (weight > 1) return refuse(fault('number-out-of-range', { key: 'weight', value, from: 0, to: 1, unit: 'weight' }))
  return read(share(weight))
}
