import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Figure } from '../../src/figure/figure.ts'
import { bodyWithFeet } from '../../src/pose/body.ts'
import { type Floor, layOutFloor } from '../../src/pose/floor.ts'
import { type Pose, pose } from '../../src/pose/pose.ts'
import type { Swing } from '../../src/pose/swing.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { perform } from '../../src/transfer/perform.ts'
import type { Way } from '../../src/transfer/way.ts'
import { beat, share } from '../../src/units.ts'
import { generatedFigure, THOUSAND } from '../tools/generateFigure.ts'
import { near } from '../tools/near.ts'

const FEET = ['left', 'right'] as const
const PER_ACTION = 64

function floorOf(figure: Figure): Floor {
  const carried = figure.actions.map(({ weight }) => weight)
  return layOutFloor(
    figure,
    carried,
    figure.actions.map(() => null),
    bodyWithFeet(1),
  )
}

/** Poses all along, evenly in progress. */
function along(floor: Floor): { p: number; now: Pose }[] {
  const n = floor.actions.length * PER_ACTION
  return Array.from({ length: n + 1 }, (_, k) => ({ p: k / PER_ACTION, now: pose(floor, k / PER_ACTION) }))
}

const everyFigure = (wishes: Parameters<typeof generatedFigure>[0], check: (floor: Floor, figure: Figure) => void) =>
  fc.assert(
    fc.property(generatedFigure(wishes), (figure) => check(floorOf(figure), figure)),
    THOUSAND,
  )

const MINUTE = 60_000

describe('pose(floor, p), 1,000 generated figures over all ten dances', { timeout: MINUTE }, () => {
  test('loads are in [0, 1], add up to 1, and are 0 in the air', () => {
    everyFigure({ turns: true }, (floor) => {
      for (const { p, now } of along(floor)) {
        const { left, right } = now
        const wrong =
          Math.abs(left.load + right.load - 1) > 1e-12 ||
          FEET.some((foot) => now[foot].load < 0 || now[foot].load > 1 || (!now[foot].onFloor && now[foot].load !== 0))
        if (wrong) expect.fail(`at ${p}: ${left.load} ${left.onFloor}, ${right.load} ${right.onFloor}`)
      }
    })
  })

  test('half and half at the split of a step that takes all the weight from a foot that had all of it', () => {
    everyFigure({ turns: true }, (floor) => {
      for (const [index, action] of floor.actions.entries()) {
        if (action.loadBefore !== 0 || action.loadAfter !== 1) continue
        const now = pose(floor, index + 0.5)
        near(now.left.load, 0.5, 5e-13, 'left at the split of action', index)
        near(now.right.load, 0.5, 5e-13, 'right at the split of action', index)
      }
    })
  })

  test('loads are continuous: no more than the steepest hand-over can change in a step of progress', () => {
    // A hand-over of a part of the weight takes 1/16 of an action at the least, at most 1.5 × its mean.
    const most = (1.5 * 16) / PER_ACTION + 1e-9
    everyFigure({ turns: true }, (floor) => {
      const loads = along(floor).map(({ now }) => now.left.load)
      expect(Math.max(...loads.map((load, k) => Math.abs(load - (loads[k - 1] ?? load))))).toBeLessThanOrEqual(most)
    })
  })

  test('nothing that carries load slides, and it twists only in a turn on the foot', () => {
    everyFigure({ turns: true }, (floor) => {
      const all = along(floor)
      for (const foot of FEET) {
        for (const [k, { p, now }] of all.entries()) {
          const [a, b] = [all[k - 1]?.now[foot], now[foot]]
          if (a === undefined || a.load === 0 || b.load === 0) continue
          const turns = floor.swings[foot].some(({ lifts, from, to }) => !lifts && p > from && p - 1 / PER_ACTION < to)
          const moved = Math.hypot(b.x - a.x, b.y - a.y) + (turns ? 0 : Math.abs(b.heading - a.heading))
          if (moved > 1e-12) expect.fail(`the ${foot} foot moves by ${moved} under load at ${p}`)
        }
      }
    })
  })

  test('none is faster than 5 × the longer of this and the last step a unit of progress (without turns), so none jumps', () => {
    everyFigure({}, (floor, figure) => {
      const all = along(floor)
      for (const foot of FEET) {
        for (const swing of floor.swings[foot]) {
          // Released from part weight, a foot may have to come from two steps away; one that crosses changes sides, and
          // a free foot may stand away at the start: their own way counts as the step.
          const away = figure.freeFoot !== null && swing.start === floor.start[foot]
          const crosses = figure.actions
            .slice(Math.max(0, Math.floor(swing.from) - 2), Math.ceil(swing.to))
            .some(({ direction }) => direction.startsWith('cross') || direction.startsWith('lock'))
          const own = Math.hypot(swing.end.x - swing.start.x, swing.end.y - swing.start.y)
          const reach = Math.max(stepsAround(floor, swing), crosses || away || fromPartWeight(floor, swing) ? own : 0)
          for (const [k, { p, now }] of all.entries()) {
            const before = all[k - 1]
            if (before === undefined || p <= swing.from || before.p >= swing.to) continue
            const speed = Math.hypot(now[foot].x - before.now[foot].x, now[foot].y - before.now[foot].y) * PER_ACTION
            if (speed > 5 * reach + 1e-9) expect.fail(`the ${foot} foot at ${p}: ${speed} for steps of ${reach}`)
          }
        }
        // Outside its swings a foot stands.
        for (const [k, { p, now }] of all.entries()) {
          const before = all[k - 1]
          if (before === undefined || floor.swings[foot].some(({ from, to }) => p > from && before.p < to)) continue
          const moved = Math.hypot(now[foot].x - before.now[foot].x, now[foot].y - before.now[foot].y)
          if (moved !== 0) expect.fail(`the ${foot} foot moves by ${moved} outside its swings, at ${p}`)
        }
      }
    })
  })

  test('nothing jumps where one movement ends and another begins, turns and pivots among them', () => {
    const EPS = 1e-9
    everyFigure({ turns: true }, (floor) => {
      for (const foot of FEET) {
        for (const edge of floor.swings[foot].flatMap(({ from, to }) => [from, to])) {
          const [a, b] = [pose(floor, edge - EPS)[foot], pose(floor, edge + EPS)[foot]]
          const jump =
            Math.hypot(b.x - a.x, b.y - a.y) + Math.abs(b.heading - a.heading) + Math.abs(b.height - a.height)
          if (jump > 1e-6) expect.fail(`the ${foot} foot jumps by ${jump} at ${edge}`)
        }
      }
    })
  })

  test('the marker’s places at the moments: at rest at a full, half way at a split', () => {
    everyFigure({ turns: true }, (floor) => {
      for (const [index, action] of floor.actions.entries()) {
        const [half, done] = [pose(floor, index + 0.5).weight, pose(floor, index + 1).weight]
        near(half.x, (action.restBefore.x + action.rest.x) / 2, 5e-13, 'x at the split of action', index)
        near(half.y, (action.restBefore.y + action.rest.y) / 2, 5e-13, 'y at the split of action', index)
        near(done.x, action.rest.x, 5e-13, 'x at the end of action', index)
        near(done.y, action.rest.y, 5e-13, 'y at the end of action', index)
        // The marker rests where the loads balance.
        const now = pose(floor, index + 1)
        near(done.x, now.left.load * now.left.x + now.right.load * now.right.x, 5e-13, 'x of the loads', index)
        near(done.y, now.left.load * now.left.y + now.right.load * now.right.y, 5e-13, 'y of the loads', index)
      }
    })
  })

  test('a tap, brush or point moves its foot and no weight', () => {
    everyFigure({}, (floor, figure) => {
      for (const [index, action] of floor.actions.entries()) {
        const { direction } = figure.actions[index] as Figure['actions'][number]
        if (!['tap', 'brush', 'point'].includes(direction) || action.loadBefore > 0) continue
        for (const u of [0, 0.3, 0.5, 0.9, 1]) {
          const now = pose(floor, index + u)
          expect(now[action.foot].load).toBe(0)
          expect(Math.hypot(now.weight.x - action.standing.x, now.weight.y - action.standing.y)).toBeLessThan(1e-12)
        }
      }
    })
  })
})

/** The longest of the steps that a swing lies in: the one that released the foot and the one that it makes. */
function stepsAround({ actions, body }: Floor, swing: Swing): number {
  const around = [Math.floor(swing.from) - 1, Math.floor(swing.from), Math.floor(swing.to - 1e-9)]
    .map((index) => actions[index])
    .filter((action) => action !== undefined)
  return Math.max(
    body.stance,
    ...around.map(({ place, standing }) => Math.hypot(place.x - standing.x, place.y - standing.y)),
  )
}

/** A swing that began under a rest of load. */
function fromPartWeight(floor: Floor, { from, foot }: Swing): boolean {
  const action = floor.actions[Math.floor(from)]
  return action?.foot === foot && action.loadBefore > 0
}

const WAYS: readonly Way[] = [{ kind: 'in time' }, { kind: 'late', by: beat(0.5) }, { kind: 'early', part: share(0.5) }]

describe('the marker’s speed over time', { timeout: MINUTE }, () => {
  test.each(WAYS)('$kind: never above 2 × its half beat’s mean, 3 × within 3 cm of a full', (way) => {
    fc.assert(
      fc.property(generatedFigure(), (figure) => {
        const floor = floorOf(figure)
        const { curve, times } = perform(schedule(figure), way)
        for (const [index, { leaves, full }] of times.entries()) {
          const { restBefore, rest } = floor.actions[index] as Floor['actions'][number]
          const step = Math.hypot(rest.x - restBefore.x, rest.y - restBefore.y)
          for (let start = leaves; start < full - 1e-9; start += 0.5) {
            const end = Math.min(full, start + 0.5)
            const mean = ((curve.at(end) - curve.at(start)) * step) / (end - start)
            const slices = 24
            for (let k = 0; k < slices; k++) {
              const [t0, t1] = [start + ((end - start) * k) / slices, start + ((end - start) * (k + 1)) / slices]
              const [a, b] = [pose(floor, curve.at(t0)).weight, pose(floor, curve.at(t1)).weight]
              const speed = Math.hypot(b.x - a.x, b.y - a.y) / (t1 - t0)
              const u = curve.at((t0 + t1) / 2) - index
              const edge = 0.03 + step / 50
              const rounded = u * step < edge || (1 - u) * step < edge
              const most = (rounded ? 3 : 2) * mean * 1.0001 + 1e-9
              if (speed > most) expect.fail(`action ${index + 1}, ${t0}: ${speed} against a mean of ${mean}`)
            }
          }
        }
      }),
      THOUSAND,
    )
  })
})
