import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { beatsPerMinute } from '../../src/dance/beatsPerMinute.ts'
import { danceList } from '../../src/dance/dances.ts'
import { playedTempoRange } from '../../src/dance/playedTempoRange.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { behind, momentErrors } from '../../src/transfer/comparison.ts'
import { faults } from '../../src/transfer/faults.ts'
import { perform } from '../../src/transfer/perform.ts'
import { type Beat, beat } from '../../src/units.ts'
import { walks } from '../tools/exampleFigure.ts'
import { generatedFigure, THOUSAND } from '../tools/generateFigure.ts'
import { near } from '../tools/near.ts'

const IN_TIME = { kind: 'in time' } as const
const late = (by: number) => ({ kind: 'late', by: by as Beat }) as const
const hurrying = (by: number) => ({ kind: 'hurrying', by: beat(by) }) as const

/** How late one may be, and the shortest time across, both in beats. */
const BY = fc.double({ min: 0, max: 1, noNaN: true })
const LEAST = fc.double({ min: 0.05, max: 2, noNaN: true })

describe('perform(schedule, late): a shift, by the rule', () => {
  test('every moment of a thousand generated figures is off by as much, to 1e-12', () => {
    fc.assert(
      fc.property(generatedFigure(), BY, LEAST, (figure, by, least) => {
        const plan = schedule(figure)
        const errors = momentErrors(perform(plan, late(by), least), perform(plan, IN_TIME))
        if (errors.length !== 3 * figure.actions.length) expect.fail('a moment is missing')
        for (const error of errors) near(error.by, by, 1e-12, error.moment, error.index)
      }),
      THOUSAND,
    )
  })

  test('so it reads at every time between, to 1e-9: as late as it is, wherever the plan’s own weight moves', () => {
    let read = 0
    fc.assert(
      fc.property(generatedFigure(), fc.constantFrom(0.125, 0.25, 0.5, 1), (figure, by) => {
        const plan = schedule(figure)
        const [danced, ideal] = [perform(plan, late(by)), perform(plan, IN_TIME)]
        // In a rest, which moment of it one is at cannot be seen; in an end the places differ by too little.
        const inside = ideal.times.flatMap(({ leaves, full }) =>
          [0.15, 0.3, 0.5, 0.65, 0.85].map((part) => leaves + part * (full - leaves)),
        )
        for (const t of inside) {
          near(behind(danced, ideal, t + by), by, 1e-9, 'at', t)
          read++
        }
      }),
      { ...THOUSAND, numRuns: 300 },
    )
    expect(read).toBeGreaterThan(3000)
  })
})

describe('perform(schedule, hurrying, shortest): each end is late by what the step’s time has not to spare', () => {
  test('max(0, δ − ((b − a) − τ)) with τ = min(m, b − a), by the rule; each begins δ late', () => {
    fc.assert(
      fc.property(generatedFigure(), BY, LEAST, (figure, by, least) => {
        const plan = schedule(figure)
        const ideal = perform(plan, IN_TIME)
        for (const { index, moment, by: off } of momentErrors(perform(plan, hurrying(by), least), ideal)) {
          const { leaves, full } = ideal.times[index] as (typeof ideal.times)[number]
          const spare = full - leaves - Math.min(least, full - leaves)
          if (moment === 'leaves') near(off, by, 1e-12, index)
          if (moment === 'full') near(off, Math.max(0, by - spare), 1e-12, index)
        }
      }),
      THOUSAND,
    )
  })

  // By hand: a slow has 2 − 0.84 beats to spare, a quick 1 − 0.84.
  test('S Q Q by ½ beat at 120 beats a minute and 0.42 s: the slow is over in time, each quick 0.34 late', () => {
    const plan = schedule(walks('foxtrot', [2, 1, 1]))
    const ends = perform(plan, hurrying(0.5), 0.84).times.map(({ full }) => full)
    for (const [k, full] of [1.5, 2.84, 3.84].entries()) expect(ends[k]).toBeCloseTo(full, 12)
  })

  test('whoever is never quicker than the plan is as late at the end as at the beginning', () => {
    const plan = schedule(walks('waltz', [1, 0.5, 0.5, 1]))
    expect(perform(plan, hurrying(0.5)).times).toEqual(perform(plan, late(0.5)).times)
  })
})

// Science notes 5.3 (own judgement on published thresholds): an example that shows a lateness must exceed a quarter of a
// beat and 100 ms, or the eye does not see it.
test('as late as it usually is can be seen at every tempo that can be played', () => {
  const usual = faults.flatMap(({ kind, amount }) => (amount?.key === 'by' && kind !== 'gaining' ? [amount.usual] : []))
  expect(usual).toHaveLength(5)
  for (const beats of usual) {
    expect(beats).toBeGreaterThanOrEqual(0.25)
    for (const dance of danceList) {
      const milliseconds = (beats * 60_000) / beatsPerMinute(dance, playedTempoRange(dance).to)
      expect(milliseconds, dance.id).toBeGreaterThanOrEqual(100)
    }
  }
})
