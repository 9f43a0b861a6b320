import type { Checkpoint } from '../figure/figure.ts'
import type { Curve } from '../transfer/curve.ts'
import { toBeat } from '../units.ts'
import { smooth } from './vector.ts'

/** What a track has reached by progress, in the order of progress; at least one. */
export type Track = readonly { readonly p: number; readonly value: number }[]

/**
 * A track's checkpoints by progress, so that who is late with the weight rises and turns late with it too.
 * @param checkpoints in the order of time, under the figure's first timing
 * @param ideal the plan's curve under that timing
 * @returns null for a track without checkpoints
 */
export function trackOf(checkpoints: readonly Checkpoint[], ideal: Curve): Track | null {
  if (checkpoints.length === 0) return null
  return checkpoints.map(({ at, value }) => ({ p: ideal.at(toBeat(at)), value }))
}

/**
 * The track at a progress: eased from checkpoint to checkpoint, held before the first and after the last. Of several at
 * one progress (the plan rests between them) the last counts.
 */
export function trackAt(track: Track, p: number): number {
  let before: Track[number] | null = null
  for (const point of track) {
    if (point.p > p) {
      if (before === null) return point.value
      return before.value + (point.value - before.value) * smooth((p - before.p) / (point.p - before.p))
    }
    before = point
  }
  return before?.value ?? 0
}
