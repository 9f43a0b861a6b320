import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { barsFrom, barsIn, barsOf } from '../../src/session/bars.ts'
import { musicPlace } from '../../src/timing/counts.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { demos } from '../tools/demos.ts'
import { evenly } from '../tools/evenly.ts'
import { walks } from '../tools/exampleFigure.ts'

const oneBar = schedule(walks('foxtrot', [2, 1, 1]))
const threeBars = schedule(walks('waltz', [1, 1, 1, 1, 1, 1, 1, 1, 1]))

describe('barsOf, barsFrom, barsIn', () => {
  test('of three bars of waltz: from the bar at hand, or the last ones', () => {
    expect([barsOf(oneBar), barsOf(threeBars)]).toEqual([1, 3])
    expect(barsFrom(threeBars, 1.5, 1)).toEqual({ from: 0, to: 3 })
    expect(barsFrom(threeBars, 3, 2)).toEqual({ from: 3, to: 9 })
    expect(barsFrom(threeBars, 8, 2)).toEqual({ from: 3, to: 9 })
    expect(barsFrom(threeBars, -0.5, 2)).toEqual({ from: 0, to: 6 })
    expect(barsIn(threeBars, barsFrom(threeBars, 8, 2))).toBe(2)
    expect(barsIn(threeBars, { from: threeBars.grid, to: threeBars.length })).toBeNull()
    expect(() => barsFrom(oneBar, 0, 2)).toThrow(RangeError)
  })
  test('of any demo, at any beat: inside the figure, from a 1 or its start to a 1 or its end, with the beat in it', () => {
    fc.assert(
      fc.property(fc.constantFrom(...demos), evenly(-1, 40), fc.integer({ min: 1, max: 4 }), (figure, at, count) => {
        const scheduled = schedule(figure)
        fc.pre(count <= barsOf(scheduled))
        const { from, to } = barsFrom(scheduled, at, count)
        const isOne = (beat: number): boolean => {
          const place = musicPlace(scheduled, beat)
          return place.count === 1 && place.part < 1e-9
        }
        expect(from === 0 || isOne(from)).toBe(true)
        expect(to === scheduled.length || isOne(to)).toBe(true)
        const held = Math.min(scheduled.length, Math.max(0, at))
        expect(from <= held && held <= to).toBe(true)
        expect(barsIn(scheduled, { from, to })).toBe(count)
      }),
      { numRuns: 300, seed: 20261126 },
    )
  })
})
