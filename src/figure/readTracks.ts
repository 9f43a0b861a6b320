import type { Dance } from '../dance/dance.ts'
import { fault } from '../problem.ts'
import { type BeatValue, beatValue, sumOfValues } from '../units.ts'
import type { Checkpoint, Timing, Tracks } from './figure.ts'
import type { Finding } from './finding.ts'
import { countInBar, lastCount } from './readMoments.ts'
import type { Shape } from './readShape.ts'
import { shownText } from './shownText.ts'

type TrackKey = 'body turn' | 'rise and fall' | 'sway'

/** Where each track goes in a figure. */
const TRACKS: Readonly<Record<TrackKey, keyof Tracks>> = {
  'body turn': 'bodyTurn',
  'rise and fall': 'rise',
  sway: 'sway',
}

export const trackKeys = Object.keys(TRACKS) as readonly TrackKey[]

/** "bar 2, 1 &": the bar (of the first action: 1) and the count. */
const WITH_BAR = /^bar\s+(\d{1,3})\s*,?\s+(.{1,20})$/

/**
 * The tracks of a figure. A count without its bar is the first of that name after the entry before; the first entry's is
 * the one nearest the first action.
 * @param timing the figure's first; null when there is none to go by
 */
export function readTracks(
  shape: Shape,
  timing: Timing | null,
  dance: Dance | null,
): { readonly tracks: Tracks; readonly findings: readonly Finding[] } {
  const findings: Finding[] = []

  function readOne(key: TrackKey): Checkpoint[] {
    if (shape.isRefused([key]) || shape.isRefused([]) || !dance || !timing) return []
    const bar: number = beatValue(dance.beatsPerBar)
    const called = beatValue(timing.firstCount - 1)
    const end = sumOfValues(timing.values)
    const checkpoints: Checkpoint[] = []
    for (const [index, entry] of (shape.written[key] ?? []).entries()) {
      const path = [key, index, 'at']
      if (!shape.isSound(path)) continue
      const { at, to } = entry
      const before = checkpoints.at(-1)?.at ?? null
      const [, barText, inside = at] = WITH_BAR.exec(at.trim().slice(0, 40)) ?? []
      const count = countInBar(inside, dance)
      if (count === null) {
        const last = lastCount(dance)
        findings.push({ fault: fault('moment-not-a-count', { key: 'at', value: shownText(at), last }), path })
        continue
      }
      let time: number
      if (barText !== undefined) {
        time = (Number(barText) - 1) * bar + count - called
      } else if (before === null) {
        const later = (((count - called) % bar) + bar) % bar
        time = later * 2 <= bar ? later : later - bar
      } else {
        const later = (((count - called - before) % bar) + bar) % bar
        time = before + (later === 0 ? bar : later)
      }
      if (before !== null && time <= before) {
        findings.push({ fault: fault('track-out-of-order', { key, at: shownText(at) }), path })
      } else if (time < -bar || time > end + bar) {
        findings.push({ fault: fault('track-outside', { key, at: shownText(at) }), path })
      } else {
        checkpoints.push({ at: time as BeatValue, value: to })
      }
    }
    return checkpoints
  }

  const tracks: { -readonly [Key in keyof Tracks]: readonly Checkpoint[] } = { bodyTurn: [], rise: [], sway: [] }
  for (const key of trackKeys) tracks[TRACKS[key]] = readOne(key)
  return { tracks, findings }
}
