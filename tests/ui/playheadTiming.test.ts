import { describe, expect, test } from 'vitest'
import { beatAt, type Clock, playing, soughtTo, standingClock } from '../../src/clock/clock.ts'
import { playheadTiming } from '../../src/ui/playheadTiming.ts'
import { beat, seconds } from '../../src/units.ts'

const range = { from: beat(-0.5), to: beat(7.5) }
const standing = standingClock(range, seconds(0.5), beat(8), seconds(10))

/** Where the browser has the playhead `now`, 0 … 1 of the axis, by the rules of a running animation. */
function shown(clock: Clock, startedAt: number, now: number): number {
  const { duration, until, iterations, at } = playheadTiming(clock)
  const into = at(clock.anchor.beat) + (now - startedAt) * 1000
  const run = Number.isFinite(iterations) ? Math.min(duration, into) : into % duration
  return (run / duration) * until
}

/** Where it should be. */
const wanted = (clock: Clock, now: number): number =>
  (beatAt(clock, seconds(now)) - clock.range.from) / (clock.range.to - clock.range.from)

describe('playheadTiming(clock)', () => {
  test('runs in step with the clock, over the seam of a loop and on', () => {
    const clock = playing(soughtTo(standing, beat(2), seconds(10)), seconds(10))
    for (let now = 10; now < 25; now += 0.13) expect(shown(clock, 10, now)).toBeCloseTo(wanted(clock, now), 9)
  })

  test('ends where the round ends, if beats are shown after it', () => {
    const clock = playing({ ...standing, range: { ...range, to: beat(9.5) } }, seconds(10))
    expect(playheadTiming(clock).until).toBeCloseTo(0.8, 12)
    for (let now = 10; now < 20; now += 0.13) expect(shown(clock, 10, now)).toBeCloseTo(wanted(clock, now), 9)
  })

  test('stays at the end where nothing is repeated', () => {
    const clock = playing({ ...standing, round: null }, seconds(10))
    expect(shown(clock, 10, 30)).toBe(1)
    expect(shown(clock, 10, 12)).toBeCloseTo(wanted(clock, 12), 9)
  })

  test('at rest the last beat is the right end, not the next start', () => {
    const clock = soughtTo(standing, range.to, seconds(10))
    const { duration, at, iterations, until } = playheadTiming(clock)
    expect([at(range.from), at(range.to), iterations, until]).toEqual([0, duration, 1, 1])
  })
})
