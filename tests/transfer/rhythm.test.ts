import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { DanceId } from '../../src/dance/dance.ts'
import type { Figure } from '../../src/figure/figure.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { rushes, waits } from '../../src/transfer/comparison.ts'
import { type FaultKind, wayOf } from '../../src/transfer/faults.ts'
import { perform } from '../../src/transfer/perform.ts'
import { inRhythm } from '../../src/transfer/rhythm.ts'
import { demos } from '../tools/demos.ts'
import { walks } from '../tools/exampleFigure.ts'
import { generatedFigure, THOUSAND } from '../tools/generateFigure.ts'
import { generatedWay } from '../tools/generateWay.ts'
import { near } from '../tools/near.ts'

type Kind = Extract<FaultKind, 'cut short' | 'misplaced' | 'evened'>
const KINDS: readonly Kind[] = ['cut short', 'misplaced', 'evened']

/** Danced as if the figure had other beat values: the times of the same walks with these. */
const planned = (dance: DanceId, values: readonly number[]) =>
  perform(schedule(walks(dance, values)), { kind: 'in time' }).times
const danced = (kind: Kind, dance: DanceId, values: readonly number[], on: readonly number[] = []) =>
  perform(schedule(walks(dance, values)), wayOf(kind, undefined, on)).times

// The first three by the rule; ¾ ¼ 1 is the rhythm of a jive triple, evened out the commonest fault of it (published, a
// list of permitted figures for the values; common practice for the fault).
describe('a wrong rhythm is the same actions with other beat values', () => {
  test.each<[string, Kind, DanceId, number[], number[]]>([
    ['S Q Q as three even steps', 'cut short', 'foxtrot', [2, 1, 1], [1, 1, 1]],
    ['S Q Q S', 'cut short', 'quickstep', [2, 1, 1, 2], [1, 1, 1, 1]],
    ['two slows alone as two quicks', 'cut short', 'exercise', [2, 2], [1, 1]],
    ['1 2 & 3 as 1 & 2 3', 'misplaced', 'waltz', [1, 0.5, 0.5, 1], [0.5, 0.5, 1, 1]],
    ['1 & 2 3 as 1 2 & 3', 'misplaced', 'waltz', [0.5, 0.5, 1, 1], [1, 0.5, 0.5, 1]],
    ['1 2 3 & as 1 2 & 3', 'misplaced', 'waltz', [1, 1, 0.5, 0.5], [1, 0.5, 0.5, 1]],
    ['1 2 & 3 as ¾ each', 'evened', 'waltz', [1, 0.5, 0.5, 1], [0.75, 0.75, 0.75, 0.75]],
    ['¾ ¼ 1 as ½ ½ 1', 'evened', 'samba', [0.75, 0.25, 1], [0.5, 0.5, 1]],
    ['the triples of a jive', 'evened', 'jive', [1, 1, 0.75, 0.25, 1], [1, 1, 0.5, 0.5, 1]],
  ])('%s', (_, kind, dance, values, others) => {
    const [now, wanted] = [danced(kind, dance, values), planned(dance, others)]
    expect(now).toHaveLength(values.length)
    for (const [k, times] of now.entries()) {
      for (const moment of ['leaves', 'split', 'full'] as const)
        expect(times[moment]).toBeCloseTo(wanted[k]?.[moment] as number, 12)
    }
  })

  test('a slow cut short ends a beat before the plan, and nothing follows', () => {
    expect(danced('cut short', 'foxtrot', [2, 1, 1]).map(({ full }) => full)).toEqual([0.5, 1.5, 2.5])
    expect(planned('foxtrot', [2, 1, 1]).map(({ full }) => full)).toEqual([1.5, 2.5, 3.5])
  })
  test('a bar that cannot be shared out exactly, in parts of 1/48 beat, keeps its rhythm: 4 beats over 5 steps', () => {
    const values = [1, 1, 0.5, 0.5, 1]
    expect(danced('evened', 'quickstep', values).map(({ full }) => full)).toEqual(
      planned('quickstep', values).map(({ full }) => full),
    )
  })
  test('only the chosen slows are', () => {
    const ends = danced('cut short', 'quickstep', [2, 1, 1, 2], [3]).map(({ full }) => full)
    expect(ends).toEqual(planned('quickstep', [2, 1, 1, 1]).map(({ full }) => full))
  })
  test('¾ each takes a quarter of a beat from 1 and 3 and gives it to 2 and “and”: it hurries and never waits', () => {
    const plan = schedule(walks('waltz', [1, 0.5, 0.5, 1]))
    const [wrong, ideal] = [perform(plan, wayOf('evened')), perform(plan, { kind: 'in time' })]
    const took = wrong.times.map(({ leaves, full }, k) => {
      const { leaves: from, full: to } = ideal.times[k] as (typeof ideal.times)[number]
      return full - leaves - (to - from)
    })
    expect(took).toEqual([-0.25, 0.25, 0.25, -0.25])
    expect(waits(wrong, ideal)).toEqual([])
    expect(rushes(wrong, ideal).length).toBeGreaterThan(0)
  })
})

describe('perform(any figure, a wrong rhythm)', () => {
  const check = (kind: Kind, figure: (typeof demos)[number], way = wayOf(kind)) => {
    const plan = schedule(figure)
    const [wrong, ideal] = [perform(plan, way), perform(plan, { kind: 'in time' })]
    if (wrong.carried.join() !== ideal.carried.join()) expect.fail('it is carried differently')
    near(wrong.times.length, ideal.times.length, 0, 'actions')
    near(wrong.times[0]?.leaves, ideal.times[0]?.leaves as number, 2, 'the beginning')
    if (kind === 'cut short') {
      // Slows grow shorter and nothing grows longer, so nothing is later.
      for (const [k, { full }] of wrong.times.entries()) {
        if (full > (ideal.times[k]?.full as number) + 1e-12) expect.fail(`action ${k + 1} is full later than planned`)
      }
    }
    return { wrong, ideal }
  }
  test.each(KINDS)('%s: the same actions with the same weight, 500 generated figures and every demo', (kind) => {
    for (const figure of demos) check(kind, figure)
    fc.assert(
      fc.property(generatedFigure(), generatedWay(kind), (figure, way) => {
        check(kind, figure, way)
      }),
      { ...THOUSAND, numRuns: 500 },
    )
  })

  test.each(['misplaced', 'evened'] as const)(
    '%s: the sum is kept, so a quick at the end is called when planned',
    (kind) => {
      fc.assert(
        fc.property(generatedFigure(), (made) => {
          // Two whole bars of quicks after it: no split beat can reach the last.
          const end = walks(
            made.dance,
            Array.from({ length: 8 }, () => 1),
          )
          const [timing, more] = [made.timings[0], end.timings[0]]
          if (timing === undefined || more === undefined) return
          const bare = made.actions.map((action) => ({ ...action, moments: {} }))
          const values = [...timing.values, ...more.values]
          const signs = [...timing.signs, ...more.signs]
          const figure: Figure = {
            ...made,
            actions: [...bare, ...end.actions],
            timings: [{ ...timing, values, signs }],
          }
          const plan = schedule(figure)
          const way = wayOf(kind) as Parameters<typeof inRhythm>[1]
          const [last, wanted] = [inRhythm(plan, way).at(-1), plan.actions.at(-1)?.moments]
          near(last?.full, wanted?.full as number, 1e-12)
        }),
        { ...THOUSAND, numRuns: 300 },
      )
    },
  )
})
