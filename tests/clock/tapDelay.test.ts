import { describe, expect, test } from 'vitest'
import { type HeardTap, tapDelay, WANTED_TAPS } from '../../src/clock/tapDelay.ts'
import { dances } from '../../src/dance/dances.ts'
import { playedTempoRange } from '../../src/dance/playedTempoRange.ts'
import { seconds } from '../../src/units.ts'
import { near } from '../tools/near.ts'
import { seededNormal } from '../tools/seededNormal.ts'

/** What this test's tappers do: 25 ms early, which is what is allowed for. */
const EARLY = 0.025
const upTo = (count: number): number[] => Array.from({ length: count }, (_, k) => k)

/** Taps of somebody who taps at `lags` seconds after the beats' being heard; beats of `lasts` seconds from second 40.3 on. */
const heard = (at: readonly { beat: number; lag: number }[], delay: number, lasts: number, set = 0): HeardTap[] =>
  at.map(({ beat, lag }) => {
    // The picture waits for what is set already.
    const time = 40.3 + beat * lasts + delay - set - EARLY + lag
    return { at: seconds(time), shown: seconds(40.3 + Math.floor((time - 40.3) / lasts) * lasts) }
  })

const delayOf = (taps: readonly HeardTap[], lasts = 1, set = 0): number => {
  const found = tapDelay(taps, lasts, set)
  if (found.kind !== 'found') throw new Error(`${found.kind} after ${taps.length} taps`)
  return found.delay
}

const DELAYS = [0, 0.02, 0.06, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35]

describe('tapDelay(taps, seconds per beat, set)', () => {
  test('an even tapper: the delay to 1e-9, and no spread, whatever is set already', () => {
    for (const delay of [...DELAYS, 0.4]) {
      for (const set of [0, 0.1, 0.4]) {
        const taps = heard(
          upTo(16).map((beat) => ({ beat, lag: 0 })),
          delay,
          1,
          set,
        )
        const found = tapDelay(taps, 1, set)
        expect(found.kind).toBe('found')
        near(delayOf(taps, 1, set), delay, 1e-9, 'set', set)
        if (found.kind === 'found') near(found.spread, 0, 1e-9)
      }
    }
  })
  test('how many are still wanted; a second tap on a beat is none', () => {
    const taps = heard(
      upTo(16).map((beat) => ({ beat, lag: 0 })),
      0.2,
      1,
    )
    expect(tapDelay([], 1, 0)).toEqual({ kind: 'more', taps: WANTED_TAPS })
    expect(tapDelay(taps.slice(0, 5), 1, 0)).toEqual({ kind: 'more', taps: WANTED_TAPS - 5 })
    const twice = taps.slice(0, 5).flatMap((tap) => [tap, { ...tap, at: seconds(tap.at + 0.09) }])
    expect(tapDelay(twice, 1, 0)).toEqual({ kind: 'more', taps: WANTED_TAPS - 5 })
  })
  /** Who taps with 20 ms (rms), misses one in ten, bounces at one in ten, and needs two taps to come in. */
  const person = (normal: () => number, random: () => number) =>
    upTo(16).flatMap((beat) => {
      const lag = 0.02 * normal() + (beat < 2 ? 0.08 * normal() : 0)
      if (random() < 0.1) return []
      return random() < 0.1
        ? [
            { beat, lag },
            { beat, lag: lag + 0.1 + 0.1 * random() },
          ]
        : [{ beat, lag }]
    })
  test('people, 0 to 350 ms, taps missed and doubled: within 15 ms in 98 of 100 tests, 6 ms rms', () => {
    const normal = seededNormal(20261126)
    // Of a normal number the part after the third digit is as good as even.
    const random = (): number => Math.abs(normal() * 1000) % 1
    const errors = DELAYS.flatMap((delay) =>
      upTo(120).map(() => {
        let taps = heard(person(normal, random), delay, 1)
        for (let more = 0; tapDelay(taps, 1, 0).kind === 'more'; more++)
          taps = [...taps, ...heard([{ beat: 16 + more, lag: 0.02 * normal() }], delay, 1)]
        return delayOf(taps) - delay
      }),
    )
    const within = errors.filter((error) => Math.abs(error) <= 0.015).length / errors.length
    expect(within).toBeGreaterThan(0.98)
    expect(Math.sqrt(errors.reduce((sum, error) => sum + error ** 2, 0) / errors.length)).toBeLessThan(0.0065)
  })
  test('every other beat, and every half beat: the same', () => {
    const normal = seededNormal(4)
    for (const delay of DELAYS) {
      for (const step of [2, 0.5]) {
        const taps = heard(
          upTo(16 * Math.max(1, 1 / step)).map((k) => ({ beat: k * step, lag: 0.012 * normal() })),
          delay,
          1,
        )
        near(delayOf(taps), delay, 0.015, 'every', step)
      }
    }
  })
  test('too uneven: at random, and at another tempo', () => {
    const normal = seededNormal(5)
    const random = (): number => Math.abs(normal() * 1000) % 1
    const even = (count: number, lag: () => number): number =>
      upTo(300).filter(() => {
        const taps = upTo(count).map((beat) => ({ beat, lag: lag() }))
        return tapDelay(heard(taps, 0.2, 1), 1, 0).kind === 'found'
      }).length
    // Some lie together by chance.
    expect(even(20, random)).toBeLessThan(15)
    const other = heard(
      upTo(20).map((beat) => ({ beat: beat * 1.07, lag: 0 })),
      0.2,
      1,
    )
    expect(tapDelay(other, 1, 0).kind).toBe('uneven')
    expect(even(20, () => 0.1 * normal())).toBeLessThan(40)
    expect(even(20, () => 0.02 * normal())).toBe(300)
  })
  test('what was tapped badly before is left behind', () => {
    const normal = seededNormal(6)
    const before = upTo(20).map((beat) => ({ beat, lag: 0.3 * normal() }))
    const after = upTo(40).map((beat) => ({ beat: 20 + beat, lag: 0.01 * normal() }))
    near(delayOf(heard([...before, ...after], 0.18, 1)), 0.18, 0.015)
  })
  test('no dance is played so quickly in the test that a beat would be too short', () => {
    expect(() => tapDelay([], 0.79, 0)).toThrow('0.8 s')
    for (const dance of Object.values(dances)) {
      const { from, to } = playedTempoRange(dance)
      // The test plays at 60 beats a minute, or as near to it as the dance is played.
      const perMinute = Math.min(to * dance.beatsPerBar, Math.max(from * dance.beatsPerBar, 60))
      expect(60 / perMinute, dance.name).toBeGreaterThanOrEqual(0.8)
    }
  })
})
