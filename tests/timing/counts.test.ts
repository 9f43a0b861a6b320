import { describe, expect, test } from 'vitest'
import type { Counting, DanceId } from '../../src/dance/dance.ts'
import { dances } from '../../src/dance/dances.ts'
import { countAt, musicPlace } from '../../src/timing/counts.ts'
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
  test('samba 1 a 2 a 1 a 2: a on every last quarter, and a slow where an a is taken out of it', () => {
    const volta = [0.75, 0.25, 0.75, 0.25, 0.75, 0.25, 1]
    expect(counts('samba', volta, 'half beats', 0, 3, 0.25)).toBe('1 · & a 2 · & a 1 · & a 2')
    const plan = schedule(walks('samba', volta))
    const said = plan.actions.map(({ called }) => countAt(plan, dances.samba, 'slows and quicks', called).text)
    expect(said.join(' ')).toBe('S a S a S a S')
  })
  test('tango S Q Q S &: a slow is called so when an & is taken out of it (revision cards of IDTA theory)', () => {
    const plan = schedule(walks('tango', [2, 1, 1, 1.5, 0.5]))
    const said = plan.actions.map(({ called }) => countAt(plan, dances.tango, 'slows and quicks', called).text)
    expect(said.join(' ')).toBe('S Q Q S &')
  })
})

/** Walks of a figure that begins between two counts. */
function begun(dance: DanceId, values: readonly number[], firstCount: number) {
  const figure = walks(dance, values)
  return schedule({ ...figure, timings: [{ ...figure.timings[0], firstCount }] })
}

describe('countAt(schedule, dance, counting, t) of a figure that begins between two counts', () => {
  const said = (plan: ReturnType<typeof begun>, dance: DanceId, counting: Counting, every = 0.5) => {
    const texts: string[] = []
    for (let t = 0; t < plan.length; t += every) texts.push(countAt(plan, dances[dance], counting, t).text)
    return texts.join(' ')
  }
  test('waltz & 1 2 3: the & lies in the bar before the first', () => {
    const plan = begun('waltz', [0.5, 1, 1, 1, 1], 0.5)
    expect(said(plan, 'waltz', 'half beats')).toBe('& 1 & 2 & 3 & 1 &')
    expect(said(plan, 'waltz', 'bars and beats')).toBe('& 1 & 2 & 3 & 2 &')
    expect(musicPlace(plan, 0)).toEqual({ bar: 0, count: 3, part: 0.5 })
    expect(musicPlace(plan, 0.5)).toEqual({ bar: 1, count: 1, part: 0 })
  })
  test('waltz & 3: the & lies in the bar of the 3', () => {
    expect(musicPlace(begun('waltz', [0.5, 1], 2.5), 0)).toEqual({ bar: 1, count: 2, part: 0.5 })
  })
  test('samba a 1 a 2: quarters, from the a on', () => {
    const plan = begun('samba', [0.25, 0.75, 0.25, 1], 0.75)
    expect(plan.grid).toBe(0.25)
    expect(said(plan, 'samba', 'half beats', 0.25)).toBe('a 1 · & a 2 · & a')
  })
  test('foxtrot & S Q Q: an & first, then slows and quicks on the counts', () => {
    expect(said(begun('foxtrot', [0.5, 2, 1, 1], 0.5), 'foxtrot', 'slows and quicks')).toBe('& S S S S Q Q Q Q')
  })
})
