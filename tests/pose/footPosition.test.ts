import { describe, expect, test } from 'vitest'
import type { Direction, Figure } from '../../src/figure/figure.ts'
import { bodyWithFeet } from '../../src/pose/body.ts'
import { layOutFloor } from '../../src/pose/floor.ts'
import { pose } from '../../src/pose/pose.ts'
import { metres } from '../../src/units.ts'
import { type ExampleAction, exampleFigure } from '../tools/exampleFigure.ts'

const BODY = bodyWithFeet(1)

function floorOf(actions: readonly ExampleAction[], more: Partial<Figure> = {}) {
  const figure = exampleFigure(
    'quickstep',
    actions.map(() => 1),
    actions,
    more,
  )
  return layOutFloor(
    figure,
    figure.actions.map(({ weight }) => weight),
    figure.actions.map(() => null),
    BODY,
  )
}

/** The last action's foot seen from the other one: to the right and ahead of it, metres. */
function placed(actions: readonly ExampleAction[], more: Partial<Figure> = {}) {
  const last = floorOf(actions, more).actions.at(-1)
  if (last === undefined) throw new Error('no actions')
  return { x: last.place.x - last.standing.x, y: last.place.y - last.standing.y }
}

/** First foot left: the last of two acts with the right foot, whose own side is +. */
const LEFT = { firstFoot: 'left' } as const

describe('where a foot comes to stand', () => {
  test('a lock behind is over on the other side and close behind, clear of the other foot', () => {
    const { x, y } = placed(['forward', 'lock behind'], LEFT)
    expect(x).toBeLessThanOrEqual(-BODY.footBreadth)
    expect(y).toBeLessThan(0)
    expect(y).toBeGreaterThan(-BODY.footLength)
  })

  test('a lock in front is the same ahead', () => {
    const [front, behind] = [placed(['back', 'lock in front'], LEFT), placed(['back', 'lock behind'], LEFT)]
    expect(front).toEqual({ x: behind.x, y: expect.closeTo(-behind.y, 12) })
  })

  test('a half close goes half way from where the foot was to the other one (IDTA revision cards)', () => {
    const before = placed(['side'], LEFT)
    const { x } = placed(['side', 'half close'], LEFT)
    // The right foot was half a metre off and would close to one stance.
    expect(x).toBeCloseTo((-before.x + BODY.stance) / 2, 12)
  })

  test('a half close of feet that are closed leaves them closed', () => {
    expect(placed(['close', 'half close'], LEFT).x).toBeCloseTo(BODY.stance, 12)
  })

  test('a close slightly back is beside the other foot, a little behind (tango: the foot positions of a closed promenade)', () => {
    const { x, y } = placed(['side', 'close slightly back'], LEFT)
    expect(x).toBeCloseTo(BODY.stance, 12)
    expect(y).toBeLessThan(0)
    expect(y).toBeGreaterThan(-BODY.footLength / 2)
  })

  test('forward stays on its own track, in CBMP is on the line of the other foot, across is over it', () => {
    const across = (placing: Partial<Exclude<ExampleAction, Direction>>) =>
      placed(['forward', { direction: 'forward', ...placing }], LEFT).x
    expect(across({})).toBeCloseTo(BODY.stance, 12)
    expect(across({ placed: 'in CBMP' })).toBeCloseTo(0, 12)
    expect(across({ placed: 'across' })).toBeLessThan(0)
    expect(across({ position: 'outside partner' })).toBeCloseTo(0, 12)
    expect(across({ position: 'outside partner', placed: 'across' })).toBeLessThan(0)
  })

  test('in promenade a step to the side, and one forward and across, go an eighth to the open side', () => {
    const promenade = { position: 'promenade' } as const
    // The leader's left foot to his left, then his right foot over it the same way.
    const side = placed([{ direction: 'side', ...promenade }], LEFT)
    const over = placed(['side', { direction: 'forward', placed: 'across', ...promenade }], LEFT)
    for (const { x, y } of [side, over]) expect(Math.atan2(x, y)).toBeCloseTo(-Math.PI / 4, 12)
  })

  test('in CBMP a step too short for both feet on one line keeps its own track: feet never overlap', () => {
    const short = { direction: 'forward', size: metres(0.2), placed: 'in CBMP' } as const
    expect(placed(['forward', short], LEFT).x).toBeCloseTo(BODY.stance, 12)
  })

  test.each([
    ['slightly forward', 0, 1],
    ['slightly back', 0, -1],
    ['slightly side', 1, 0],
  ] as const)('%s is a small step', (direction, side, ahead) => {
    const { x, y } = placed(['forward', direction], LEFT)
    expect(y).toBeCloseTo(0.2 * ahead, 12)
    expect(x).toBeCloseTo(side === 0 ? BODY.stance : 0.2, 12)
  })

  test('the free foot can stand away at the start, without weight', () => {
    const { start } = floorOf(['forward'], { firstFoot: 'right', freeFoot: 'side' })
    expect(start.standing).toBe('left')
    expect(start.right.x - start.left.x).toBeCloseTo(0.5, 12)
    const { left, right } = pose(floorOf(['forward'], { firstFoot: 'right', freeFoot: 'side' }), 0)
    expect([left.load, right.load, right.onFloor]).toEqual([1, 0, true])
  })
})
