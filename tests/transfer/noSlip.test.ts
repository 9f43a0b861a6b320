import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { danceList, dances } from '../../src/dance/dances.ts'
import { type Schedule, schedule } from '../../src/timing/schedule.ts'
import { changes } from '../../src/transfer/changes.ts'
import { momentErrors, rushes, waits } from '../../src/transfer/comparison.ts'
import { type Fault, faults, wayOf } from '../../src/transfer/faults.ts'
import { perform } from '../../src/transfer/perform.ts'
import type { Way } from '../../src/transfer/way.ts'
import { demos } from '../tools/demos.ts'
import { walks } from '../tools/exampleFigure.ts'
import { generatedFigure, THOUSAND } from '../tools/generateFigure.ts'
import { playedTempo, SHORTEST, shortestAt } from '../tools/shortestAt.ts'

const MINUTE = 60_000
const IN_TIME: Way = { kind: 'in time' }
/** Every fault with as much of it as is none: nothing late, all of the step’s time, all of the weight. */
const NOTHINGS: readonly Way[] = faults.flatMap(({ kind, amount }: Fault) =>
  amount === null ? [] : [wayOf(kind, amount.key === 'by' ? 0 : 1)],
)
/** From the slowest that can be played to the fastest. */
const TEMPI = [0, 0.25, 0.5, 0.75, 1]
/** A thousand figures, each at a tempo anywhere in its dance’s range. */
const PART_OF_RANGE = fc.double({ min: 0, max: 1, noNaN: true })

function fails(plan: Schedule, way: Way, shortest: number): string | null {
  const [danced, ideal] = [perform(plan, way, shortest), perform(plan, IN_TIME)]
  const off = momentErrors(danced, ideal).find(({ by }) => Math.abs(by) > (way.kind === 'in time' ? 0 : 1e-12))
  if (off !== undefined) return `${way.kind}: ${off.moment} of action ${off.index + 1} is ${off.by} beats late`
  if (waits(danced, ideal).length > 0) return `${way.kind}: waits`
  if (rushes(danced, ideal).length > 0) return `${way.kind}: rushes`
  return changes(plan, way, shortest) ? `${way.kind}: changes` : null
}

/** @param found what does not hold, if anything */
function holds(found: string | null): void {
  if (found !== null) expect.fail(found)
}

/** No slip, no error: by the rule that an undisturbed dancer is in time, for every figure, dance and tempo. */
describe('perform(schedule, in time, shortest): no error, no wait, no rush', { timeout: MINUTE }, () => {
  test.each(demos.map((figure) => [figure.id, figure] as const))('%s in each of its timings', (_, figure) => {
    const dance = dances[figure.dance]
    for (const timing of figure.timings.keys()) {
      for (const part of TEMPI) {
        for (const seconds of SHORTEST) {
          const shortest = shortestAt(dance, seconds, playedTempo(dance, part))
          holds(fails(schedule(figure, timing), IN_TIME, shortest))
        }
      }
    }
  })

  test('a thousand generated figures', () => {
    fc.assert(
      fc.property(generatedFigure(), PART_OF_RANGE, fc.constantFrom(...SHORTEST), (figure, part, seconds) => {
        const dance = dances[figure.dance]
        const shortest = shortestAt(dance, seconds, playedTempo(dance, part))
        holds(fails(schedule(figure), IN_TIME, shortest))
      }),
      THOUSAND,
    )
  })
})

describe('changes(schedule, a fault of which there is none, shortest): no, and no moment is off', {
  timeout: MINUTE,
}, () => {
  test('the faults are those with something to set', () => {
    expect(NOTHINGS.map(({ kind }) => kind)).toEqual([
      ...['late', 'hurrying', 'early', 'ahead', 'gaining', 'foot first', 'part weight', 'slip'],
    ])
  })

  test.each(danceList.map((dance) => [dance.id, dance] as const))('%s, through its tempi', (id, dance) => {
    const plan = schedule(walks(id, [2, 1, 1, 0.5, 0.5, 1.5]))
    for (const part of TEMPI) {
      for (const seconds of SHORTEST) {
        for (const way of NOTHINGS) {
          holds(fails(plan, way, shortestAt(dance, seconds, playedTempo(dance, part))))
        }
      }
    }
  })

  test('every demo', () => {
    for (const figure of demos) {
      for (const seconds of SHORTEST) {
        for (const way of NOTHINGS) {
          holds(fails(schedule(figure), way, shortestAt(dances[figure.dance], seconds)))
        }
      }
    }
  })

  test('a thousand generated figures', () => {
    fc.assert(
      fc.property(
        ...[generatedFigure(), PART_OF_RANGE, fc.constantFrom(...SHORTEST), fc.constantFrom(...NOTHINGS)],
        (figure, part, seconds, way) => {
          const dance = dances[figure.dance]
          holds(fails(schedule(figure), way, shortestAt(dance, seconds, playedTempo(dance, part))))
        },
      ),
      THOUSAND,
    )
  })
})

describe('changes(schedule, way, shortest) of faults that cannot be made in a figure', () => {
  const unchanged = (demo: string) => {
    const figure = demos.find(({ id }) => id.startsWith(demo)) as (typeof demos)[number]
    const shortest = shortestAt(dances[figure.dance], SHORTEST[0])
    const plan = schedule(figure)
    return faults.filter(({ kind }) => !changes(plan, wayOf(kind), shortest)).map(({ kind }) => kind)
  }
  // By the rules: without half-beat steps none is placed and no split beat is misplaced or evened out; without a slow none
  // is cut short; without a close none lacks its change of weight.
  test('three walks, S Q Q: no half-beat step, no close', () => {
    expect(unchanged('01')).toEqual(['placed', 'misplaced', 'evened', 'no change'])
  })
  test('waltz box, 1 2 3 1 2 3: no half-beat step, no slow', () => {
    expect(unchanged('06')).toEqual(['placed', 'cut short', 'misplaced', 'evened'])
  })
  test('waltz chassé, 1 2 & 3: no slow', () => {
    expect(unchanged('07')).toEqual(['cut short'])
  })
  test('each fault changes the demo it is shown on', () => {
    for (const { kind, demo } of faults) expect(unchanged(demo), kind).not.toContain(kind)
  })
})
