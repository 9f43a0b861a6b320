import type { Share } from '../units.ts'
import { type Curve, curveThrough, type Knot } from './curve.ts'

/** When one action begins, is half way and is done, in beats: leaves < split < full. */
export type ActionTimes = { readonly leaves: number; readonly split: number; readonly full: number }

/** How a figure was danced: the progress over time, and the part of the weight that each action took. Plain data and one curve. */
export type Performance = {
  readonly curve: Curve
  readonly carried: readonly Share[]
  readonly times: readonly ActionTimes[]
}

/** Two times closer than this (in beats) are one moment. */
const SAME_MOMENT = 1e-9

/** Knots of one action: leaves, split and full, and every grid step counted from where it leaves; straight between them. */
function knotsOf(index: number, { leaves, split, full }: ActionTimes, grid: number): Knot[] {
  const times = [leaves, split, full]
  for (let step = 1; leaves + step * grid < full - SAME_MOMENT; step++) {
    const time = leaves + step * grid
    if (times.every((known) => Math.abs(known - time) > SAME_MOMENT)) times.push(time)
  }
  const done = (time: number): number => {
    if (time === full) return 1
    return time <= split ? (0.5 * (time - leaves)) / (split - leaves) : 0.5 + (0.5 * (time - split)) / (full - split)
  }
  return times.sort((a, b) => a - b).map((t) => ({ t, p: index + done(t) }))
}

/**
 * The one builder: starts, splits and ends → knots → curve. In time, late, early, another timing, a partner: all are made here.
 * @param grid distance of the knots inside an action, in beats (½, or ¼ where the figure has an `a`)
 * @throws RangeError when an action's times are out of order or it begins before the one before has ended
 */
export function performance(times: readonly ActionTimes[], carried: readonly Share[], grid: number): Performance {
  const knots: Knot[] = []
  for (const [index, action] of times.entries()) {
    if (!(action.leaves < action.split && action.split < action.full)) {
      throw new RangeError(
        `action ${index + 1} must leave, be split and be full in this order, got ${action.leaves}, ${action.split}, ${action.full}`,
      )
    }
    const own = knotsOf(index, action, grid)
    const before = knots.at(-1)
    if (before !== undefined) {
      const gap = action.leaves - before.t
      if (gap < -SAME_MOMENT)
        throw new RangeError(
          `action ${index + 1} leaves at ${action.leaves}, before the one before is full at ${before.t}`,
        )
      if (gap <= SAME_MOMENT) own.shift()
    }
    knots.push(...own)
  }
  return { curve: curveThrough(knots), carried, times }
}
