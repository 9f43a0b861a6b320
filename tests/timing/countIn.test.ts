import { describe, expect, test } from 'vitest'
import { countInFrom } from '../../src/timing/countIn.ts'
import { musicPlace } from '../../src/timing/counts.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { demos } from '../tools/demos.ts'
import { walks } from '../tools/exampleFigure.ts'

describe('countInFrom(schedule, first, bars)', () => {
  test('one bar of waltz before its 1: three beats; two bars: six (common practice, no source)', () => {
    const waltz = schedule(walks('waltz', [1, 1, 1]))
    expect(countInFrom(waltz, 0, 1)).toBe(-3)
    expect(countInFrom(waltz, 0, 2)).toBe(-6)
  })

  test('begins on a 1, whole bars or more before the call, and less than a bar more', () => {
    for (const figure of demos) {
      const scheduled = schedule(figure)
      for (const { index, called } of scheduled.actions) {
        for (const bars of [1, 2]) {
          const from = countInFrom(scheduled, index, bars)
          expect(musicPlace(scheduled, from)).toMatchObject({ count: 1, part: 0 })
          const beats = called - from
          expect(beats).toBeGreaterThanOrEqual(bars * scheduled.beatsPerBar - 1e-9)
          expect(beats).toBeLessThan((bars + 1) * scheduled.beatsPerBar)
        }
      }
    }
  })

  test('there is no such action', () => {
    expect(() => countInFrom(schedule(walks('waltz', [1, 1, 1])), 3, 1)).toThrow(RangeError)
  })
})
