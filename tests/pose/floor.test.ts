import { describe, expect, test } from 'vitest'
import { bodyWithFeet } from '../../src/pose/body.ts'
import { type Floor, layOutFloor } from '../../src/pose/floor.ts'
import { pose } from '../../src/pose/pose.ts'
import { metres, radians, share } from '../../src/units.ts'
import { type ExampleAction, exampleFigure } from '../tools/exampleFigure.ts'

const body = bodyWithFeet(1)

function floorOf(
  actions: readonly ExampleAction[],
  touches: readonly (number | null)[] = actions.map(() => null),
): Floor {
  const figure = exampleFigure(
    'exercise',
    actions.map(() => 1),
    actions,
  )
  const carried = figure.actions.map(({ weight }) => weight)
  return layOutFloor(figure, carried, touches, body)
}

/** The way that a foot makes between two progresses, metres. */
function way(floor: Floor, foot: 'left' | 'right', from: number, to: number): number {
  const [a, b] = [pose(floor, from)[foot], pose(floor, to)[foot]]
  return Math.hypot(b.x - a.x, b.y - a.y)
}

describe('layOutFloor(figure, …): where feet come to stand (foot positions as taught; common practice, no source)', () => {
  const stance = body.stance
  test.each<[ExampleAction, number, number]>([
    ['forward', stance, 0.65],
    ['back', stance, -0.65],
    ['side', 0.5, 0],
    ['close', stance, 0],
    [{ direction: 'forward', size: metres(0.4) }, stance, 0.4],
    ['diagonally forward', 0.6 * Math.SQRT1_2, 0.6 * Math.SQRT1_2],
    ['cross in front', -stance, 0.3],
    ['cross behind', -stance, -0.3],
  ])('right foot %j from the left one', (action, x, y) => {
    const { place, standing } = floorOf([action]).actions[0] as Floor['actions'][number]
    expect(place.x - standing.x).toBeCloseTo(x, 12)
    expect(place.y - standing.y).toBeCloseTo(y, 12)
  })
  test('a direction is relative to the facing after the turn; the moving foot makes the turn and the standing one keeps its heading', () => {
    const floor = floorOf(['forward', { direction: 'side', turn: radians(Math.PI / 2) }])
    const side = floor.actions[1] as Floor['actions'][number]
    // A quarter to the right, then the left foot to its own side: that is ahead in the room.
    expect(side.place.x - side.standing.x).toBeCloseTo(0, 12)
    expect(side.place.y - side.standing.y).toBeCloseTo(0.5, 12)
    expect(side.place.heading).toBeCloseTo(Math.PI / 2, 12)
    expect(pose(floor, 1.6).right).toMatchObject({ heading: 0, onFloor: true })
    expect(pose(floor, 1.375).left.heading).toBeCloseTo(Math.PI / 2, 12)
  })
  test('closed feet touch and do not overlap, however large they are drawn', () => {
    for (const times of [1, 1.25, 1.5]) {
      const { stance: gap, footBreadth } = bodyWithFeet(times)
      expect(gap).toBeGreaterThanOrEqual(footBreadth)
      expect(gap).toBeLessThan(1.15 * footBreadth)
    }
  })
  test('refuses lists of another length', () => {
    const figure = exampleFigure('exercise', [1], ['forward'])
    expect(() => layOutFloor(figure, [], [null], body)).toThrow(RangeError)
    expect(() => layOutFloor(figure, [share(1)], [], body)).toThrow(RangeError)
  })
})

describe('layOutFloor(figure, …): what the old foot does is decided by the next action', () => {
  test('walks: it passes beside the new foot as the step is done', () => {
    const floor = floorOf(['forward', 'forward'])
    const { left, right } = pose(floor, 1)
    expect(left.y).toBeCloseTo(right.y, 12)
    expect(right.x - left.x).toBeCloseTo(body.stance, 12)
    expect(left.onFloor).toBe(false)
  })
  test('a close: the closing foot moves during its own action, in one unbroken path', () => {
    const floor = floorOf(['side', 'close'])
    const during = way(floor, 'left', 1, 1.375)
    const whole = way(floor, 'left', 0.625, 1.375)
    expect(during).toBeGreaterThan(0.4 * whole)
    expect(during).toBeLessThan(0.6 * whole)
    expect(way(floor, 'left', 0, 0.625)).toBe(0)
    expect(way(floor, 'left', 1.375, 2)).toBe(0)
  })
  test('a rock: the free foot stays where it is and gets the weight back', () => {
    const floor = floorOf(['forward', 'in place', 'back'])
    expect(way(floor, 'left', 0, 2)).toBe(0)
    expect(pose(floor, 1).left).toMatchObject({ onFloor: true, load: 0 })
    expect(pose(floor, 2).left.load).toBe(1)
    // The foot that rocked then has two steps to go, and passes on its way.
    expect(pose(floor, 2).right.onFloor).toBe(false)
  })
  test('a tap moves its foot and no weight; the same foot acts next', () => {
    const floor = floorOf(['forward', 'tap', 'forward'])
    expect(floor.actions.map(({ foot }) => foot)).toEqual(['right', 'left', 'left'])
    expect(pose(floor, 1.5).weight).toEqual(pose(floor, 1).weight)
    expect(pose(floor, 1.5).left).toMatchObject({ onFloor: true, load: 0 })
  })
  test('part weight: the old foot stays down until it moves, and hands over the rest before it lifts', () => {
    const floor = floorOf([{ direction: 'forward', weight: share(0.5) }, 'in place', 'side'])
    expect(pose(floor, 1)).toMatchObject({ left: { load: 0.5, onFloor: true }, right: { load: 0.5, onFloor: true } })
    expect(way(floor, 'left', 0, 2)).toBe(0)
    const moved = floorOf([{ direction: 'side', weight: share(0.5) }, 'close'])
    expect(pose(moved, 1 + 1 / 16).left).toMatchObject({ load: 0, onFloor: true })
  })
  test('nothing follows: it is collected beside the other, and stays so', () => {
    const floor = floorOf(['forward'])
    const { left, right } = pose(floor, 1)
    expect(left.y).toBeCloseTo(right.y, 12)
    expect(left.onFloor).toBe(true)
    expect(pose(floor, 99)).toEqual(pose(floor, 1))
  })
  test('marking time in place: nothing lifts, the load passes over the whole action', () => {
    const floor = floorOf(['in place', 'in place'])
    expect(pose(floor, 0.25).right.load).toBeCloseTo(0.25 * 0.25 * (3 - 0.5), 12)
    for (let p = 0; p <= 2; p += 0.125)
      expect(pose(floor, p)).toMatchObject({ left: { onFloor: true }, right: { onFloor: true } })
  })
  test('a touch that is set is when the foot rests; its load waits for it', () => {
    const soon = floorOf(['forward'], [0.2])
    expect(pose(soon, 0.2).right.onFloor).toBe(true)
    expect(pose(soon, 0.3).right.load).toBe(0)
    const late = floorOf(['forward'], [0.45])
    expect(pose(late, 0.44).right).toMatchObject({ onFloor: false, load: 0 })
    expect(pose(late, 0.5).right.load).toBe(0.5)
  })
})
