import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dances } from '../../src/dance/dances.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { waits } from '../../src/transfer/comparison.ts'
import { perform } from '../../src/transfer/perform.ts'
import { type Beat, beat } from '../../src/units.ts'
import { demos } from '../tools/demos.ts'
import { walks } from '../tools/exampleFigure.ts'
import { generatedFigure, THOUSAND } from '../tools/generateFigure.ts'
import { near } from '../tools/near.ts'
import { shortestAt } from '../tools/shortestAt.ts'

const IN_TIME = { kind: 'in time' } as const
const footFirst = (by: number) => ({ kind: 'foot first', by: by as Beat }) as const
/** The foot is down at u = ½ − h with h = ⅛: double support is 20 to 25 % of a walking step (science notes 4). */
const TOUCHES = 3 / 8

const demo = (name: string) => demos.find(({ id }) => id.startsWith(name)) as (typeof demos)[number]

describe('perform(1 2 & 3, placed, shortest): common practice, no source', () => {
  const plan = schedule(demo('07'))
  /** @param beatsPerMinute of a waltz, three to a bar */
  const dancedAt = (beatsPerMinute: number) =>
    perform(plan, { kind: 'placed' }, shortestAt(dances.waltz, 0.42, beatsPerMinute / 3))

  test.each([18, 40, 60, 71, 72, 84, 90, 109])(
    'at %i beats a minute: full at ½, 1½, 1½ + τ, then max(2½, that + τ)',
    (beatsPerMinute) => {
      const m = (0.42 * beatsPerMinute) / 60
      const third = 1.5 + Math.min(m, 0.5)
      const full = dancedAt(beatsPerMinute).times.map((times) => times.full)
      for (const [k, time] of [0.5, 1.5, third, Math.max(2.5, third + Math.min(m, 1))].entries())
        expect(full[k]).toBeCloseTo(time, 12)
    },
  )
  test('the “and” is full on 2 from 72 beats a minute on, and sooner below', () => {
    expect(dancedAt(72).times[2]?.full).toBe(2)
    expect(dancedAt(109).times[2]?.full).toBe(2)
    expect(dancedAt(71).times[2]?.full).toBeLessThan(2)
  })
  test('the first half-beat step is split on its count, on which the plan has it full', () => {
    const { curve } = dancedAt(84)
    expect(curve.at(plan.actions[1]?.called as number)).toBe(1.5)
    expect(perform(plan, IN_TIME).curve.at(plan.actions[1]?.called as number)).toBe(2)
  })
  test('only the first of a run is placed; what follows makes up for it', () => {
    const { times } = perform(schedule(walks('waltz', [1, 0.5, 0.5, 0.5, 0.5, 2])), { kind: 'placed' }, 0.25)
    expect(times.map(({ full }) => full)).toEqual([0.5, 1.5, 1.75, 2, 2.5, 4.5])
  })
})

describe('perform(schedule, foot first, shortest): the weight comes after the foot', () => {
  // By hand, τ = 0.84 for all: S touches at ¼ and is over in time. Q touches at 1.875, is over at 1.875 + 0.5 + 0.42. The
  // next begins then, touches a quarter of τ later.
  test('S Q Q, ½ beat, at 120 beats a minute and 0.42 s', () => {
    const { times } = perform(schedule(demo('01')), footFirst(0.5), 0.84)
    const rounded = times.map(({ leaves, full, stands }) =>
      [leaves, stands?.from, stands?.to, full].map((t) => Number((t as number).toFixed(9))),
    )
    expect(rounded).toEqual([
      [-0.5, 0.25, 0.75, 1.5],
      [1.5, 1.875, 2.375, 2.795],
      [2.795, 3.005, 3.505, 3.925],
    ])
  })

  test('touch at max(plan, start + ¼τ), rest for δ at u = ⅜, full at max(b, touch + δ + ½τ), the next when it has ended', () => {
    fc.assert(
      fc.property(
        generatedFigure({ allWeighted: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        (figure, by, least) => {
          const plan = schedule(figure)
          const { times, curve } = perform(plan, footFirst(by), least)
          let ended = Number.NEGATIVE_INFINITY
          for (const [index, { moments }] of plan.actions.entries()) {
            const { leaves: a, split, full: b } = moments
            const shortest = Math.min(least, b - a)
            const start = Math.max(a, ended)
            const touch = Math.max(a + (TOUCHES / 0.5) * (split - a), start + shortest / 4)
            const end = Math.max(b, touch + by + shortest / 2)
            const now = times[index]
            near(now?.leaves, start, 1e-12)
            near(now?.stands?.from, touch, 1e-12)
            near(now?.stands?.to, touch + by, 1e-12)
            near(now?.full, end, 1e-12)
            for (const part of [0, 0.3, 0.7, 1]) near(curve.at(touch + part * by), index + TOUCHES, 1e-9)
            ended = end
          }
        },
      ),
      { ...THOUSAND, numRuns: 300 },
    )
  })

  // So short that a beat and it are the same number: there is nothing to draw, and nothing breaks.
  test('a wait too short to be told apart from none is none', () => {
    const plan = schedule(demo('01'))
    expect(perform(plan, footFirst(1e-300), 0.84).times).toEqual(perform(plan, footFirst(0), 0.84).times)
  })

  test('on taps and holds it is not made: there is no weight to bring', () => {
    const { times } = perform(schedule(demo('05')), footFirst(0.5), 0.25)
    for (const [index, { action }] of schedule(demo('05')).actions.entries())
      expect(times[index]?.stands !== undefined).toBe(action.weight > 0)
  })
})

describe('perform(schedule, stops): rests at the split, by the rule', () => {
  test('for half of the second half, and is full with the plan, on every step of 300 generated figures', () => {
    fc.assert(
      fc.property(generatedFigure({ allWeighted: true }), (figure) => {
        const plan = schedule(figure)
        const [danced, ideal] = [perform(plan, { kind: 'stops' }, 0.5), perform(plan, IN_TIME)]
        for (const [index, { split, full }] of ideal.times.entries()) {
          const goesOn = (split + full) / 2
          near(danced.times[index]?.full, full, 0)
          for (const t of [split, (split + goesOn) / 2, goesOn]) near(danced.curve.at(t), index + 0.5, 1e-12)
          if (!(danced.curve.at((goesOn + full) / 2) > index + 0.5)) expect.fail(`action ${index + 1} never goes on`)
        }
        expect(waits(danced, ideal)).toEqual(
          ideal.times.map(({ split, full }) => ({ from: split, to: (split + full) / 2 })),
        )
      }),
      { ...THOUSAND, numRuns: 300 },
    )
  })
  test('S Q Q: half a beat on the slow, a quarter on each quick', () => {
    const plan = schedule(demo('01'))
    const stands = waits(perform(plan, { kind: 'stops' }), perform(plan, IN_TIME))
    expect(stands).toEqual([
      { from: 0.5, to: 1 },
      { from: 2, to: 2.25 },
      { from: 3, to: 3.25 },
    ])
  })
  test('chosen steps only', () => {
    const { times } = perform(schedule(demo('01')), { kind: 'stops', on: [1] })
    expect(times.map(({ stands }) => stands !== undefined)).toEqual([false, true, false])
    expect(beat(times[1]?.stands?.from as number)).toBe(2)
  })
})
