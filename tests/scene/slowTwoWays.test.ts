import { describe, expect, test } from 'vitest'
import type { Convention, DanceId } from '../../src/dance/dance.ts'
import { danceList, dances } from '../../src/dance/dances.ts'
import { slowTwoWays } from '../../src/scene/slowTwoWays.ts'
import { wayOf } from '../../src/transfer/faults.ts'
import type { WayKind } from '../../src/transfer/way.ts'
import { seconds, toBeat } from '../../src/units.ts'

const PER_BEAT = seconds(0.5)
const inDance = (id: DanceId, convention: Convention = dances[id].convention, kind: WayKind = 'in time') =>
  slowTwoWays(dances[id], convention, PER_BEAT, wayOf(kind))

const TRAVELLING: readonly Convention[] = ['split on the count', 'full on the count']
const withSlows = danceList.filter(({ signs }) => signs.S !== null)
/** Every dance with slows, in both ways in which a step takes all of its time. */
const cases = withSlows.flatMap(({ id }) => TRAVELLING.map((convention) => [id, convention] as const))

describe.each(cases)('slowTwoWays(%s, %s)', (id, convention) => {
  const { dance, instead, steps } = inDance(id, convention)
  const [quick, larger, slower] = steps as [(typeof steps)[0], (typeof steps)[0], (typeof steps)[0]]
  const { S, Q } = dances[id].signs
  const [s, q] = [toBeat(S ?? Q ?? dances[id].signs.a), toBeat(Q ?? dances[id].signs.a)]

  test('is shown in that dance, and takes what its signs are worth', () => {
    expect([dance.id, instead]).toEqual([id, null])
    expect(steps.map(({ name }) => name)).toEqual(['quick', 'larger', 'slower'])
    expect(steps.map(({ beats }) => beats)).toEqual([q, s, s])
  })

  test('goes at length by time: the larger one as fast as the quick, the slower one as much slower as it is longer', () => {
    for (const { speed, length, beats } of steps) expect(speed).toBeCloseTo(length / (beats * PER_BEAT), 12)
    expect(larger.length / quick.length).toBeCloseTo(s / q, 12)
    expect(slower.length).toBeCloseTo(quick.length, 12)
    expect(steps.map(({ ofQuick }) => ofQuick)).toEqual([1, expect.closeTo(1, 12), expect.closeTo(q / s, 12)])
    // Every dance's slow is two quicks, so that half the speed is left.
    expect(slower.ofQuick).toBeCloseTo(0.5, 12)
  })

  test('waits nowhere: the weight never stands, and gains ground in every sixteenth of a beat', () => {
    for (const { still, waits, path, beats } of steps) {
      expect(still).toBeCloseTo(0, 12)
      expect(waits).toBe(0)
      expect(path).toHaveLength(beats * 16 + 1)
      for (const [k, { y }] of path.entries()) if (k > 0) expect(y).toBeGreaterThan((path[k - 1]?.y ?? y) + 1e-4)
    }
  })

  test('has a bead each half beat, as far apart as the weight is fast', () => {
    const gaps = steps.map(({ beads }) => beads.slice(1).map(({ y }, k) => y - (beads[k]?.y ?? 0)))
    for (const [k, { beads, beats, length }] of steps.entries()) {
      expect(beads).toHaveLength(2 * beats + 1)
      for (const gap of gaps[k] ?? []) expect(gap).toBeCloseTo(length / (2 * beats), 9)
    }
    expect(gaps[1]?.[0]).toBeCloseTo(gaps[0]?.[0] as number, 9)
    expect(gaps[2]?.[0]).toBeCloseTo((gaps[0]?.[0] as number) * 0.5, 9)
  })
})

test('slowTwoWays: samba is in 2/4, so its slow is one beat and its quick half of one (IDTA revision cards)', () => {
  expect(inDance('samba').steps.map(({ beats }) => beats)).toEqual([0.5, 1, 1])
  expect(inDance('foxtrot').steps.map(({ beats }) => beats)).toEqual([1, 2, 2])
})

test('slowTwoWays: twice the seconds a beat is half the speed, and the same parts of the quick’s', () => {
  const [fast, slow] = [0.5, 1].map((perBeat) =>
    slowTwoWays(dances.foxtrot, 'split on the count', seconds(perBeat)).steps.map(({ speed, ofQuick }) => [
      speed * perBeat,
      ofQuick,
    ]),
  )
  expect(slow).toEqual(fast)
})

test.each([
  ['waltz', 'split on the count', 'no slows'],
  ['viennese waltz', 'split on the count', 'no slows'],
  ['paso doble', 'struck', 'no slows'],
  // A strike takes half a beat whatever the sign: there is no slow to fill.
  ['tango', 'struck', 'struck'],
  ['exercise', 'struck', 'struck'],
] as const)('slowTwoWays(%s, %s) is shown as the free exercise: %s', (id, convention, why) => {
  const { dance, instead, steps } = inDance(id, convention)
  expect([dance.id, instead]).toEqual(['exercise', why])
  expect(steps.map(({ ofQuick, still }) => [ofQuick, still])).toEqual([
    [1, 0],
    [1, 0],
    [0.5, 0],
  ])
})

describe('slowTwoWays measures what is danced, so a fault shows in it', () => {
  test('early, across in half the time: stands the other half, and goes twice as fast meanwhile', () => {
    const [planned, early] = [inDance('foxtrot'), inDance('foxtrot', undefined, 'early')]
    expect(early.steps.map(({ still }) => still)).toEqual([0.5, 1, 1])
    expect(early.steps.map(({ waits }) => waits)).toEqual([0.5, 1, 1])
    for (const [k, { speed }] of early.steps.entries()) {
      expect(speed).toBeCloseTo(2 * (planned.steps[k]?.speed ?? 0), 12)
    }
  })
  test('a stop in the middle is no part of the travelling', () => {
    for (const { still, waits } of inDance('foxtrot', undefined, 'stops').steps) {
      expect(still).toBeGreaterThan(0.2)
      expect(waits).toBeGreaterThan(0.2)
    }
  })
})

test('slowTwoWays: the foot goes as far ahead of the standing one as the weight, in its own track', () => {
  for (const { feet, length } of inDance('quickstep').steps) {
    const { standing, from, to } = feet
    expect([standing.foot, from.foot, to.foot]).toEqual(['left', 'right', 'right'])
    expect(to.y - standing.y).toBeCloseTo(length, 12)
    // Closed feet touch: breadth 102 mm (ANSUR II, median man) and a centimetre between.
    for (const { x } of [from, to]) expect(x - standing.x).toBeCloseTo(0.112, 12)
    expect(from.y).toBe(standing.y)
  }
})
