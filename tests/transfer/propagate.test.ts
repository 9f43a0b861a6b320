import { alg, Graph } from '@dagrejs/graphlib'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { chain, type Event, propagate } from '../../src/transfer/propagate.ts'
import { THOUSAND } from '../tools/generateFigure.ts'

const WHENEVER = Number.NEGATIVE_INFINITY
const late = (times: readonly number[], due: readonly number[]): number[] => times.map((time, k) => time - due[k]!)

describe('chain(due, least, first): worked by hand', () => {
  test('in whole numbers, slack 2 2 −2 2 2 (own example)', () => {
    const due = [0, 10, 20, 30, 40, 50]
    const times = chain(due, [0, 8, 8, 12, 8, 8], 5)
    expect(times).toEqual([5, 13, 21, 33, 41, 50])
    expect(late(times, due)).toEqual([5, 3, 1, 3, 1, 0])
  })

  // Waltz at 84 beats a minute, in milliseconds: the first step 300 late.
  test.each([
    [450, [300, 35.714286, 0, 0]],
    [600, [300, 185.714286, 71.428571, 0]],
  ])('waltz, 84 a minute, %s ms at the least', (least, expected) => {
    const due = [0, 1, 2, 3].map((beat) => (beat * 60_000) / 84)
    const found = late(chain(due, [0, least, least, least], 300), due)
    for (const [k, by] of expected.entries()) expect(found[k]).toBeCloseTo(by, 6)
  })

  // Quickstep at 200 beats a minute, S Q Q S S Q Q, in milliseconds.
  test.each([
    [280, 120, [120, 0, 0, 0, 0, 0, 0, 0]],
    [320, 0, [0, 0, 20, 40, 0, 0, 20, 40]],
  ])('quickstep, 200 a minute, %s ms at the least, %s late at first', (least, first, expected) => {
    const due = [0, 600, 900, 1200, 1800, 2400, 2700, 3000]
    expect(
      late(
        chain(
          due,
          due.map(() => least),
          first,
        ),
        due,
      ),
    ).toEqual(expected)
  })

  test('nothing is sooner than due', () => {
    expect(chain([0, 10], [0, 8], -5)).toEqual([0, 10])
  })
})

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
/** Links after the first event: from due to due, and the least time between. */
const links = fc.array(fc.record({ gap: number(0, 20), least: number(0, 20) }), { minLength: 1, maxLength: 12 })

function chainOf(list: readonly { gap: number; least: number }[], first: number): { late: number[]; slacks: number[] } {
  const due = [0]
  for (const { gap } of list) due.push(due.at(-1)! + gap)
  const times = chain(due, [0, ...list.map(({ least }) => least)], first)
  return { late: late(times, due), slacks: list.map(({ gap, least }) => gap - least) }
}

describe('chain(due, least, first): properties of max-plus delays (Goverde, Transp. Res. B 41:179–201, 2007)', () => {
  // Lindley’s waiting times unrolled (D. V. Lindley, Proc. Camb. Phil. Soc. 48:277, 1952; from memory).
  test('lateness is max(0, L0 − all slack, −the slack after j for each j), on 10,000 chains', () => {
    fc.assert(
      fc.property(links, number(0, 30), (list, first) => {
        const { late, slacks } = chainOf(list, first)
        const expected = late.map((_, n) => {
          const lost = (j: number): number => -slacks.slice(j, n).reduce((sum, slack) => sum + slack, 0)
          return Math.max(0, first + lost(0), ...Array.from({ length: Math.max(0, n - 1) }, (_, j) => lost(j + 1)))
        })
        expect(Math.max(...late.map((by, n) => Math.abs(by - expected[n]!)))).toBeLessThan(1e-9)
      }),
      { ...THOUSAND, numRuns: 10_000 },
    )
  })

  test('never below 0; a later start makes nothing sooner, and nothing later by more than itself', () => {
    fc.assert(
      fc.property(links, number(0, 30), number(0, 10), (list, first, more) => {
        const [one, other] = [chainOf(list, first).late, chainOf(list, first + more).late]
        const grown = other.map((by, k) => by - one[k]!)
        expect(Math.min(...one)).toBeGreaterThanOrEqual(0)
        expect(Math.min(...grown)).toBeGreaterThanOrEqual(-1e-9)
        expect(Math.max(...grown)).toBeLessThanOrEqual(more + 1e-9)
      }),
      THOUSAND,
    )
  })

  test('with equal slack it is gone after ⌈L0 / slack⌉ links and not before', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 9 }), (first, slack) => {
        const list = Array.from({ length: 45 }, () => ({ gap: 10, least: 10 - slack }))
        expect(chainOf(list, first).late.indexOf(0)).toBe(Math.ceil(first / slack))
      }),
      THOUSAND,
    )
  })

  test('with a mean slack below 0 it grows without end, from nothing', () => {
    const list = Array.from({ length: 300 }, (_, k) => ({ gap: 10, least: k % 3 === 2 ? 14 : 9 }))
    const { late } = chainOf(list, 0)
    for (let k = 30; k <= 300; k += 30) expect(late[k]).toBeGreaterThanOrEqual((k * 2) / 3)
  })

  test('without due times all is shifted by what the first is shifted', () => {
    fc.assert(
      fc.property(links, number(-30, 30), (list, by) => {
        const least = [0, ...list.map(({ least }) => least)]
        const due = least.map(() => WHENEVER)
        const [one, other] = [chain(due, least, 0), chain(due, least, by)]
        for (const [k, time] of one.entries()) expect(other[k]).toBeCloseTo(time + by, 9)
      }),
      THOUSAND,
    )
  })
})

describe('propagate(events): two stations, loops of 2 and 3, links of 5 and 3', () => {
  // B. Heidergott, G. J. Olsder, J. van der Woude, Max Plus at Work, Princeton 2006, chapter 0 (the network from memory, its
  // rows worked out once more apart from this program). TRAVEL[i][j]: from j to i.
  const TRAVEL = [
    [2, 5],
    [3, 3],
  ] as const

  type Pair = readonly [number, number]
  /** Departures x(0), x(1), …; due times by round, or none. */
  function departures(x0: Pair, rounds: number, dueIn: (round: number) => Pair = () => [WHENEVER, WHENEVER]): Pair[] {
    const events: Event[] = x0.map((due) => ({ due, after: [] }))
    for (let round = 1; round <= rounds; round++) {
      for (const to of [0, 1] as const) {
        const after = [0, 1].map((from) => ({ event: 2 * (round - 1) + from, least: TRAVEL[to][from as 0 | 1] }))
        events.push({ due: dueIn(round)[to], after })
      }
    }
    const times = propagate(events)
    return Array.from({ length: rounds + 1 }, (_, round) => [times[2 * round]!, times[2 * round + 1]!] as const)
  }

  test('without timetable, from (0, 0) and from (1, 0)', () => {
    expect(departures([0, 0], 6).slice(1)).toEqual([
      [5, 3],
      [8, 8],
      [13, 11],
      [16, 16],
      [21, 19],
      [24, 24],
    ])
    expect(departures([1, 0], 4).slice(1)).toEqual([
      [5, 4],
      [9, 8],
      [13, 12],
      [17, 16],
    ])
  })

  test('its period is the mean of the critical circuit, (3 + 5) / 2 = 4', () => {
    const [steady, other] = [departures([1, 0], 40), departures([0, 0], 40)]
    for (let k = 1; k <= 40; k++) expect(steady[k]).toEqual([1 + 4 * k, 4 * k])
    for (let k = 0; k <= 38; k += 2) expect(other[k + 2]).toEqual(other[k]!.map((time) => time + 8))
  })

  test.each([
    [2, [8, 8], [6, 8]],
    [3, [11, 13], [11, 11]],
    [4, [16, 16], [14, 16]],
    [5, [19, 21], [19, 19]],
  ])('travel over %s rounds: the power of the matrix', (power, to0, to1) => {
    const columns = [departures([0, WHENEVER], power)[power]!, departures([WHENEVER, 0], power)[power]!]
    expect([columns.map(([to]) => to), columns.map(([, to]) => to)]).toEqual([to0, to1])
  })

  /** Lateness by round against the timetable (1, 0) + round × period. */
  function lateness(period: number, delay: Pair, rounds: number): Pair[] {
    const due = (round: number): Pair => [1 + round * period, round * period]
    const times = departures([1 + delay[0], delay[1]], rounds, due)
    return times.map((time, round) => [time[0] - due(round)[0], time[1] - due(round)[1]] as const)
  }
  const rows = (text: string) => text.split(' ').map((pair) => pair.split(',').map(Number))

  test.each([
    [5, [3, 0], '3,0 0,2 1,0 0,0 0,0'],
    [5, [7, 0], '7,0 4,6 5,4 3,4 3,2 1,2 1,0 0,0 0,0'],
    [6, [7, 0], '7,0 3,5 3,2 0,1 0,0 0,0'],
    [4, [3, 0], '3,0 1,3 3,2 2,3 3,2'],
  ] as const)('lateness with a train every %s, delayed by %j', (period, delay, text) => {
    const expected = rows(text)
    expect(lateness(period, delay, expected.length - 1)).toEqual(expected)
  })

  test('a timetable of the period itself never recovers; a quicker one cannot be kept even undelayed', () => {
    for (const [a, b] of lateness(4, [3, 0], 300)) expect(Math.max(a, b)).toBeGreaterThan(0)
    expect(lateness(4, [0, 0], 50).flat()).toEqual(Array.from({ length: 102 }, () => 0))
    expect(Math.max(...lateness(3.5, [0, 0], 50)[50]!)).toBeGreaterThan(20)
  })
})

describe('propagate(events): the critical path method (own example)', () => {
  /** How long each takes, and what it waits for. */
  const PLAN: readonly (readonly [name: string, takes: number, after: string])[] = [
    ['A', 3, ''],
    ['B', 4, 'A'],
    ['C', 2, 'A'],
    ['D', 5, 'B'],
    ['E', 1, 'C'],
    ['F', 2, 'C'],
    ['G', 4, 'DE'],
    ['H', 3, 'FG'],
  ]
  const takes = (name: string): number => PLAN.find(([it]) => it === name)![1]

  /** When each can begin if what it waits for takes its time. */
  const begins = (plan: typeof PLAN): number[] =>
    propagate(
      plan.map(([, , after]) => ({
        due: 0,
        after: [...after].map((name) => ({ event: plan.findIndex(([it]) => it === name), least: takes(name) })),
      })),
    )
  const spans = (starts: readonly number[]): string =>
    PLAN.map(([name], k) => `${name}${starts[k]}-${starts[k]! + takes(name)}`).join(' ')

  test('earliest start and finish', () => {
    expect(spans(begins(PLAN))).toBe('A0-3 B3-7 C3-5 D7-12 E5-6 F5-7 G12-16 H16-19')
  })
  test('latest start and finish: the same plan run backwards from its end, 19', () => {
    const backwards = PLAN.toReversed().map(([name, time]) => {
      const followers = PLAN.filter(([, , after]) => after.includes(name)).map(([it]) => it)
      return [name, time, followers.join('')] as const
    })
    const latest = begins(backwards)
      .toReversed()
      .map((start, k) => 19 - start - PLAN[k]![1])
    expect(spans(latest)).toBe('A0-3 B3-7 C9-11 D7-12 E11-12 F14-16 G12-16 H16-19')
    expect(latest.map((start, k) => start - begins(PLAN)[k]!)).toEqual([0, 0, 6, 0, 6, 9, 0, 0])
  })
})

describe('propagate(events): a second opinion', () => {
  const events = fc
    .array(
      fc.record({
        due: fc.oneof(fc.constant(WHENEVER), number(-20, 20)),
        after: fc.array(fc.record({ event: fc.nat(20), least: number(-5, 15) }), { maxLength: 4 }),
      }),
      { minLength: 1, maxLength: 9 },
    )
    .map((list): Event[] =>
      list.map(({ due, after }, index) => ({
        due,
        // One link between two events: of parallel ones the library takes the last, not the shortest.
        after: [...new Map(index === 0 ? [] : after.map(({ event, least }) => [event % index, least]))].map(
          ([event, least]) => ({ event, least }),
        ),
      })),
    )

  // Each time is the longest path to it: the shortest with negated weights, by Floyd and Warshall in @dagrejs/graphlib.
  test('the longest paths of a graph library, in 300 networks', () => {
    fc.assert(
      fc.property(events, (list) => {
        const graph = new Graph()
        graph.setNode('start')
        for (const [to, { due, after }] of list.entries()) {
          graph.setNode(`${to}`)
          if (due > WHENEVER) graph.setEdge('start', `${to}`, -due)
          for (const { event, least } of after) graph.setEdge(`${event}`, `${to}`, -least)
        }
        const shortest = alg.floydWarshall(graph, (edge) => graph.edge(edge) as number)
        for (const [to, time] of propagate(list).entries()) {
          const longest = -shortest.start![`${to}`]!.distance
          if (longest === WHENEVER) expect(time).toBe(WHENEVER)
          else expect(time).toBeCloseTo(longest, 9)
        }
      }),
      { ...THOUSAND, numRuns: 300 },
    )
  })

  test('an event cannot wait for itself or for a later one', () => {
    const waiting = (event: number) => () => propagate([{ due: 0, after: [{ event, least: 1 }] }])
    expect(waiting(0)).toThrow('event 0 waits for 0')
    expect(waiting(1)).toThrow(RangeError)
  })
})
