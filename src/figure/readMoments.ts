import type { Dance } from '../dance/dance.ts'
import { type Fault, fault } from '../problem.ts'
import { type BeatValue, beatValue, toBeat } from '../units.ts'
import { countsOnBeyondBar, LAST_COUNT_ON } from './barCounter.ts'
import type { OwnMoments } from './figure.ts'
import { shownText } from './shownText.ts'

export type MomentKey = keyof OwnMoments

/** In the order in which they happen. */
export const momentKeys: readonly MomentKey[] = ['leaves', 'touches', 'split', 'full']

export type MomentFault = { readonly fault: Fault; readonly key: MomentKey }

/** Where in its beat a count with & or a lies. */
export const countParts: Readonly<Record<string, BeatValue>> = {
  '': beatValue(0),
  '&': beatValue(1, 2),
  a: beatValue(3, 4),
}

/** The highest count that can be named. */
export const lastCount = (dance: Dance): number => (countsOnBeyondBar(dance) ? LAST_COUNT_ON : dance.beatsPerBar)

const COUNT = '(0?[1-9]|[1-9][0-9])\\s*(&|a)?\\s*$'
/** "2", "2 &", "2 a": what a count looks like, for those who check without reading. */
export const COUNT_PATTERN = `^\\s*${COUNT}`
/** "1 &", "bar 2, 1 &": the same with its bar. */
export const AT_PATTERN = `^\\s*(bar\\s+[0-9]{1,3}(\\s*,)?\\s+)?${COUNT}`

/** A count from the bar's count 1, in 1/48 beat; null when the text is no count of the dance. */
export function countInBar(text: string, dance: Dance): number | null {
  const found = /^(\d{1,2})\s*(&|a)?$/.exec(text.trim().slice(0, 20))
  const count = Number(found?.[1] ?? 0)
  if (!found || count < 1 || count > lastCount(dance)) return null
  return beatValue((count - 1) % dance.beatsPerBar) + (countParts[found[2] ?? ''] ?? 0)
}

/**
 * An action's own moments, written as counts ("2", "2 &", "2 a"), in beats from the count on which it is called.
 * Of the counts of that name the nearest is meant, of two equally near the later.
 * @param texts what is written, moment by moment
 * @param called where in the bar the action is called, in 1/48 beat from count 1; any number of bars on
 * @returns the moments that could be read, and all that is wrong
 */
export function readMoments(
  texts: Readonly<Partial<Record<MomentKey, string>>>,
  called: number,
  dance: Dance,
): { readonly moments: OwnMoments; readonly faults: readonly MomentFault[] } {
  const bar: number = beatValue(dance.beatsPerBar)
  const last = lastCount(dance)
  const moments: { -readonly [Key in MomentKey]?: BeatValue } = {}
  const faults: MomentFault[] = []
  let before: { key: MomentKey; value: BeatValue } | null = null
  for (const key of momentKeys) {
    const text = texts[key]
    if (text === undefined) continue
    const count = countInBar(text, dance)
    if (count === null) {
      faults.push({ key, fault: fault('moment-not-a-count', { key, value: shownText(text), last }) })
      continue
    }
    const later = (((count - called) % bar) + bar) % bar
    const value = (later * 2 <= bar ? later : later - bar) as BeatValue
    if (before && before.value > value) {
      const [earlierAt, laterAt] = [toBeat(before.value), toBeat(value)]
      const order = { earlier: before.key, earlierAt, later: key, laterAt }
      faults.push({ key, fault: fault('moments-out-of-order', order) })
    }
    moments[key] = value
    before = { key, value }
  }
  return { moments, faults }
}
