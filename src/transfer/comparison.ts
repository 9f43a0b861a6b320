import type { Dance } from '../dance/dance.ts'
import type { Schedule } from '../timing/schedule.ts'
import type { Way } from './perform.ts'
import type { ActionTimes, Performance } from './performance.ts'

/** A figure danced in several ways, beside the plan that all are held against. */
export type Comparison = {
  readonly dance: Dance
  readonly schedule: Schedule
  readonly ideal: Performance
  readonly panels: readonly { readonly way: Way; readonly performance: Performance }[]
}

/** Less than this of an action counts as the same place. */
const SAME = 1e-6

/** How far `danced` is behind (+) or ahead of (−) the plan at `t`, in beats: when the plan was, or will be, where it is now. */
export function behind(danced: Performance, ideal: Performance, t: number): number {
  const [p, planned] = [danced.curve.at(t), ideal.curve.at(t)]
  if (Math.abs(p - planned) < SAME) return 0
  return p < planned ? t - ideal.curve.departs(p) : t - ideal.curve.arrives(p)
}

/** The actions that are danced and in which the weight moves: steps, and what takes a rest of part weight away. */
function moving({ carried, curve }: Performance): number[] {
  const first = curve.knots[0]?.p ?? 0
  return carried.flatMap((share, i) => {
    const before = carried[i - 1] ?? 1
    const moves = share > 0 || (before > 0 && before < 1)
    return moves && i >= first && i < curve.actions ? [i] : []
  })
}

/**
 * Times in which the weight stands still longer than the plan has it rest, in beats. Of the weight, not of the actions:
 * while a foot taps, the weight stands in the plan too.
 */
export function waits(danced: Performance, ideal: Performance): { from: number; to: number }[] {
  const found: { from: number; to: number }[] = []
  const actions = moving(danced)
  for (const [k, next] of actions.entries()) {
    const last = actions[k - 1]
    if (last === undefined) continue
    const rest = ({ times }: Performance): number =>
      (times[next] as ActionTimes).leaves - (times[last] as ActionTimes).full
    const longer = rest(danced) - rest(ideal)
    const { full } = danced.times[last] as ActionTimes
    if (longer > SAME) found.push({ from: full, to: full + longer })
  }
  return found
}
