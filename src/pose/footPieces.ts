import type { Place } from './footPosition.ts'
import { type Cubic, constant, easing, hermite, type Piece } from './pieces.ts'
import type { Swing } from './swing.ts'
import { cornerVelocity, scale, subtract } from './vector.ts'

/**
 * A foot's row: the cubics of x, y, heading and height, then the progress up to which it is on the floor, and the swing,
 * by index, that carries it round a pivot, which is no cubic (−1: the cubics hold).
 */
export const FOOT_CUBICS = 4

/** A swinging foot's highest point, metres: enough for a shadow to show (own judgement). */
const LIFT = 0.05
const AXES = ['x', 'y', 'heading'] as const

/** Height between the parts `first` and `last` of a swing. */
function heightOf({ lifts }: Swing, first: number, last: number): Cubic {
  if (!lifts) return constant(0)
  const part = last - first
  return [4 * LIFT * first * (1 - first), 4 * LIFT * part * (1 - 2 * first), -4 * LIFT * part * part, 0]
}

/** How high a foot is at the part `done` of a swing, metres. */
export const heightAt = ({ lifts }: Swing, done: number): number => (lifts ? 4 * LIFT * done * (1 - done) : 0)

function standing({ x, y, heading }: Place, from: number, to: number): Piece {
  const cubics = [constant(x), constant(y), constant(heading), constant(0)]
  return { from, to, cubics, more: [Number.POSITIVE_INFINITY, -1] }
}

/** From rest to rest; past the place on its way with the corner's velocity, where there is one. */
function swinging(swing: Swing, index: number): Piece[] {
  const { from, to, start, end, via, round, lifts } = swing
  const downUntil = lifts ? from : Number.POSITIVE_INFINITY
  if (via === null || round !== null) {
    const cubics = [...AXES.map((axis) => easing(start[axis], end[axis])), heightOf(swing, 0, 1)]
    return [{ from, to, cubics, more: [downUntil, round === null ? -1 : index] }]
  }
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
  const passed = first / (to - from)
  return [
    {
      from,
      to: via.at,
      cubics: [
        ...AXES.map((axis) => hermite(start[axis], 0, via.place[axis], velocity[axis] * first)),
        heightOf(swing, 0, passed),
      ],
      more: [downUntil, -1],
    },
    {
      from: via.at,
      to,
      cubics: [
        ...AXES.map((axis) => hermite(via.place[axis], velocity[axis] * second, end[axis], 0)),
        heightOf(swing, passed, 1),
      ],
      more: [lifts ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY, -1],
    },
  ]
}

/** A foot over the whole figure: standing, swinging, standing. */
export function footPieces(start: Place, swings: readonly Swing[]): Piece[] {
  const pieces: Piece[] = []
  let place = start
  let at = 0
  for (const [index, swing] of swings.entries()) {
    if (swing.from > at || pieces.length === 0) pieces.push(standing(place, at, swing.from))
    pieces.push(...swinging(swing, index))
    place = swing.end
    at = swing.to
  }
  return [...pieces, standing(place, at, Number.POSITIVE_INFINITY)]
}
