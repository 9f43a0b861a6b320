import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { beatAt, type Clock, clockThen, countedIn, playing, standingClock } from '../../src/clock/clock.ts'
import { beforeStart, behindMusic, type MusicFit, withMusic } from '../../src/clock/withMusic.ts'
import { type Beat, beat, seconds } from '../../src/units.ts'
import { evenly } from '../tools/evenly.ts'
import { near } from '../tools/near.ts'

/** Two bars of four over and over, half a second a beat, from half a beat before the first count on. */
const RANGE = { from: beat(-0.5), to: beat(7.5) }
const clock = (round: Beat | null = beat(8)): Clock =>
  playing(standingClock(RANGE, seconds(0.5), round, seconds(10)), seconds(10))
const oneAt = (one: number, every = 4): MusicFit => ({ one: seconds(one), at: 0, beatsPerBar: 4, every })
const t = seconds

describe('withMusic(clock, fit, when)', () => {
  test('from then on the first count falls on a one of the music, over and over, for minutes', () => {
    for (const one of [3, 8.9, 10, 11.37, 200]) {
      const after = withMusic(clock(), oneAt(one), t(13))
      for (let now = 16; now < 400; now += 1.618) near(behindMusic(after, oneAt(one), t(now)), 0, 1e-9, one, now)
    }
  })
  test('a little is mended over four beats: no jump, never back, the tempo off by 3 % at the most', () => {
    fc.assert(
      fc.property(evenly(-0.12, 0.12), (behind) => {
        const before = clock()
        // At 13 s it is at beat 5.5; the music is so much further.
        const to = oneAt(13 - (5.5 + behind) * 0.5)
        near(behindMusic(before, to, t(13)), behind, 1e-9)
        const after = withMusic(before, to, t(13))
        near(beatAt(after, t(13)), 5.5, 1e-9)
        let last = 5.5
        for (let now = 13.05; now < 14; now += 0.05) {
          const at = beatAt(after, t(now))
          near((at - last) / 0.1, 1, 0.031, now)
          last = at
        }
        near(behindMusic(after, to, t(15.001)), 0, Math.abs(behind) < 0.002 ? 0.002 : 1e-9)
      }),
    )
  })
  test('less than a millisecond is left as it is: the very same clock', () => {
    const before = clock()
    expect(withMusic(before, oneAt(13 - 5.501 * 0.5), t(13))).toBe(before)
  })
  test('more: at once, by half a bar at the most; what comes before goes on as it did', () => {
    for (const behind of [-1.9, -1, -0.2, 0.2, 0.5, 1.9]) {
      const to = oneAt(13 - (5.5 + behind) * 0.5)
      const after = withMusic(clock(), to, t(13.1))
      near(beatAt(after, t(13.099)), 5.698, 1e-9)
      near(beatAt(after, t(13.1)), ((5.7 + behind + 0.5) % 8) - 0.5, 1e-9, behind)
    }
  })
  test('while it is counted in: still counted in, on another beat', () => {
    const counted = countedIn(clock(), beat(-3.5), t(13))
    for (const behind of [-1.7, -0.5, 0.5, 1.7]) {
      const to = oneAt(13.2 - (-3.1 + behind) * 0.5)
      const after = withMusic(counted, to, t(13.2))
      expect(beatAt(after, t(13.2))).toBeLessThan(-0.5)
      near(behindMusic(after, to, t(13.2)), 0, 1e-9, behind)
    }
    // Less than what was to be mended is left of it.
    const late = withMusic(countedIn(clock(), beat(-1), t(13)), oneAt(13 - 0.5 * 0.5), t(13))
    near(beatAt(late, t(13)), -3.5, 1e-9)
  })
  test('danced once: never before its start, and over at its end', () => {
    const early = clock(null)
    near(beatAt(withMusic(early, oneAt(10 - 3 * 0.5), t(10)), t(10)), 3, 1e-9)
    for (const behind of [-1.5, 1.5]) {
      const after = withMusic(early, oneAt(10.1 - (-0.3 + behind) * 0.5), t(10.1))
      expect(beatAt(after, t(10.1))).toBeGreaterThanOrEqual(-0.5)
      near(behindMusic(after, oneAt(10.1 - (-0.3 + behind) * 0.5), t(10.1)), 0, 1e-9)
    }
  })
  test('by beats alone: half a beat is the most', () => {
    for (const behind of [-3.3, -0.4, 0.3, 2.2])
      expect(Math.abs(behindMusic(clock(), oneAt(13 - (5.5 + behind) * 0.5, 1), t(13)))).toBeLessThanOrEqual(0.5)
  })
  test('from a moment still to come on, where something sounds until then: it goes on without standing', () => {
    const after = withMusic(clock(), oneAt(13.1 - 5.75 * 0.5), t(13.1))
    for (let now = 13; now < 13.1; now += 0.01) near(beatAt(after, t(now)), 5.5 + (now - 13) * 2, 1e-9, now)
  })
  test('mended again in the middle of it: still no jump', () => {
    const first = withMusic(clock(), oneAt(13 - 5.6 * 0.5), t(13))
    const again = withMusic(first, oneAt(13 - 5.45 * 0.5), t(13.7))
    near(beatAt(again, t(13.7)), beatAt(first, t(13.7)), 1e-9)
    near(behindMusic(again, oneAt(13 - 5.45 * 0.5), t(16)), 0, 1e-9)
    expect(clockThen(again, t(30)).former).toBeDefined()
  })
})

describe('beforeStart(clock, fit, least, when)', () => {
  test('it comes to its start in time with the music: after so many beats, and less than a bar more', () => {
    fc.assert(
      fc.property(evenly(-100, 100), fc.constantFrom(1, 4, 8), (one, least) => {
        const begins = beforeStart(clock(), oneAt(one), least, t(13))
        expect(-0.5 - begins).toBeGreaterThanOrEqual(least - 1e-9)
        expect(-0.5 - begins).toBeLessThan(least + 4 + 1e-9)
        near(behindMusic(countedIn(clock(), begins, t(13)), oneAt(one), t(13)), 0, 1e-9)
      }),
    )
  })
})
