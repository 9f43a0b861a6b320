import { HALF_DOUBLE_SUPPORT } from '../transfer/doubleSupport.ts'
import type { FloorAction } from './floor.ts'
import { hermite, linear, type Piece } from './pieces.ts'
import { HANDS_OVER } from './swing.ts'
import { cornerVelocity, length, mix, scale, subtract, type Vector } from './vector.ts'

/** Within this of a full, metres, the weight's path is rounded. */
const ROUNDING = 0.03

const piece = (from: number, to: number, a: Vector, leaving: Vector, b: Vector, reaching: Vector): Piece => ({
  from,
  to,
  cubics: [hermite(a.x, leaving.x, b.x, reaching.x), hermite(a.y, leaving.y, b.y, reaching.y)],
})

/** Where the weight is, as cubics of x and y: straight from foot to foot, rounded at the fulls between two actions. */
export function weightPieces(actions: readonly FloorAction[]): Piece[] {
  const ways = actions.map(({ rest, restBefore }) => subtract(rest, restBefore))
  return actions.flatMap(({ restBefore, rest }, index) => {
    const way = ways[index] as Vector
    const [before, after] = [ways[index - 1], ways[index + 1]]
    const rounded = Math.min(0.5, ROUNDING / length(way))
    const [first, last] = [before === undefined ? 0 : rounded, after === undefined ? 1 : 1 - rounded]
    const [a, b] = [mix(restBefore, rest, first), mix(restBefore, rest, last)]
    const along = scale(way, rounded)
    const pieces: Piece[] = []
    if (before !== undefined) {
      const leaving = scale(cornerVelocity(before, way), rounded)
      pieces.push(piece(index, index + first, restBefore, leaving, a, along))
    }
    if (last > first) {
      const cubics = [linear(restBefore.x, way.x), linear(restBefore.y, way.y)]
      pieces.push({ from: index + first, to: index + last, cubics, of: { from: index, to: index + 1 } })
    }
    if (after !== undefined) {
      const reaching = scale(cornerVelocity(way, after), rounded)
      pieces.push(piece(index + last, index + 1, b, along, rest, reaching))
    }
    return pieces
  })
}

/** The left foot's share of the weight over the actions: one cubic. */
export function loadPieces(actions: readonly FloorAction[]): Piece[] {
  return actions.flatMap((action, index) => {
    const onLeft = (acting: number): number => (action.foot === 'left' ? acting : 1 - acting)
    return partsOf(action)
      .filter(({ from, to }) => to > from)
      .map(({ from, to, before, after }) => ({
        from: index + from,
        to: index + to,
        cubics: [hermite(onLeft(before), 0, onLeft(after), 0)],
      }))
  })
}

/** The acting foot's share, in parts of its action. */
type Part = { readonly from: number; readonly to: number; readonly before: number; readonly after: number }

function partsOf({ loadBefore, loadAfter, stays, loadsFrom }: FloorAction): Part[] {
  if (stays) return [{ from: 0, to: 1, before: loadBefore, after: loadAfter }]
  const begins = loadBefore > 0 ? HANDS_OVER : 0
  const [usual, ends] = [0.5 - HALF_DOUBLE_SUPPORT, 0.5 + HALF_DOUBLE_SUPPORT]
  const from = Math.max(usual, loadsFrom)
  const half = loadAfter / 2
  // Put down late: from its touch to the split half of it, or all of it from the split on.
  const passes =
    from === usual || from >= 0.5
      ? [{ from, to: ends, before: 0, after: loadAfter }]
      : [
          { from, to: 0.5, before: 0, after: half },
          { from: 0.5, to: ends, before: half, after: loadAfter },
        ]
  return [
    { from: 0, to: begins, before: loadBefore, after: 0 },
    { from: begins, to: from, before: 0, after: 0 },
    ...passes,
    { from: ends, to: 1, before: loadAfter, after: loadAfter },
  ]
}
