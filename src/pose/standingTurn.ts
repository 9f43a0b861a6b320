import type { Action, Foot } from '../figure/figure.ts'
import { HALF_DOUBLE_SUPPORT } from '../transfer/doubleSupport.ts'
import { footWay } from './footPosition.ts'
import { RELEASED } from './swing.ts'

/** A turn on a standing foot, in progress: `by` radians (right positive) from `from` to `until`. */
export type StandingTurn = {
  /** Made while the action lasts (the foot that stands), or after it (the foot that has taken the weight). */
  readonly when: 'during' | 'after'
  readonly by: number
  readonly from: number
  readonly until: number
  /** The feet that turn on their own spots. */
  readonly feet: readonly Foot[]
  /** The free foot keeps its place in relation to the leg that pivots. */
  readonly carries: boolean
}

/** Made by the standing foot while the action itself lasts: a heel turn, and any turn on a count that takes no weight. */
const isDuring = ({ footTurn }: Action, share: number): boolean =>
  footTurn !== null && (footTurn.kind === 'heel turn' || share === 0)

/**
 * When and on which feet an action's turn on the foot is made.
 * A turn after the step begins when the foot carries all of the load and ends before the next step's load begins to pass;
 * with nothing to follow, or when the next count has a use for the foot at once, at the full itself.
 * @param index of the action, from 0
 * @param share of the weight that it took
 * @param touchesAt the part of this action and of the next at which their feet are put down
 */
export function standingTurn(
  actions: readonly Action[],
  index: number,
  foot: Foot,
  standingFoot: Foot,
  carried: readonly number[],
  loadBefore: number,
  touchesAt: (index: number) => number,
): StandingTurn | null {
  const action = actions[index] as Action
  const share = carried[index] as number
  if (action.footTurn === null) return null
  const { kind, by } = action.footTurn
  if (isDuring(action, share)) {
    const isHold = action.direction === 'hold'
    // Where both carry, each turns on its own spot.
    const feet = isHold && (loadBefore > 0 || kind === 'twist') ? [foot, standingFoot] : [standingFoot]
    const until = index + (isHold ? 1 : touchesAt(index))
    return { when: 'during', by, from: index, until, feet, carries: isHold && feet.length === 1 }
  }
  const next = actions[index + 1]
  const nextShare = carried[index + 1] ?? 0
  const nextStays = next !== undefined && footWay(next.direction) === 'stays'
  const atFull = share < 1 || next === undefined || nextStays || isDuring(next, nextShare)
  const until = index + 1 + (atFull ? 0 : Math.min(0.5 - HALF_DOUBLE_SUPPORT, touchesAt(index + 1)))
  return {
    when: 'after',
    by,
    from: index + RELEASED,
    until,
    feet: share < 1 || nextStays ? [foot, standingFoot] : [foot],
    carries: kind === 'pivot' && share === 1 && !nextStays,
  }
}
