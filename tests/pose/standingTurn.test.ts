import { describe, expect, test } from 'vitest'
import type { Figure, FootTurn } from '../../src/figure/figure.ts'
import { bodyWithFeet } from '../../src/pose/body.ts'
import { layOutFloor } from '../../src/pose/floor.ts'
import { pose } from '../../src/pose/pose.ts'
import { turn } from '../../src/pose/vector.ts'
import { radians, share } from '../../src/units.ts'
import { exampleFigure } from '../tools/exampleFigure.ts'

const BODY = bodyWithFeet(1)
const floorOf = (figure: Figure) =>
  layOutFloor(
    figure,
    figure.actions.map(({ weight }) => weight),
    figure.actions.map(() => null),
    BODY,
  )
const by = (kind: FootTurn['kind'], turns: number): FootTurn => ({ kind, by: radians(turns * 2 * Math.PI) })
const HALF = Math.PI
const ONES = [1, 1, 1]

describe('a heel turn', () => {
  // Foxtrot, follower's reverse turn: RF back, LF closes with a heel turn of 3/8 to the left, RF forward.
  const floor = floorOf(
    exampleFigure('foxtrot', [2, 1, 1], ['back', { direction: 'close', footTurn: by('heel turn', -3 / 8) }, 'forward']),
  )
  const turned = -0.75 * HALF

  test('is made by the standing foot on its spot while the other closes, all of the weight on it', () => {
    const [before, after] = [pose(floor, 1), pose(floor, 1.375)]
    expect(before.right.heading).toBeCloseTo(0, 12)
    expect(after.right.heading).toBeCloseTo(turned, 12)
    for (const p of [1, 1.1, 1.2, 1.3, 1.375]) {
      const { right } = pose(floor, p)
      expect([right.x, right.y, right.load, right.onFloor]).toEqual([before.right.x, before.right.y, 1, true])
    }
  })

  test('the closing foot comes to stand beside it, parallel, and takes the weight at the end', () => {
    const { left, right } = pose(floor, 1.375)
    const beside = turn({ x: -BODY.stance, y: 0 }, turned)
    expect([left.x - right.x, left.y - right.y]).toEqual([expect.closeTo(beside.x, 12), expect.closeTo(beside.y, 12)])
    expect(left.heading).toBeCloseTo(turned, 12)
    expect([left.load, pose(floor, 1.625).left.load]).toEqual([0, 1])
  })

  test('the next step goes forward the way that the feet now point', () => {
    const way = turn({ x: BODY.stance, y: 0.65 }, turned)
    const { left, right } = pose(floor, 3)
    expect([left.heading, right.heading]).toEqual([expect.closeTo(turned, 12), expect.closeTo(turned, 12)])
    const [step] = floor.actions.slice(2)
    expect([(step?.place.x ?? 0) - (step?.standing.x ?? 0), (step?.place.y ?? 0) - (step?.standing.y ?? 0)]).toEqual([
      expect.closeTo(way.x, 12),
      expect.closeTo(way.y, 12),
    ])
  })
})

describe('a pivot', () => {
  // The leader's steps 4 to 6 of a spin turn: LF back with a pivot of 1/2 to the right, RF forward, LF side.
  const floor = floorOf(
    exampleFigure('waltz', ONES, [{ direction: 'back', footTurn: by('pivot', 1 / 2) }, 'forward', 'side'], {
      firstFoot: 'left',
    }),
  )

  test('begins when the foot carries all the load, is half done at the full, ends before the load passes on', () => {
    const at = (p: number) => pose(floor, p).left
    expect([at(0.625).heading, at(1).heading, at(1.375).heading]).toEqual([
      expect.closeTo(0, 12),
      expect.closeTo(HALF / 2, 12),
      expect.closeTo(HALF, 12),
    ])
    for (const p of [0.625, 0.8, 1, 1.2, 1.375]) {
      expect([at(p).x, at(p).y, at(p).load, at(p).onFloor]).toEqual([at(0.625).x, at(0.625).y, 1, true])
    }
  })

  test('the free foot keeps its place in relation to the standing leg until its own step', () => {
    const seen = (p: number) => {
      const { left, right } = pose(floor, p)
      return turn({ x: right.x - left.x, y: right.y - left.y }, -left.heading)
    }
    const first = seen(0.625)
    for (const p of [0.7, 0.8, 0.9, 1]) {
      expect([seen(p).x, seen(p).y]).toEqual([expect.closeTo(first.x, 9), expect.closeTo(first.y, 9)])
      expect(pose(floor, p).right.heading).toBeCloseTo(pose(floor, p).left.heading, 9)
    }
  })

  test('the next step is forward of the foot that has turned: on towards where the step back went', () => {
    const [back, forward] = floor.actions
    const way = (forward?.place.y ?? 0) - (forward?.standing.y ?? 0)
    expect(way).toBeCloseTo(-0.65, 12)
    expect((back?.place.y ?? 0) - (back?.standing.y ?? 0)).toBeCloseTo(-0.65, 12)
    expect(forward?.place.heading).toBeCloseTo(HALF, 12)
  })

  test('with nothing to follow ends at the full, and the free foot stays where it was carried', () => {
    const alone = floorOf(exampleFigure('waltz', [1], [{ direction: 'back', footTurn: by('pivot', 1 / 4) }]))
    const { left, right } = pose(alone, 1)
    expect([right.heading, left.heading]).toEqual([expect.closeTo(HALF / 2, 12), expect.closeTo(HALF / 2, 12)])
    const carried = turn({ x: -BODY.stance, y: 0.65 }, HALF / 2)
    expect([left.x - right.x, left.y - right.y]).toEqual([expect.closeTo(carried.x, 9), expect.closeTo(carried.y, 9)])
  })

  test('on a hold the standing foot turns while the hold lasts, and the free foot goes round with it', () => {
    const held = floorOf(
      exampleFigure('waltz', [1, 1], ['forward', { direction: 'hold', footTurn: by('pivot', 1 / 4) }]),
    )
    const [before, mid, after] = [1, 1.5, 2].map((p) => pose(held, p))
    expect([before?.right.heading, mid?.right.heading, after?.right.heading]).toEqual([
      expect.closeTo(0, 12),
      expect.closeTo(HALF / 4, 12),
      expect.closeTo(HALF / 2, 12),
    ])
    expect(after?.left.heading).toBeCloseTo(HALF / 2, 12)
  })
})

describe('a twist', () => {
  test('with part weight turns both feet on their own spots: crossed feet come uncrossed', () => {
    // Tango, natural twist turn: the right foot crosses behind with part weight, then half a turn to the right.
    const crossing = { direction: 'cross behind' as const, weight: share(0.5), footTurn: by('twist', 1 / 2) }
    const floor = floorOf(exampleFigure('tango', [2, 1], ['side', crossing], { firstFoot: 'left' }))
    const across = (p: number) => {
      const { left, right } = pose(floor, p)
      return turn({ x: right.x - left.x, y: right.y - left.y }, -left.heading)
    }
    expect([pose(floor, 2).left.heading, pose(floor, 2).right.heading]).toEqual([
      expect.closeTo(HALF, 12),
      expect.closeTo(HALF, 12),
    ])
    expect(across(1.625).x).toBeLessThan(0)
    expect(across(2).x).toBeGreaterThan(0)
  })

  test('of the foot that has the weight leaves the free foot its own way', () => {
    const floor = floorOf(
      exampleFigure('rumba', ONES, ['back', { direction: 'close', footTurn: by('twist', 1 / 4) }, 'forward']),
    )
    expect(pose(floor, 2.375).left.heading).toBeCloseTo(HALF / 2, 12)
    expect(pose(floor, 3).right.heading).toBeCloseTo(HALF / 2, 12)
  })
})
