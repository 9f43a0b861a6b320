import type { Foot } from '../../src/figure/figure.ts'
import type { Floor, FloorAction } from '../../src/pose/floor.ts'
import type { Place } from '../../src/pose/footPosition.ts'
import type { Swing } from '../../src/pose/swing.ts'
import { cornerVelocity, length, mix, scale, subtract, type Vector } from '../../src/pose/vector.ts'
import type { Curve } from '../../src/transfer/curve.ts'
import { HALF_DOUBLE_SUPPORT } from '../../src/transfer/doubleSupport.ts'
import type { Danced } from './dancedFigure.ts'
import { type Cubic, constant, flatPieces, hermiteCubic, type Piece, type Pieces, smoothCubic } from './pieces.ts'

/** All that the poses of one danced figure are, as numbers. */
export type PoseTables = {
  /** By time: the progress. */
  readonly progress: Pieces
  /** By progress: x, y, heading, height. */
  readonly feet: Readonly<Record<Foot, FootTable>>
  /** By progress: the left foot's load. */
  readonly load: Pieces
  /** By progress: x, y. */
  readonly weight: Pieces
}

export type FootTable = {
  readonly pieces: Pieces
  /** For each piece the progress up to which the foot is on the floor in it. */
  readonly downUntil: Float64Array
}

/** As `pose.ts` has them; if they part, the bench's comparison of the two fails. */
const LIFT = 0.05
const ROUNDING = 0.03

function progressPieces(curve: Curve): Pieces {
  return flatPieces(
    curve.knots.slice(1).map((knot, k): Piece => {
      const before = curve.knots[k] as (typeof curve.knots)[number]
      const width = knot.t - before.t
      const cubic = hermiteCubic(before.p, curve.speed(before.t) * width, knot.p, curve.speed(knot.t) * width)
      return { from: before.t, to: knot.t, cubics: [cubic] }
    }),
  )
}

/** The height over the part of a swing from `a` to `b` (0 to 1). */
const heightCubic = (a: number, b: number): Cubic => [
  4 * LIFT * a * (1 - a),
  4 * LIFT * (b - a) * (1 - 2 * a),
  -4 * LIFT * (b - a) ** 2,
  0,
]

const between = (start: Place, end: Place, cubic: (from: number, to: number) => Cubic): Cubic[] => [
  cubic(start.x, end.x),
  cubic(start.y, end.y),
  cubic(start.heading, end.heading),
]

/** @throws when the swing goes round a pivot, which no cubic does */
function swingPieces({ from, to, start, end, via, round, lifts }: Swing): Piece[] {
  if (round !== null || !lifts) throw new Error('only steps can be unrolled, no turns on a foot')
  if (via === null) return [{ from, to, cubics: [...between(start, end, smoothCubic), heightCubic(0, 1)] }]
  const [first, second] = [via.at - from, to - via.at]
  const passing = cornerVelocity(
    scale(subtract(via.place, start), 1 / first),
    scale(subtract(end, via.place), 1 / second),
  )
  const turning = cornerVelocity(
    { x: (via.place.heading - start.heading) / first, y: 0 },
    { x: (end.heading - via.place.heading) / second, y: 0 },
  ).x
  const velocity: Place = { ...passing, heading: turning }
  const AXES = ['x', 'y', 'heading'] as const
  const passed = first / (to - from)
  return [
    {
      from,
      to: via.at,
      cubics: [
        ...AXES.map((axis) => hermiteCubic(start[axis], 0, via.place[axis], velocity[axis] * first)),
        heightCubic(0, passed),
      ],
    },
    {
      from: via.at,
      to,
      cubics: [
        ...AXES.map((axis) => hermiteCubic(via.place[axis], velocity[axis] * second, end[axis], 0)),
        heightCubic(passed, 1),
      ],
    },
  ]
}

function footTable({ start, swings }: Floor, foot: Foot): FootTable {
  const pieces: Piece[] = []
  const downUntil: number[] = []
  let place = start[foot]
  let at = 0
  const rest = (to: number) => {
    if (to <= at && pieces.length > 0) return
    pieces.push({ from: at, to, cubics: [...between(place, place, smoothCubic), constant(0)] })
    downUntil.push(Number.POSITIVE_INFINITY)
  }
  for (const swing of swings[foot]) {
    rest(swing.from)
    const parts = swingPieces(swing)
    pieces.push(...parts)
    // At its very beginning it is still on the floor.
    downUntil.push(swing.from, ...parts.slice(1).map(() => Number.NEGATIVE_INFINITY))
    place = swing.end
    at = swing.to
  }
  rest(Number.POSITIVE_INFINITY)
  return { pieces: flatPieces(pieces), downUntil: Float64Array.from(downUntil) }
}

function loadPieces(actions: readonly FloorAction[]): Pieces {
  const begins = 0.5 - HALF_DOUBLE_SUPPORT
  const ends = 0.5 + HALF_DOUBLE_SUPPORT
  return flatPieces(
    actions.flatMap(({ foot, loadBefore, loadAfter, stays, loadsFrom }, index): Piece[] => {
      if (stays || loadBefore !== 0 || loadsFrom > begins) throw new Error('only whole steps can be unrolled')
      const [none, all] = foot === 'left' ? [0, loadAfter] : [1, 1 - loadAfter]
      return [
        { from: index, to: index + begins, cubics: [constant(none)] },
        { from: index + begins, to: index + ends, cubics: [smoothCubic(none, all)] },
        { from: index + ends, to: index + 1, cubics: [constant(all)] },
      ]
    }),
  )
}

function weightPieces(actions: readonly FloorAction[]): Pieces {
  const ways = actions.map(({ rest, restBefore }) => subtract(rest, restBefore))
  const straight = (from: Vector, to: Vector): Cubic[] => [
    [from.x, to.x - from.x, 0, 0],
    [from.y, to.y - from.y, 0, 0],
  ]
  const curved = (from: Vector, velocity: Vector, to: Vector, reaching: Vector): Cubic[] => [
    hermiteCubic(from.x, velocity.x, to.x, reaching.x),
    hermiteCubic(from.y, velocity.y, to.y, reaching.y),
  ]
  return flatPieces(
    actions.flatMap(({ restBefore, rest }, index): Piece[] => {
      const way = ways[index] as Vector
      const [before, after] = [ways[index - 1], ways[index + 1]]
      const rounded = Math.min(0.5, ROUNDING / length(way))
      const [first, last] = [before === undefined ? 0 : rounded, after === undefined ? 1 : 1 - rounded]
      const [begin, end] = [mix(restBefore, rest, first), mix(restBefore, rest, last)]
      const along = scale(way, rounded)
      const middle: Piece = { from: index + first, to: index + last, cubics: straight(begin, end) }
      const opening =
        before === undefined
          ? []
          : [
              {
                from: index,
                to: index + first,
                cubics: curved(restBefore, scale(cornerVelocity(before, way), rounded), begin, along),
              },
            ]
      const closing =
        after === undefined
          ? []
          : [
              {
                from: index + last,
                to: index + 1,
                cubics: curved(end, along, rest, scale(cornerVelocity(way, after), rounded)),
              },
            ]
      return [...opening, middle, ...closing].filter((piece) => piece.to > piece.from)
    }),
  )
}

/** @throws when the figure holds more than steps that take all the weight */
export function poseTables({ floor, curve }: Danced): PoseTables {
  return {
    progress: progressPieces(curve),
    feet: { left: footTable(floor, 'left'), right: footTable(floor, 'right') },
    load: loadPieces(floor.actions),
    weight: weightPieces(floor.actions),
  }
}
