import type { Dance } from './dance.ts'
import { defaultTempo } from './defaultTempo.ts'
import { playedTempoRange } from './playedTempoRange.ts'

/** How fast bars a minute are, as a part of the dance's usual tempo: 1 = its usual tempo. */
export const speedOf = (dance: Dance, barsPerMinute: number): number =>
  barsPerMinute / defaultTempo(dance).barsPerMinute

/** Bars a minute at a speed, held in what can be played. @param speed 1 = the dance's usual tempo */
export function atSpeed(dance: Dance, speed: number): number {
  const { from, to } = playedTempoRange(dance)
  return Math.min(to, Math.max(from, speed * defaultTempo(dance).barsPerMinute))
}

/** What a key or a button goes by: ten per cent. */
export const SPEED_STEP = 0.1

/**
 * Bars a minute one step of speed on: to the next whole step, so that 100 % is always one of them.
 * @param by the step with its sign
 * @param step above 0
 */
export function bySpeed(dance: Dance, barsPerMinute: number, by: number, step: number): number {
  const steps = speedOf(dance, barsPerMinute) / step
  const next = by > 0 ? Math.floor(steps + 1e-6) + 1 : Math.ceil(steps - 1e-6) - 1
  return atSpeed(dance, next * step)
}
