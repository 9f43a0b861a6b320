import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { danceList, dances } from '../../src/dance/dances.ts'
import { defaultTempo } from '../../src/dance/defaultTempo.ts'
import { playedTempoRange } from '../../src/dance/playedTempoRange.ts'
import type { Figure } from '../../src/figure/figure.ts'
import { type Schedule, type ScheduledAction, schedule } from '../../src/timing/schedule.ts'
import { knockOn, knockOnChart, turningTempo } from '../../src/transfer/knockOn.ts'
import { perform } from '../../src/transfer/perform.ts'
import { shortestTimes } from '../../src/transfer/shortestTimes.ts'
import { beat, type Seconds, seconds } from '../../src/units.ts'
import { demos } from '../tools/demos.ts'
import { walks } from '../tools/exampleFigure.ts'
import { generatedFigure, THOUSAND } from '../tools/generateFigure.ts'

const slip = (at: number, by: number) => ({ at, by: beat(by) })
const quicks = (count: number) => schedule(walks('quickstep', new Array<number>(count).fill(1)))
const inBeats = (time: number, beatsPerMinute: number): number => (time * beatsPerMinute) / 60
const steps = (plan: Schedule, at: number, beatsPerMinute: number, by = 0.5): number | null => {
  const { steps, healed } = knockOn(plan, slip(at, by), inBeats(shortestTimes.comfortable, beatsPerMinute))
  return healed ? steps : null
}
const NEVER_QUICKER = Number.POSITIVE_INFINITY

/** A slip somewhere in a figure, a dancer and a tempo. */
const slipIn = <T>(figure: fc.Arbitrary<T>) =>
  fc.record({
    figure,
    share: fc.double({ min: 0, max: 0.999, noNaN: true }),
    by: fc.integer({ min: 0, max: 48 }).map((parts) => parts / 48),
    shortest: fc.double({ min: shortestTimes.quickest, max: shortestTimes.comfortable, noNaN: true }),
    beatsPerMinute: fc.double({ min: 20, max: 260, noNaN: true }),
  })
const slipped = slipIn(generatedFigure())
/** The directions play no part in this: walks alone are made ten times as quickly. */
const slippedWalks = slipIn(
  fc
    .tuple(
      fc.constantFrom(...danceList.map(({ id }) => id)),
      fc.array(fc.constantFrom(0.25, 0.5, 0.75, 1, 1.5, 2, 3), { minLength: 1, maxLength: 10 }),
    )
    .map(([dance, values]) => walks(dance, values)),
)

type Slipped = { figure: Figure; share: number; by: number; shortest: number; beatsPerMinute: number }
function readySlip({ figure, share, by, shortest, beatsPerMinute }: Slipped) {
  const plan = schedule(figure)
  const at = Math.floor(share * plan.actions.length)
  return { plan, slip: slip(at, by), shortest: seconds(shortest), beatsPerMinute }
}

const furthest = (some: readonly number[], others: readonly number[]): number =>
  Math.max(...some.map((value, k) => Math.abs(value - others[k]!)))

/** What is left of a slip after each action: its size less the slack so far, (b − b before) − τ each. */
function closedForm({ actions }: Schedule, { at, by }: { at: number; by: number }, shortest: number): number[] {
  let slack = 0
  return actions.slice(at).map(({ moments: { leaves, full } }, k) => {
    const before = k === 0 ? leaves : actions[at + k - 1]!.moments.full
    slack += full - before - Math.min(shortest, full - leaves)
    return Math.max(0, by - slack)
  })
}

describe('knockOn(schedule, slip, shortest)', () => {
  test('is what is danced: perform(schedule, one slip) ends as late, in 1,000 figures', () => {
    fc.assert(
      fc.property(slipped, fc.boolean(), (given, hurries) => {
        const { plan, slip, shortest, beatsPerMinute } = readySlip(given)
        const least = hurries ? inBeats(shortest, beatsPerMinute) : NEVER_QUICKER
        const { late, steps } = knockOn(plan, slip, least)
        const { times } = perform(plan, { kind: 'slip', by: slip.by, on: [slip.at] }, least)
        const behind = times.map(({ full }, k) => full - plan.actions[k]!.moments.full)
        expect(late.length).toBe(times.length - slip.at)
        expect(furthest(late, behind.slice(slip.at))).toBeLessThanOrEqual(1e-9)
        const begun = times.filter(({ leaves }, k) => leaves - plan.actions[k]!.moments.leaves > 1e-9)
        expect(steps).toBe(begun.length)
      }),
      THOUSAND,
    )
  })

  test('and in every demo, with what its steps set for themselves, wherever one slips', () => {
    for (const plan of demos.map((figure) => schedule(figure))) {
      for (const { index: at } of plan.actions) {
        for (const least of [0.3, 0.7, 1.3, NEVER_QUICKER]) {
          const { times } = perform(plan, { kind: 'slip', by: beat(0.5), on: [at] }, least)
          const behind = times.slice(at).map(({ full }, k) => full - plan.actions[at + k]!.moments.full)
          expect(furthest(knockOn(plan, slip(at, 0.5), least).late, behind)).toBeLessThanOrEqual(1e-9)
        }
      }
    }
  })

  // Lindley’s closed form where no slack is negative (D. V. Lindley, Proc. Camb. Phil. Soc. 48:277, 1952; from memory).
  test('is the slip less the slack so far, in 10,000 figures, tempi and dancers', () => {
    fc.assert(
      fc.property(slippedWalks, (given) => {
        const { plan, slip, shortest, beatsPerMinute } = readySlip(given)
        const least = inBeats(shortest, beatsPerMinute)
        const { late, healed } = knockOn(plan, slip, least)
        const expected = closedForm(plan, slip, least)
        expect(furthest(late, expected)).toBeLessThanOrEqual(2e-9)
        expect(late.every((by, k) => by >= 0 && by <= (late[k - 1] ?? slip.by) + 1e-12)).toBe(true)
        expect(healed).toBe(expected.at(-1)! <= 1e-9)
      }),
      { ...THOUSAND, numRuns: 10_000 },
    )
  })

  test('a start ½ late with no slack after it stays ½ late for ever', () => {
    for (const least of [1, 1.4, NEVER_QUICKER]) {
      const { late, steps, healed } = knockOn(quicks(300), slip(0, 0.5), least)
      expect([new Set(late), late.length, steps, healed]).toEqual([new Set([0.5]), 300, 300, false])
    }
  })

  test('with equal slack σ it is gone after ⌈½ / σ⌉ steps, the one that slipped counted', () => {
    for (let parts = 1; parts < 48; parts++) {
      const slack = parts / 48
      const { late, steps, healed } = knockOn(quicks(60), slip(7, 0.5), 1 - slack)
      const expected = Math.ceil(0.5 / slack - 1e-9)
      expect([steps, healed, late.indexOf(0) + 1]).toEqual([expected, true, expected])
    }
  })
  test('so too where every step stands before the next: struck, it is the pause that makes up for it', () => {
    const struck = schedule(walks('paso doble', [1, 1, 1, 1]))
    expect(knockOn(struck, slip(1, 0.5), NEVER_QUICKER)).toEqual({ late: [0.5, 0, 0], steps: 1, healed: true })
    expect(knockOn(struck, slip(1, 0.75), NEVER_QUICKER)).toEqual({ late: [0.75, 0.25, 0], steps: 2, healed: true })
  })

  // Waltz at 84 a minute, the first step full 300 ms late, carried in 450 or 600 ms at the least: worked by hand.
  test.each([
    [450, [300, 35.714286, 0, 0]],
    [600, [300, 185.714286, 71.428571, 0]],
  ])('waltz, 84 a minute, %s ms at the least', (least, expected) => {
    const aBeat = 60_000 / 84
    const begins = slip(0, (300 + aBeat - least) / aBeat)
    const { late } = knockOn(schedule(walks('waltz', [1, 1, 1, 1])), begins, least / aBeat)
    for (const [k, by] of expected.entries()) expect(late[k]! * aBeat).toBeCloseTo(by, 6)
  })
  // Quickstep at 200 a minute, carried in 280 ms at the least: a quick 120 ms late gains 20, the slow takes up to 320.
  test('quickstep, 200 a minute: quicks gain a little each, the slow takes the rest', () => {
    const plan = schedule(walks('quickstep', [1, 1, 2, 2, 1, 1]))
    const { late } = knockOn(plan, slip(0, 0.4), 280 / 300)
    expect(late.map((by) => Math.round(by * 300e6) / 1e6)).toEqual([100, 80, 0, 0, 0, 0])
  })

  test('no slip, no lateness', () => {
    expect(knockOn(quicks(3), slip(1, 0), 2)).toEqual({ late: [0, 0], steps: 0, healed: true })
  })
  test('refuses what is no slip and no dancer', () => {
    expect(() => knockOn(quicks(3), slip(3, 0.5), 1)).toThrow(RangeError)
    expect(() => knockOn(quicks(3), slip(-1, 0.5), 1)).toThrow(RangeError)
    expect(() => knockOn(quicks(3), slip(0, -0.5), 1)).toThrow(RangeError)
    expect(() => knockOn(quicks(3), slip(0, 0.5), 0)).toThrow(RangeError)
  })
})

describe('knockOnChart(schedule, slip, shortest, tempi)', () => {
  /** The same schedule, and how often each action was taken out of it. */
  function watched(plan: Schedule): { plan: Schedule; taken: number[] } {
    const taken = plan.actions.map(() => 0)
    const actions: readonly ScheduledAction[] = new Proxy(plan.actions, {
      get(target, key, receiver) {
        if (typeof key === 'string' && /^\d+$/.test(key)) taken[Number(key)]!++
        return Reflect.get(target, key, receiver)
      },
    })
    return { plan: { ...plan, actions }, taken }
  }

  test.each([
    [8, 0, 1],
    [8, 3, 13],
    [80, 0, 13],
  ])('%s quicks, a slip at %s: each action is touched once for each of %s tempi', (count, at, tempi) => {
    const { plan, taken } = watched(quicks(count))
    const asked = Array.from({ length: tempi }, (_, k) => 40 + 15 * k)
    const chart = knockOnChart(plan, slip(at, 0.5), shortestTimes.comfortable, asked)
    expect(chart.map(({ beatsPerMinute }) => beatsPerMinute)).toEqual(asked)
    expect(taken).toEqual(Array.from({ length: count }, (_, index) => (index < at ? 0 : tempi)))
  })

  test('at each tempo it is the slip danced in so many beats; a quicker one makes nothing less late', () => {
    fc.assert(
      fc.property(slippedWalks, (given) => {
        const { plan, slip, shortest, beatsPerMinute } = readySlip(given)
        const tempi = [0.5, 1, 1.5, 2].map((times) => times * beatsPerMinute)
        const chart = knockOnChart(plan, slip, shortest, tempi)
        for (const [k, row] of chart.entries()) {
          const { late, steps } = knockOn(plan, slip, (shortest * tempi[k]!) / 60)
          expect([row.late, row.steps]).toEqual([late, steps])
          expect(row.late.every((by, n) => by >= (chart[k - 1]?.late[n] ?? 0) - 1e-9)).toBe(true)
        }
      }),
      { ...THOUSAND, numRuns: 300 },
    )
  })
})

const ANY = { from: 1, to: 10_000 }
const turning = (plan: Schedule, at = 0, tempi = ANY, by = 0.5) =>
  turningTempo(plan, slip(at, by), shortestTimes.comfortable, tempi)

// The thresholds follow from 0.42 s: ½ beat, 1 beat and 1½ beats of it are 71.4, 142.9 and 214.3 beats a minute.
describe('0.42 s to carry the weight across, ½ beat late (own judgement; the thresholds are arithmetic)', () => {
  test('one-beat steps: in one step at 71 a minute and below, never at 143 and above', () => {
    for (const tempo of [30, 60, 71]) expect(steps(quicks(8), 0, tempo)).toBe(1)
    expect(steps(quicks(8), 0, 72)).toBe(2)
    // The longest figure that a file can hold.
    expect(steps(quicks(500), 0, 142.5)).not.toBeNull()
    for (const tempo of [143, 180, 208]) expect(steps(quicks(500), 0, tempo)).toBeNull()
    expect(turning(quicks(8)).itself).toEqual({ made: 'up to', beatsPerMinute: 30 / 0.42, by: 0 })
  })
  test('n of them: each at most 1 − 1 / 2n beats', () => {
    for (const count of [1, 2, 3, 8, 500]) {
      const { inFigure } = turning(quicks(count))
      expect(inFigure).toMatchObject({ made: 'up to', by: count - 1 })
      if (inFigure.made === 'up to') expect(inFigure.beatsPerMinute).toBeCloseTo((60 * (1 - 0.5 / count)) / 0.42, 9)
    }
  })
  test('a slow makes up for it up to 214 a minute: its own slip, and one before it', () => {
    const [own, before] = [[2, 1, 1] as const, [1, 1, 1, 2, 1] as const].map((values) =>
      schedule(walks('foxtrot', values)),
    ) as [Schedule, Schedule]
    expect([steps(own, 0, 214), steps(own, 0, 215)]).toEqual([1, null])
    expect([steps(before, 0, 214), steps(before, 0, 215)]).toEqual([4, null])
    expect(turning(own).itself).toEqual({ made: 'up to', beatsPerMinute: 90 / 0.42, by: 0 })
    expect(turning(own).inFigure).toEqual(turning(own).itself)
    expect(turning(before).inFigure).toEqual({ made: 'up to', beatsPerMinute: 90 / 0.42, by: 3 })
  })
  test('so in the tempo range of every dance', () => {
    for (const { tempo, beatsPerBar } of danceList.filter(({ id }) => id !== 'exercise'))
      expect(tempo.to * beatsPerBar).toBeLessThan(214)
  })
})

/** The highest tempo at which what is danced is in time again at an action, by halving; null: not even at `from`. */
function byHalving(plan: Schedule, at: number, by: number, shortest: Seconds, last: number): number | null {
  const inTime = (tempo: number): boolean => {
    const { times } = perform(plan, { kind: 'slip', by: beat(by), on: [at] }, inBeats(shortest, tempo))
    return times[last]!.full - plan.actions[last]!.moments.full <= 1e-9
  }
  let [from, to] = [ANY.from, ANY.to]
  if (!inTime(from)) return null
  if (inTime(to)) return to
  while (to - from > 5e-7 * to) {
    const middle = (from + to) / 2
    if (inTime(middle)) from = middle
    else to = middle
  }
  return from
}

describe('turningTempo(schedule, slip, shortest, tempi)', () => {
  test('is where what is danced turns, found by halving, for the step itself and for the figure, in 100 figures', () => {
    const kinds = new Set<string>()
    fc.assert(
      fc.property(slipped, (given) => {
        const { plan, slip, shortest } = readySlip(given)
        const { itself, inFigure } = turningTempo(plan, slip, shortest, ANY)
        for (const [name, found, last] of [
          ['itself', itself, slip.at],
          ['in the figure', inFigure, plan.actions.length - 1],
        ] as const) {
          kinds.add(`${name} ${found.made}`)
          const halved = byHalving(plan, slip.at, slip.by, shortest, last)
          const tempo =
            found.made === 'at no tempo' ? null : found.made === 'at every tempo' ? ANY.to : found.beatsPerMinute
          if (halved === null || tempo === null) expect(tempo).toBe(halved)
          else expect(Math.abs(tempo / halved - 1)).toBeLessThan(1e-6)
        }
      }),
      { ...THOUSAND, numRuns: 100 },
    )
    // None of the answers went untested.
    expect(kinds.size).toBe(6)
  })

  test('names the first step that is in time at it, and just above it none is', () => {
    fc.assert(
      fc.property(slippedWalks, (given) => {
        const { plan, slip, shortest } = readySlip(given)
        const { inFigure } = turningTempo(plan, slip, shortest, ANY)
        if (inFigure.made !== 'up to') return
        const [at, above] = knockOnChart(plan, slip, shortest, [
          inFigure.beatsPerMinute,
          inFigure.beatsPerMinute * (1 + 1e-6),
        ])
        expect(slip.at + at!.late.indexOf(0)).toBe(inFigure.by)
        expect([at!.healed, above!.healed]).toEqual([true, false])
      }),
      THOUSAND,
    )
  })

  test('"every" and "no" tempo are meant of those that are asked for', () => {
    const plan = quicks(8)
    expect(turning(plan, 0, { from: 20, to: 71 }).itself).toEqual({ made: 'at every tempo', by: 0 })
    expect(turning(plan, 0, { from: 72, to: 100 }).itself).toEqual({ made: 'at no tempo' })
    // At 100 a minute a step gains 0.3 beat: the second is in time.
    expect(turning(plan, 0, { from: 72, to: 100 }).inFigure).toEqual({ made: 'at every tempo', by: 1 })
    expect(turning(plan, 0, { from: 134, to: 208 }).inFigure).toEqual({ made: 'at no tempo' })
    // A whole beat late, a quick can never be in time at its end.
    expect(turning(plan, 0, ANY, 1).itself).toEqual({ made: 'at no tempo' })
    expect(() => turning(plan, 0, { from: 0, to: 100 })).toThrow(RangeError)
    expect(() => turning(plan, 0, { from: 100, to: 90 })).toThrow(RangeError)
  })
  test('what the pauses alone make up for is made up for at every tempo, rounding or not', () => {
    // Struck: 49/48 − ½ of a pause, and as much late; in floating point the two differ.
    const plan = schedule(walks('paso doble', [49 / 48, 1]))
    expect(turning(plan, 0, ANY, 25 / 48).inFigure).toEqual({ made: 'at every tempo', by: 1 })
  })
  test('no slip is in time at every tempo', () => {
    expect(turning(quicks(2), 1, ANY, 0).itself).toEqual({ made: 'at every tempo', by: 1 })
  })
})

describe('the demos of a run of quicks, in quickstep', () => {
  const demo = (title: string): Schedule => schedule(demos.find((figure) => figure.title === title)!)
  const [run, withSlow] = [demo('Run of eight quicks'), demo('Run of quicks with a slow in it')]
  const { quickstep } = dances
  const full = defaultTempo(quickstep).barsPerMinute * quickstep.beatsPerBar
  const slowest = playedTempoRange(quickstep).from * quickstep.beatsPerBar

  test('without a slow it is never made up for at the full tempo, and in one step when slow', () => {
    for (let at = 0; at < 8; at++) expect([steps(run, at, full), steps(run, at, slowest)]).toEqual([null, 1])
    expect(knockOn(run, slip(0, 0.5), inBeats(shortestTimes.comfortable, full)).late).toEqual(new Array(8).fill(0.5))
  })
  test('with a slow the slow makes up for it at the full tempo, whichever step before it slips', () => {
    const slow = withSlow.actions.findIndex(({ value }) => value === 2)
    expect(slow).toBe(4)
    for (let at = 0; at <= slow; at++) expect(steps(withSlow, at, full)).toBe(slow - at + 1)
    for (const at of [5, 6]) expect(steps(withSlow, at, full)).toBeNull()
  })
})
