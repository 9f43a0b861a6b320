import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { heardTime } from '../../src/sound/heardTime.ts'
import { FROZEN, stillWatch } from '../../src/sound/stillWatch.ts'
import { evenly } from '../tools/evenly.ts'

const rms = (values: readonly number[]): number => Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length)
/** How far each is from their mean. */
const about = (values: readonly number[]): number[] => {
  const mean = values.reduce((sum, v) => sum + v, 0) / values.length
  return values.map((v) => v - mean)
}

/** Followed for some seconds, once it has settled: what is told less what is true. */
function followed(step: number, rate: number, asksInAFrame: number, drift = 0): { told: number[]; off: number[] } {
  const sound = (page: number): number => (page - 3) * (1 + drift)
  const stepped = (page: number): number => Math.floor(sound(page) / step) * step
  const time = heardTime({ page: 10, sound: stepped(10) })
  const [told, off]: [number[], number[]] = [[], []]
  for (let frame = 1; frame < 20 * rate; frame++) {
    const page = 10 + frame / rate
    for (let ask = 0; ask < asksInAFrame; ask++) time.learn({ page, sound: stepped(page) })
    told.push(time.at(page))
    if (frame > 3 * rate) off.push(time.at(page) - sound(page))
  }
  return { told, off }
}

describe('heardTime(first)', () => {
  // The step: 128 samples at 44.1 and 48 kHz (Web Audio's render quantum).
  test.each([24, 30, 60, 90, 120, 144])(
    'a clock in steps, at %s frames a second: < 0.5 ms rms, and never back',
    (rate) => {
      for (const step of [128 / 44_100, 128 / 48_000]) {
        const { told, off } = followed(step, rate, 3)
        expect(rms(about(off))).toBeLessThan(0.0005)
        expect(Math.max(...off.map(Math.abs))).toBeLessThan(step)
        expect(told.every((t, k) => k === 0 || t >= (told[k - 1] as number))).toBe(true)
      }
    },
  )
  test('it is followed the same however often it is asked for in a frame', () => {
    const [once, often] = [1, 7].map((asks) => followed(128 / 44_100, 60, asks).off) as [number[], number[]]
    expect(once.every((off, k) => Math.abs(off - (often[k] as number)) < 1e-9)).toBe(true)
  })
  test('drift of 100 millionths is followed, to less than 0.1 ms', () => {
    for (const drift of [1e-4, -1e-4]) {
      const { off } = followed(1e-9, 60, 1, drift)
      expect(Math.abs(off.at(-1) as number)).toBeLessThan(0.0001)
    }
  })
  test('a difference that is too large for jitter is taken over at once, forward and back', () => {
    for (const jump of [0.235, -0.235, 5, -5]) {
      const time = heardTime({ page: 0, sound: 20 })
      expect(time.at(1)).toBe(21)
      time.learn({ page: 1, sound: 21 + jump })
      expect(time.at(1)).toBeCloseTo(21 + jump, 9)
    }
  })
  test('a smaller one bit by bit: the time goes on all the while', () => {
    for (const off of [0.045, -0.045]) {
      const time = heardTime({ page: 0, sound: 20 })
      const told = Array.from({ length: 120 }, (_, k) => {
        time.learn({ page: k / 60, sound: 20 + k / 60 + off })
        return time.at(k / 60)
      })
      const steps = told.slice(1).map((t, k) => (t - (told[k] as number)) * 60)
      expect(Math.min(...steps)).toBeGreaterThan(0.8 - 0.045 * 4)
      expect(Math.max(...steps)).toBeLessThan(1.2 + 0.045 * 4)
      expect(told.at(-1)).toBeCloseTo(20 + 119 / 60 + off, 3)
    }
  })
  test('one reading after a stall is worth no more than any other: it may be off by a whole step of 10 ms', () => {
    const time = heardTime({ page: 0, sound: 20 })
    time.learn({ page: 5, sound: 25 - 0.01 })
    expect(25 - time.at(5)).toBeLessThan(0.002)
  })
})

describe('stillWatch()', () => {
  test('stands after more than 300 ms without a move, by however many looks, until it moves', () => {
    fc.assert(
      fc.property(fc.array(evenly(0.001, 2), { minLength: 1, maxLength: 20 }), (waits) => {
        const watch = stillWatch()
        let page = 5
        watch.look(1, page)
        expect(watch.stands()).toBe(false)
        for (const wait of waits) {
          page += wait
          watch.look(1, page)
          expect(watch.stands()).toBe(page - 5 > FROZEN)
        }
        watch.look(1 + 1e-6, page + 9)
        expect(watch.stands()).toBe(false)
      }),
      { seed: 20261125 },
    )
  })
})
