import type { Dance } from '../dance/dance.ts'
import type { Schedule } from '../timing/schedule.ts'
import type { Way } from './perform.ts'
import type { Performance } from './performance.ts'

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

/** Times in which the weight stands still longer than the plan has it rest, in beats. */
export function waits(danced: Performance, ideal: Performance): { from: number; to: number }[] {
  const found: { from: number; to: number }[] = []
  for (let i = 1; i < danced.times.length; i++) {
    const from = (danced.times[i - 1] as { full: number }).full
    const to = (danced.times[i] as { leaves: number }).leaves
    const planned = (ideal.times[i] as { leaves: number }).leaves - (ideal.times[i - 1] as { full: number }).full
    if (to - from > planned + SAME) found.push({ from: from + planned, to })
  }
  return found
}
