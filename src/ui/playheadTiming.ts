import type { Clock } from '../clock/clock.ts'

/** How the playhead runs from the left end of its axis (0) to `until` (1 = the right end). */
export type PlayheadTiming = {
  /** Milliseconds of one run. */
  readonly duration: number
  readonly until: number
  readonly iterations: number
  /** Milliseconds into the run at which the beat lies. */
  at(beat: number): number
}

/**
 * At rest the whole axis is one run, so that its end is not taken for the next round's start; while a loop plays, a run
 * is a round, over and over.
 */
export function playheadTiming({ playing, range, round, secondsPerBeat }: Clock): PlayheadTiming {
  const length = range.to - range.from
  const run = playing && round !== null ? round : length
  return {
    duration: run * secondsPerBeat * 1000,
    until: run / length,
    iterations: playing && round !== null ? Number.POSITIVE_INFINITY : 1,
    at: (beat) => (beat - range.from) * secondsPerBeat * 1000,
  }
}
