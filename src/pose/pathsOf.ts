import type { Foot } from '../figure/figure.ts'
import type { FloorAction } from './floor.ts'
import { footPieces } from './footPieces.ts'
import type { Place } from './footPosition.ts'
import { type Rows, rowsOf } from './pieces.ts'
import type { Swing } from './swing.ts'
import { loadPieces, weightPieces } from './weightPieces.ts'

/** All that moves in a figure, worked out once: a pose only looks up and evaluates. */
export type Paths = {
  readonly left: Rows
  readonly right: Rows
  /** The left foot's share of the weight. */
  readonly load: Rows
  readonly weight: Rows
}

export function pathsOf(
  start: Readonly<Record<Foot, Place>>,
  actions: readonly FloorAction[],
  swings: Readonly<Record<Foot, readonly Swing[]>>,
): Paths {
  const feet = [footPieces(start.left, swings.left), footPieces(start.right, swings.right)] as const
  const [left, right, load, weight] = rowsOf([...feet, loadPieces(actions), weightPieces(actions)], actions.length)
  return { left, right, load, weight }
}
