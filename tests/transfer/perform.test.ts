import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { schedule } from '../../src/timing/schedule.ts'
import { perform } from '../../src/transfer/perform.ts'
import { beat, share } from '../../src/units.ts'
import { HALF_BEATS, walks } from '../tools/exampleFigure.ts'
import { generatedFigure, THOUSAND } from '../tools/generateFigure.ts'

const danced = (way: Parameters<typeof perform>[1], ...args: Parameters<typeof walks>) =>
  perform(schedule(walks(...args)), way)
const inTime = { kind: 'in time' } as const
const late = (by: number) => ({ kind: 'late', by: beat(by) }) as const
const early = (part: number) => ({ kind: 'early', part: share(part) }) as const

describe('perform(schedule, in time): the table of the ideal (common practice, no source), to 1e-12', () => {
  // Count − ½, count, count + ½, …: the part of the step that is done.
  test.each([
    ['a quick', [1], [0, 0.5, 1]],
    ['a slow', [2], [0, 0.25, 0.5, 0.75, 1]],
    ['an & after a quick', [1, 0.5], [0, 0.5, 1, 2]],
    ['S Q Q', [2, 1, 1], [0, 0.25, 0.5, 0.75, 1, 1.5, 2, 2.5, 3]],
    ['1 2 & 3', [1, 0.5, 0.5, 1], [0, 0.5, 1, 2, 3, 3.5, 4]],
  ])('%s', (_, values, expected) => {
    const { curve } = danced(inTime, 'foxtrot', values)
    for (const [k, p] of expected.entries()) expect(curve.at(-0.5 + k / 2)).toBeCloseTo(p, 12)
  })
  test('rumba 2 3 4-1: full at 0, 1, 3', () => {
    const { curve } = danced(inTime, 'rumba', [1, 1, 2])
    expect([0, 1, 3].map(curve.at)).toEqual([1, 2, 3])
    expect(curve.at(2)).toBeCloseTo(2.5, 12)
  })
})

describe('perform(schedule, late)', () => {
  test.each(HALF_BEATS(0, 1))('late by %s is the ideal that much later, everywhere', (by) => {
    const figure = ['foxtrot', [2, 1, 1, 0.5, 1.5]] as const
    const [ideal, behind] = [danced(inTime, ...figure), danced(late(by), ...figure)]
    for (let t = -2; t < 9; t += 1 / 37) expect(behind.curve.at(t)).toBeCloseTo(ideal.curve.at(t - by), 12)
  })
  test('for every generated figure', () => {
    fc.assert(
      fc.property(
        generatedFigure(),
        fc.integer({ min: 0, max: 4 }),
        fc.double({ min: -2, max: 20, noNaN: true }),
        (figure, quarters, t) => {
          const plan = schedule(figure)
          const by = quarters / 4
          expect(perform(plan, late(by)).curve.at(t)).toBeCloseTo(perform(plan, inTime).curve.at(t - by), 9)
        },
      ),
      THOUSAND,
    )
  })
})

describe('perform(schedule, early)', () => {
  const { curve, times } = danced(early(0.5), 'foxtrot', [2, 1, 1])
  test('S Q Q in the first half: full at ½, 2, 3', () => {
    expect(times.map(({ full }) => full)).toEqual([0.5, 2, 3])
    expect([1, 2, 3].map(curve.arrives)).toEqual([0.5, 2, 3])
  })
  test('it stands on [½, 1½], [2, 2½], [3, 3½]', () => {
    for (const [from, to, p] of [
      [0.5, 1.5, 1],
      [2, 2.5, 2],
      [3, 3.5, 3],
    ] as const) {
      for (let t = from; t <= to; t += 0.125) expect(curve.at(t)).toBe(p)
    }
    expect([1, 2].map(curve.departs)).toEqual([1.5, 2.5])
  })
  test('the S is full a beat too early; the Q leaves on time', () => {
    const ideal = danced(inTime, 'foxtrot', [2, 1, 1])
    expect(ideal.curve.arrives(1) - curve.arrives(1)).toBe(1)
    expect(curve.departs(1)).toBe(ideal.curve.departs(1))
  })
  test('full on the count: a quick is full half a beat before it', () => {
    expect(danced(early(0.5), 'rumba', [1]).times[0]?.full).toBe(-0.5)
  })
  test('struck: the whole strike half a beat sooner', () => {
    expect(danced(early(0.5), 'paso doble', [1, 1]).times).toEqual([
      { leaves: -1, split: -0.75, full: -0.5 },
      { leaves: 0, split: 0.25, full: 0.5 },
    ])
  })
})
