import { describe, expect, test } from 'vitest'
import {
  atTempo,
  beatAt,
  type Clock,
  clockThen,
  countedIn,
  paused,
  roundEnds,
  soughtTo,
  standingClock,
  within,
} from '../../src/clock/clock.ts'
import { beat, seconds } from '../../src/units.ts'

const range = { from: beat(-0.5), to: beat(3.5) }
const standing = standingClock(range, seconds(0.5), beat(4), seconds(0))
const at = (clock: Clock, now: number): number => beatAt(clock, seconds(now))

describe('countedIn(clock, at, when)', () => {
  const clock = countedIn(standing, beat(-4), seconds(0))

  test('counts from before the range into it, then goes round', () => {
    expect([0, 1, 1.75, 2, 3.5, 3.75].map((now) => at(clock, now))).toEqual([-4, -2, -0.5, 0, 3, -0.5])
  })

  test('without a round it ends where the range ends', () => {
    const once = countedIn(standingClock(range, seconds(0.5), null, seconds(0)), beat(-4), seconds(0))
    expect([0, 2, 99].map((now) => at(once, now))).toEqual([-4, 0, 3.5])
  })

  test('a change of tempo on the way keeps the beat; stopped, or sent elsewhere, nobody counts any more', () => {
    const slower = atTempo(clock, seconds(1), seconds(1))
    expect([at(slower, 1), at(slower, 2)]).toEqual([-2, -1])
    expect(at(paused(clock, seconds(1)), 1)).toBe(-0.5)
    expect(at(soughtTo(clock, beat(2), seconds(1)), 1.5)).toBe(3)
    // Another loop is begun at its start.
    expect(at(within(clock, { from: beat(0), to: beat(4) }, beat(4), seconds(1)), 1)).toBe(0)
  })

  test('never later than the start of the range', () => {
    expect(at(countedIn(standing, beat(2), seconds(0)), 0)).toBe(-0.5)
  })
})

describe('roundEnds(clock, now), and counting in from there on', () => {
  const round = countedIn(standing, range.from, seconds(0))

  test('is when the beat is at its start again', () => {
    for (const now of [0, 0.3, 1.99, 2, 7.1]) {
      const ends = roundEnds(round, seconds(now))
      expect(at(round, ends)).toBeCloseTo(-0.5, 9)
      expect(ends - now).toBeGreaterThan(0)
      expect(ends - now).toBeLessThanOrEqual(2)
    }
    expect(roundEnds(standing, seconds(3))).toBe(3)
  })

  test('the round is danced to its end at its own tempo, then counted in at the new one', () => {
    const ends = roundEnds(round, seconds(1.8))
    const next = atTempo(countedIn(round, beat(-4), ends), seconds(0.25), ends)
    const told = [1.8, 1.99, 2, 2.5, 2.875, 3].map((now) => at(next, now))
    expect(told).toEqual([3.1, 3.48, -4, -2, -0.5, 0].map((b) => expect.closeTo(b, 9)))
    expect([1.8, 2].map((now) => clockThen(next, seconds(now)).secondsPerBeat)).toEqual([0.5, 0.25])
  })

  test('asked for while another change is still to come: neither leaps nor stands', () => {
    const changing = atTempo(round, seconds(0.4), seconds(1.2))
    const next = countedIn(changing, beat(-4), seconds(20), seconds(1))
    for (let now = 0.9; now < 1.5; now += 0.01) {
      const step = at(next, now + 0.01) - at(next, now)
      expect(step).toBeGreaterThan(0.019)
      expect(step).toBeLessThan(0.026)
    }
  })
})
