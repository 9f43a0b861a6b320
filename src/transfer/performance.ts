import type { Share } from '../units.ts'
import { type Curve, curveThrough, type Knot } from './curve.ts'

/** When one action begins, is half way and is done, in beats: leaves < split < full. */
export type ActionTimes = {
  readonly leaves: number
  readonly split: number
  readonly full: number
  /** A stop inside the action, at the part `at` of it (up to ½; at ½ it begins with the split), which the plan has not. */
  readonly stands?: { readonly at: number; readonly from: number; readonly to: number }
}

/** How the weight goes between two neighbouring knots; the knots stay where they are. */
export type Profile = 'even' | 'swelling' | 'arrested'

/** What is done when half of the time between two knots has gone by (own judgement: enough for the eye). */
const HALF_WAY: Readonly<Record<Profile, number | null>> = { even: null, swelling: 0.3, arrested: 0.85 }

/** How a figure was danced: the progress over time, and the part of the weight that each action took. Plain data and one curve. */
export type Performance = {
  readonly curve: Curve
  readonly carried: readonly Share[]
  readonly times: readonly ActionTimes[]
}

/** Two times closer than this (in beats) are one moment. */
const SAME_MOMENT = 1e-9

/** Where one action is at which time: straight in between. */
function cornersOf({ leaves, split, full, stands }: ActionTimes): Knot[] {
  const corners = [
    { t: leaves, p: 0 },
    { t: split, p: 0.5 },
    { t: full, p: 1 },
  ]
  if (stands === undefined) return corners
  const { at, from, to } = stands
  const stop = [from, to].map((t) => ({ t, p: at })).filter(({ t }) => t !== split)
  return [...corners, ...stop].sort((a, b) => a.t - b.t)
}

/** Knots of one action: its corners, and every grid step counted from where it leaves; straight between them. */
function knotsOf(index: number, times: ActionTimes, grid: number): Knot[] {
  const corners = cornersOf(times)
  const knots: Knot[] = []
  let step = 1
  for (const [k, { t, p }] of corners.entries()) {
    const before = corners[k - 1]
    for (; before !== undefined && times.leaves + step * grid < t + SAME_MOMENT; step++) {
      const time = times.leaves + step * grid
      const known = [before.t, t].some((corner) => Math.abs(corner - time) <= SAME_MOMENT)
      if (known) continue
      knots.push({ t: time, p: index + before.p + ((p - before.p) * (time - before.t)) / (t - before.t) })
    }
    knots.push({ t, p: index + p })
  }
  return knots
}

/** With a knot half way between each two of which the weight moves. */
function bent(knots: readonly Knot[], profile: Profile): readonly Knot[] {
  const done = HALF_WAY[profile]
  if (done === null) return knots
  return knots.flatMap((knot, k) => {
    const next = knots[k + 1]
    if (next === undefined || next.p === knot.p) return [knot]
    return [knot, { t: (knot.t + next.t) / 2, p: knot.p + done * (next.p - knot.p) }]
  })
}

/**
 * The one builder: starts, splits and ends → knots → curve. In time, late, early, another timing, a partner: all are made here.
 * @param grid distance of the knots inside an action, in beats (½, or ¼ where the figure has an `a`)
 * @param profile how the weight goes between neighbouring knots, which stay where they are
 * @throws RangeError when an action's times are out of order or it begins before the one before has ended
 */
export function performance(
  times: readonly ActionTimes[],
  carried: readonly Share[],
  grid: number,
  profile: Profile = 'even',
): Performance {
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
  return { curve: curveThrough(bent(knots, profile)), carried, times }
}
