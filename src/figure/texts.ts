import type { Source } from '../dance/dance.ts'
import type { Metres, Radians, Share } from '../units.ts'
import { riseWords } from './readRise.ts'
import { readSource } from './readSource.ts'
import { swayWords } from './readSway.ts'
import { weightWords } from './readWeight.ts'

/**
 * The fraction with the smallest denominator that `from` makes `value` of; null when none does. A description takes
 * three figures over and under the line.
 */
function fractionText(value: number, from: (share: number) => number, mixed: boolean): string | null {
  const shares = value / from(1)
  for (let under = 1; under <= 999; under++) {
    const over = Math.round(shares * under)
    if (from(over / under) !== value) continue
    if (under === 1) return String(over)
    return mixed && over > under ? `${Math.floor(over / under)} ${over % under}/${under}` : `${over}/${under}`
  }
  return null
}

/** @throws RangeError for what no text of a description says */
function said(text: string | null, what: string, value: number): string {
  if (text === null) throw new RangeError(`no ${what} says ${value}`)
  return text
}

/** "3/8 left", "1 1/2 right", "none". @throws RangeError when no fraction of a turn says it */
export function turnText(by: Radians): string {
  if (by === 0) return 'none'
  const turns = fractionText(Math.abs(by), (share) => share * 2 * Math.PI, true)
  return `${said(turns, 'turn', by)} ${by < 0 ? 'left' : 'right'}`
}

/** "3/4", "1": a part of a whole, in steps of 1/48. */
export const beatText = (beats: number): string =>
  said(
    fractionText(beats, (share) => share, false),
    'beat value',
    beats,
  )

/** The reader's own word for a value; null when it has none. */
const wordFor = (value: number, words: Readonly<Record<string, number>>): string | null =>
  Object.keys(words).find((word) => words[word] === value) ?? null

const percentText = (part: number): string | null => {
  const percent = Math.round(part * 100)
  return percent >= 0 && percent / 100 === part ? `${percent} %` : null
}

/** "full", "half", "none", "1/3", "30 %". @throws RangeError when no text says it */
export function weightText(weight: Share): string {
  const text = wordFor(weight, weightWords) ?? percentText(weight) ?? fractionText(weight, (share) => share, false)
  return said(text, 'weight', weight)
}

/** "40 cm". @throws RangeError when it has more figures than a size may have */
export function sizeText(size: Metres): string {
  for (const [unit, perMetre] of [['cm', 100] as const, ['m', 1] as const]) {
    for (let places = 0; places <= 4; places++) {
      const text = (size * perMetre).toFixed(places)
      if (Number(text) / perMetre === size) return `${text} ${unit}`
    }
  }
  return said(null, 'size', size)
}

/** "down", "half up", "up", "30 %". @throws RangeError when it is no whole per cent */
export const riseText = (rise: number): string => said(wordFor(rise, riseWords) ?? percentText(rise), 'rise', rise)

/** @throws RangeError for a sway between the five */
export const swayText = (sway: number): string => said(wordFor(sway, swayWords), 'sway', sway)

/** "published, a list, page 3"; the longest have no room for the space. */
export function sourceText({ provenance, text }: Source): string {
  if (text === '') return provenance
  const spaced = `${provenance}, ${text}`
  return readSource(spaced, 'source').ok ? spaced : `${provenance},${text}`
}
