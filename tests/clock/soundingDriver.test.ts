import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { crankedDriver } from '../../src/clock/crankedDriver.ts'
import { type SoundTime, soundingDriver } from '../../src/clock/soundingDriver.ts'
import { evenly } from '../tools/evenly.ts'

/** A sound that is so far ahead of the page's clock, or none; asked for at the earliest so much later than it is heard. */
function madeSound(page: () => number) {
  const made = { ahead: null as number | null, later: 0.07 }
  const heardAt = (at: number): number | null => (made.ahead === null ? null : at + made.ahead)
  const sound: SoundTime = {
    heardAt,
    earliest: () => (made.ahead === null ? null : page() + made.ahead + made.later),
  }
  return { made, sound }
}

const FRAME = 1 / 60
const start = () => {
  const cranked = crankedDriver(100)
  const { made, sound } = madeSound(() => cranked.now())
  return { cranked, made, driver: soundingDriver(cranked, sound) }
}

describe('soundingDriver(driver, sound)', () => {
  test('without sound it is the page’s own time, frames and all', () => {
    const { cranked, driver } = start()
    let frames = 0
    driver.run(() => frames++)
    for (let k = 0; k < 10; k++) {
      cranked.crank(FRAME)
      expect(driver.now()).toBeCloseTo(cranked.now(), 9)
      expect([driver.next?.(), driver.toSound(driver.now())]).toEqual([driver.now(), null])
    }
    driver.rest()
    cranked.crank(FRAME)
    expect(frames).toBe(10)
  })
  test('it goes on by exactly what went by, whatever the sound does: on, off, another device, stalls, any order', () => {
    const event = fc.oneof(
      fc.record({ wait: evenly(0, 3) }),
      fc.record({ ahead: fc.option(evenly(-100, 100), { nil: null }) }),
      fc.record({ leap: evenly(-0.5, 0.5) }),
    )
    fc.assert(
      fc.property(fc.array(event, { maxLength: 40 }), (events) => {
        const { cranked, made, driver } = start()
        let before = driver.now()
        for (const one of events) {
          const wait = 'wait' in one ? one.wait : 0
          cranked.wait(wait)
          if ('ahead' in one) made.ahead = one.ahead
          const small = 'leap' in one && Math.abs(one.leap) <= 0.008
          if ('leap' in one && made.ahead !== null && !small) made.ahead += one.leap
          const now = driver.now()
          expect(now).toBeGreaterThanOrEqual(before)
          expect(Math.abs(now - before - wait)).toBeLessThanOrEqual(0.008 + 1e-9)
          expect(driver.next?.()).toBeGreaterThanOrEqual(now)
          before = now
        }
      }),
      { numRuns: 300, seed: 20261125 },
    )
  })
  test('what the sound leads by a little is followed, not mended: drift and jitter', () => {
    const { cranked, made, driver } = start()
    made.ahead = 5
    const first = driver.now()
    for (let k = 0; k < 600; k++) {
      cranked.wait(FRAME)
      made.ahead += 0.0001
      driver.now()
    }
    expect(driver.now() - first).toBeCloseTo(10.06, 6)
  })
  test('next() can still be asked of the sound: it lies as far ahead as the device needs, and toSound gives its time', () => {
    const { cranked, made, driver } = start()
    driver.now()
    cranked.wait(1)
    made.ahead = -42
    expect((driver.next?.() ?? 0) - driver.now()).toBeCloseTo(0.07, 9)
    expect(driver.toSound(driver.now())).toBeCloseTo(cranked.now() - 42, 9)
    made.later = -3
    expect(driver.next?.()).toBe(driver.now())
  })
})
