import type { Dance } from '../../src/dance/dance.ts'
import { defaultTempo } from '../../src/dance/defaultTempo.ts'
import { playedTempoRange } from '../../src/dance/playedTempoRange.ts'
import { secondsPerBeat } from '../../src/dance/secondsPerBeat.ts'

/** The shortest time in which a dancer carries the weight across, comfortably and at the least, in seconds (own judgement). */
export const SHORTEST = [0.42, 0.25] as const

/** The shortest time in beats. @param seconds as above @param barsPerMinute left out: the dance’s own tempo */
export const shortestAt = (
  dance: Dance,
  seconds: number,
  barsPerMinute: number = defaultTempo(dance).barsPerMinute,
): number => seconds / secondsPerBeat(dance, barsPerMinute)

/** A tempo at which the dance can be played, bars a minute. @param part 0: the slowest, 1: the fastest */
export function playedTempo(dance: Dance, part: number): number {
  const { from, to } = playedTempoRange(dance)
  return from + part * (to - from)
}
