import { describe, expect, test } from 'vitest'
import type { Figure, Foot } from '../../src/figure/figure.ts'
import { type Pose, pose } from '../../src/pose/pose.ts'
import { behind, type Comparison } from '../../src/transfer/comparison.ts'
import { faults } from '../../src/transfer/faults.ts'
import { stageWords } from '../../src/words/stageWords.ts'
import { wayName } from '../../src/words/wayName.ts'
import { type Danced, dancedWay, footOf } from '../tools/dancedWay.ts'
import { demos } from '../tools/demos.ts'
import { beatsOf, sizeOf } from '../tools/readSizes.ts'
import { waysOf } from '../tools/waysOf.ts'

/*
 * Every sentence is read back by a grammar of its own, written here, and held against the pose and the curve: where the
 * feet and the marker are, whether they move, which times the moments have. The loads (all of it from ⅝ of a step on, half
 * of it at the split) are those of pose.test.ts; the words are the trade's (common practice).
 */

const EXACT = 1e-6
/** Sizes are said to eighths of a beat; less than half of one is not said. */
const HALF_EIGHTH = 1 / 16

const other = (foot: Foot): Foot => (foot === 'left' ? 'right' : 'left')

type Now = {
  readonly p: number
  /** What is under way, or was done last: its index, foot, share, direction, and how much of it is done (1: all). */
  readonly index: number
  readonly foot: Foot
  readonly weight: number
  readonly direction: string
  readonly u: number
  readonly pose: Pose
  /** How far the marker is from the standing foot to the acting one. */
  readonly between: number
  /** Only a part of the weight goes over, or a part of it was there before: the split is not half way. */
  readonly isPart: boolean
  /** The curve goes on before it, and after it. */
  readonly goes: readonly [before: boolean, after: boolean]
}

function nowAt({ comparison, performance: { curve, carried }, floor }: Danced, t: number): Now {
  const { figure } = comparison.schedule
  const p = curve.at(t)
  const index = Math.max(0, Math.ceil(p - EXACT) - 1)
  const foot = footOf(figure, carried, index)
  const now = pose(floor, p)
  const [to, from] = [now[foot], now[other(foot)]]
  const way = { x: to.x - from.x, y: to.y - from.y }
  const between = ((now.weight.x - from.x) * way.x + (now.weight.y - from.y) * way.y) / (way.x ** 2 + way.y ** 2)
  const near = 1 / 64
  const goes = [p - curve.at(t - near) > 1e-9, curve.at(t + near) - p > 1e-9] as const
  const { direction } = figure.actions[index] as Figure['actions'][number]
  const weight = carried[index] as number
  const isPart = weight < 1 || pose(floor, index)[foot].load > EXACT
  return { p, index, foot, weight, direction, u: p - index, pose: now, between, isPart, goes }
}

const FOOT = '(?<foot>left|right)'
const OTHER = '(?<other>left|right)'
const loadOn = ({ pose: now }: Now, foot: string | undefined): number => now[foot as Foot].load
const isFull = (now: Now, foot: string | undefined): boolean => loadOn(now, foot) > 1 - EXACT
const done = ({ u }: Now): boolean => Math.abs(u - 1) < EXACT
const isSplit = ({ u }: Now): boolean => Math.abs(u - 0.5) < EXACT
const halfWay = (now: Now): boolean => Math.abs(now.between - 0.5) < 0.01 && Math.abs(now.pose.left.load - 0.5) < 0.01
const stands = ({ goes: [before, after] }: Now): boolean => !before && !after
const moves = ({ goes }: Now): boolean => goes[0] && goes[1]
const takesNone = ({ weight }: Now): boolean => weight === 0

type Said = Readonly<Record<string, string | undefined>>
type Sentence = readonly [says: RegExp, holds: (now: Now, said: Said) => boolean]
const sentence = (text: string, holds: Sentence[1]): Sentence => [new RegExp(`^${text}$`), holds]
const acts = (now: Now, { foot }: Said): boolean => foot === now.foot
const onOther = ({ foot, other: second }: Said): boolean => foot !== second
const TURNS = '(pivoting|twisting|turning on the heel)'

/** All that may be said, and what must be so when it is. */
const SENTENCES: readonly Sentence[] = [
  sentence(`over the ${FOOT} foot, ready`, (now, { foot }) => now.p < EXACT && isFull(now, foot) && foot !== now.foot),
  sentence(
    `fully over the ${FOOT} foot, (${OTHER} (collected|in its place|passing|on its way in)|${TURNS})`,
    (now, said) =>
      done(now) &&
      acts(now, said) &&
      now.weight === 1 &&
      isFull(now, said.foot) &&
      (said.other === undefined || onOther(said)),
  ),
  sentence(
    `standing on the ${FOOT} foot, waiting`,
    (now, said) => done(now) && acts(now, said) && isFull(now, said.foot) && stands(now),
  ),
  sentence(
    `part weight on the ${FOOT} foot \\((?<part>\\S+)\\)(?<waits>, waiting|, ${TURNS})?`,
    (now, said) =>
      done(now) &&
      acts(now, said) &&
      now.weight < 1 &&
      sizeOf(said.part ?? '') === now.weight &&
      Math.abs(loadOn(now, said.foot) - now.weight) < EXACT &&
      (said.waits !== ', waiting' || stands(now)),
  ),
  sentence(
    `moving, ${FOOT} foot on its way`,
    (now, said) =>
      now.u < 0.5 && acts(now, said) && moves(now) && now.direction !== 'in place' && loadOn(now, said.foot) < 0.5,
  ),
  sentence(
    `leaving the ${FOOT} foot`,
    (now, { foot }) => now.u < 0.5 && foot !== now.foot && moves(now) && now.direction === 'in place',
  ),
  sentence(`(?<placed>placed, )?half way between the feet`, (now, { placed }) => {
    const down = now.pose.left.onFloor && now.pose.right.onFloor
    return isSplit(now) && down && halfWay(now) && (placed === undefined) === (now.direction === 'in place')
  }),
  sentence(`(placed, )?part way between the feet`, (now) => isSplit(now) && now.isPart),
  sentence(`stopped half way between the feet`, (now) => isSplit(now) && stands(now) && halfWay(now)),
  sentence(`stopped part way between the feet`, (now) => isSplit(now) && stands(now) && now.isPart),
  sentence(
    `transferring to the ${FOOT} foot`,
    (now, said) =>
      now.u > 0.5 && !done(now) && acts(now, said) && moves(now) && loadOn(now, said.foot) >= now.weight / 2 - EXACT,
  ),
  sentence(
    `${FOOT} foot (placed without the body, which waits|in its place, the body waits)`,
    (now, said) =>
      now.u < 0.5 && acts(now, said) && now.pose[now.foot].onFloor && loadOn(now, said.foot) < 0.5 && !moves(now),
  ),
  sentence(
    `${FOOT} foot (placed|in its place), the body follows`,
    (now, said) => now.u < 0.5 && acts(now, said) && now.pose[now.foot].onFloor && moves(now),
  ),
  sentence(
    `${FOOT} foot coming in, no weight on it`,
    (now, said) => takesNone(now) && now.u < 0.5 && acts(now, said) && loadOn(now, said.foot) < EXACT,
  ),
  sentence(
    `${FOOT} foot (taps|points|touches), weight stays on the ${OTHER}`,
    (now, said) =>
      takesNone(now) && now.u >= 0.5 - EXACT && acts(now, said) && onOther(said) && isFull(now, said.other),
  ),
  sentence(
    `over the ${OTHER} foot, ${FOOT} touching without weight`,
    (now, said) => takesNone(now) && done(now) && acts(now, said) && onOther(said) && isFull(now, said.other),
  ),
]

/** Whether the plan stands at this progress too: its own rest. */
const planRests = ({ ideal: { curve } }: Comparison, p: number): boolean => curve.departs(p) - curve.arrives(p) > EXACT

function checkStage(one: Danced, t: number, isDynamics: boolean, at: string): void {
  const { comparison, performance } = one
  const said = stageWords(comparison, 0, t)
  const where = `${at} at ${t}: ${said}`
  const parts = /^(?:(?<side>late|early) by (?<size>\S+ beats?): )?(?<wrong>wrong foot: )?(?<state>[^:]+)$/.exec(
    said,
  )?.groups
  if (parts === undefined) expect.fail(where)
  const { side, size, wrong, state = '' } = parts
  const now = nowAt(one, t)

  const late = isDynamics ? 0 : behind(performance, comparison.ideal, t)
  const saidLate = size === undefined ? 0 : (side === 'late' ? 1 : -1) * beatsOf(size)
  if (Math.abs(saidLate - late) > HALF_EIGHTH + 1e-9 || (size !== undefined && saidLate === 0))
    expect.fail(`${where} is ${late}`)

  const { figure } = comparison.schedule
  const isWrong = now.p > EXACT && now.foot !== footOf(figure, comparison.ideal.carried, now.index)
  if ((wrong !== undefined) !== isWrong) expect.fail(`${where}, wrong foot: ${isWrong}`)

  const fitting = SENTENCES.flatMap(([says, holds]) => {
    const groups = says.exec(state)
    return groups === null ? [] : [holds(now, groups.groups ?? {})]
  })
  if (fitting.length !== 1 || !fitting[0]) expect.fail(`${where} is not so, or not one sentence`)
  if (now.weight < 1 && done(now) && state.includes('fully')) expect.fail(`${where} takes ${now.weight}`)
  // A dead stand is said to be one.
  const { from, to } = performance.curve
  const isWait = t > from && t < to && stands(now) && !takesNone(now) && !planRests(comparison, now.p)
  if (isWait && !/wait|stopped/.test(state)) expect.fail(`${where} stands`)
}

const halfBeats = (from: number, to: number): number[] =>
  Array.from({ length: Math.ceil(to * 2) - Math.floor(from * 2) + 1 }, (_, k) => (Math.floor(from * 2) + k) / 2)

describe('every sentence of every demo is so', () => {
  test.each(faults)('$kind: at every half beat', ({ kind, on, of }) => {
    let read = 0
    for (const figure of demos) {
      for (const way of waysOf(kind, on)) {
        const one = dancedWay(figure, way)
        const at = `${figure.id}, ${wayName(way)}`
        const { from, to } = one.performance.curve
        for (const t of halfBeats(from, to)) {
          checkStage(one, t, of === 'dynamics', at)
          read++
        }
      }
    }
    // Twenty-four demos of two bars or so.
    expect(read).toBeGreaterThan(24 * 8)
  })

  test('and in time', () => {
    for (const figure of demos) {
      const one = dancedWay(figure, { kind: 'in time' })
      const { from, to } = one.performance.curve
      for (const t of halfBeats(from, to)) {
        checkStage(one, t, false, figure.id)
        expect(stageWords(one.comparison, 0, t)).not.toMatch(/late|early|wait|wrong/)
      }
    }
  })
})
