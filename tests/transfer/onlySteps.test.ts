import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { schedule } from '../../src/timing/schedule.ts'
import { waits } from '../../src/transfer/comparison.ts'
import { onlySteps } from '../../src/transfer/onlySteps.ts'
import { perform } from '../../src/transfer/perform.ts'
import { beat, share } from '../../src/units.ts'
import { walks } from '../tools/exampleFigure.ts'
import { generatedFigure, THOUSAND } from '../tools/generateFigure.ts'

const planned = schedule(walks('foxtrot', [2, 1, 1, 2]))

describe('onlySteps(performance, first, last)', () => {
  test('stands before the first and after the last; both begin and end when they did', () => {
    const whole = perform(planned, { kind: 'late', by: beat(0.5) })
    const part = onlySteps(whole, 1, 2)
    expect(part.curve.from).toBe(whole.times[1]?.leaves)
    expect(part.curve.to).toBe(whole.times[2]?.full)
    expect([part.curve.at(-5), part.curve.at(50)]).toEqual([1, 3])
    expect([part.curve.speed(part.curve.from), part.curve.speed(part.curve.to)]).toEqual([0, 0])
  })
  test('passes through the same moments, rises or stands, and keeps all of the curve between its ends’ neighbours', () => {
    fc.assert(
      fc.property(generatedFigure(), fc.nat(1000), fc.nat(1000), (figure, a, b) => {
        const count = figure.actions.length
        const [first, last] = [a % count, b % count].sort((x, y) => x - y) as [number, number]
        const whole = perform(schedule(figure), { kind: 'in time' })
        const part = onlySteps(whole, first, last)
        for (let index = first; index <= last; index++) {
          const { leaves, split, full } = whole.times[index] as (typeof whole.times)[number]
          expect(part.curve.at(leaves)).toBeCloseTo(index, 12)
          expect(part.curve.at(split)).toBeCloseTo(index + 0.5, 12)
          expect(part.curve.at(full)).toBeCloseTo(index + 1, 12)
        }
        let before = first
        for (let t = part.curve.from - 1; t < part.curve.to + 1; t += 1 / 16) {
          const p = part.curve.at(t)
          expect(p).toBeGreaterThanOrEqual(before - 1e-12)
          before = p
        }
      }),
      THOUSAND,
    )
  })
  test('the stand after its end is no wait; a wait inside it is', () => {
    const [plan, early] = ([{ kind: 'in time' }, { kind: 'early', part: share(0.5) }] as const).map((way) =>
      onlySteps(perform(planned, way), 0, 1),
    ) as [ReturnType<typeof perform>, ReturnType<typeof perform>]
    expect(waits(early, plan)).toEqual([{ from: 0.5, to: 1.5 }])
  })
  test('there must be such actions', () => {
    expect(() => onlySteps(perform(planned, { kind: 'in time' }), 2, 4)).toThrow(RangeError)
    expect(() => onlySteps(perform(planned, { kind: 'in time' }), 2, 1)).toThrow(RangeError)
  })
})
