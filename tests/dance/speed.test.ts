import { describe, expect, test } from 'vitest'
import { dances } from '../../src/dance/dances.ts'
import { defaultTempo } from '../../src/dance/defaultTempo.ts'
import { playedTempoRange } from '../../src/dance/playedTempoRange.ts'
import { atSpeed, bySpeed, speedOf } from '../../src/dance/speed.ts'

describe('speedOf, atSpeed, bySpeed', () => {
  test.each(Object.values(dances))('$name: a half of its usual tempo is half as many bars a minute', (dance) => {
    expect(atSpeed(dance, 0.5)).toBe(defaultTempo(dance).barsPerMinute / 2)
    expect(speedOf(dance, atSpeed(dance, 0.75))).toBeCloseTo(0.75, 12)
  })
  test.each(Object.values(dances))(
    '$name: ten steps of a tenth lead from 100 % to the slowest and never past it',
    (dance) => {
      const { from, to } = playedTempoRange(dance)
      let bars = defaultTempo(dance).barsPerMinute
      for (let k = 0; k < 10; k++) bars = bySpeed(dance, bars, -0.1, 0.1)
      expect(bars).toBe(from)
      for (let k = 0; k < 8; k++) bars = bySpeed(dance, bars, 0.1, 0.1)
      expect(speedOf(dance, bars)).toBeCloseTo(1, 12)
      for (let k = 0; k < 8; k++) bars = bySpeed(dance, bars, 0.1, 0.1)
      expect(bars).toBe(to)
    },
  )
  test('from between two steps to the next whole one', () => {
    const { foxtrot } = dances
    expect(speedOf(foxtrot, bySpeed(foxtrot, atSpeed(foxtrot, 0.93), 0.1, 0.1))).toBeCloseTo(1, 12)
    expect(speedOf(foxtrot, bySpeed(foxtrot, atSpeed(foxtrot, 0.93), -0.1, 0.1))).toBeCloseTo(0.9, 12)
  })
})
