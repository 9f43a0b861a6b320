import { describe, expect, test } from 'vitest'
import type { Counting, DanceId } from '../../src/dance/dance.ts'
import { dances } from '../../src/dance/dances.ts'
import { countAt } from '../../src/timing/counts.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { walks } from '../tools/exampleFigure.ts'

function counts(
  dance: DanceId,
  values: readonly number[],
  counting: Counting,
  from: number,
  to: number,
  every = 1,
): string {
  const plan = schedule(walks(dance, values))
  const said: string[] = []
  for (let t = from; t <= to; t += every) said.push(countAt(plan, dances[dance], counting, t).text)
  return said.join(' ')
}

describe('countAt(schedule, dance, counting, t)', () => {
  test('bars and beats: the bar’s number takes the place of its first count (revision cards of IDTA theory)', () => {
    expect(counts('foxtrot', [2, 1, 1, 2, 1, 1], 'bars and beats', 0, 7)).toBe('1 2 3 4 2 2 3 4')
    expect(counts('waltz', [1, 1, 1, 1, 1, 1, 1], 'bars and beats', 0, 6)).toBe('1 2 3 2 2 3 3')
  })
  test('half beats', () => {
    expect(counts('waltz', [1, 1, 1], 'half beats', -0.5, 3, 0.5)).toBe('& 1 & 2 & 3 & 1')
  })
  test('rumba begins on 2', () => {
    expect(counts('rumba', [1, 1, 2], 'bars and beats', 0, 3)).toBe('2 3 4 2')
    expect(counts('rumba', [1, 1, 2], 'half beats', 0, 3)).toBe('2 3 4 1')
  })
  test('slows and quicks: S = 2, Q = 1, & = ½', () => {
    expect(counts('foxtrot', [2, 1, 0.5, 0.5], 'slows and quicks', 0, 3.5, 0.5)).toBe('S S S S Q Q Q &')
  })
  test('jive Q Q Q a Q: three quarters are a quick, a quarter an a', () => {
    const plan = schedule(walks('jive', [1, 1, 0.75, 0.25, 1]))
    const called = plan.actions.map(({ called: t }) => countAt(plan, dances.jive, 'slows and quicks', t))
    expect(called.map(({ text }) => text).join(' ')).toBe('Q Q Q a Q')
    expect(called.every(({ called: now }) => now)).toBe(true)
  })
  test('under a slow nothing is called', () => {
    const plan = schedule(walks('foxtrot', [2, 1, 1]))
    expect([0, 1, 2].map((t) => countAt(plan, dances.foxtrot, 'slows and quicks', t).called)).toEqual([
      true,
      false,
      true,
    ])
  })
  test('a waltz, counted in numbers only, is so in slows and quicks too', () => {
    expect(counts('waltz', [1, 1, 1], 'slows and quicks', 0, 2)).toBe('1 2 3')
  })
  test('samba 1 a 2: the a lies on the last quarter', () => {
    expect(counts('samba', [0.75, 0.25, 1], 'half beats', 0, 1, 0.25)).toBe('1 · & a 2')
  })
})
