import type { Dance } from '../dance/dance.ts'
import type { Schedule } from '../timing/schedule.ts'
import type { ActionTimes, Performance } from './performance.ts'
import type { Way } from './way.ts'

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

/** Whether an action is danced: a performance may be of a part of the figure only. */
export function inCurve({ curve }: Performance, index: number): boolean {
  return index >= (curve.knots[0]?.p ?? 0) && index < curve.actions
}

/** Whether the weight moves in an action: steps, and what takes a rest of part weight away. */
function moves({ carried }: Performance, index: number): boolean {
  const [share, before] = [carried[index] as number, carried[index - 1] ?? 1]
  return share > 0 || (before > 0 && before < 1)
}

const timesIn = ({ times }: Performance, index: number): ActionTimes => times[index] as ActionTimes

/**
 * Times in which the weight stands still longer than the plan has it rest, in beats. Of the weight, not of the actions:
 * while a foot taps, the weight stands in the plan too.
 */
export function waits(danced: Performance, ideal: Performance): { from: number; to: number }[] {
  const found: { from: number; to: number }[] = []
  let last: number | null = null
  for (const index of danced.times.keys()) {
    if (!inCurve(danced, index) || !moves(danced, index)) continue
    const times = timesIn(danced, index)
    if (last !== null) {
      const { full } = timesIn(danced, last)
      // What the plan moves meanwhile, and this dancer does not, is no rest of the plan's.
      let rest = timesIn(ideal, index).leaves - timesIn(ideal, last).full
      for (let between = last + 1; between < index; between++) {
        const planned = timesIn(ideal, between)
        if (moves(ideal, between)) rest -= planned.full - planned.leaves
      }
      const longer = times.leaves - full - rest
      if (longer > SAME) found.push({ from: full, to: full + longer })
    }
    if (times.stands !== undefined) found.push({ from: times.stands.from, to: times.stands.to })
    last = index
  }
  return found
}

/** Half an action that takes less than this part of its planned time is rushed (own judgement: a fifth quicker is seen). */
const RUSHED = 0.8

/** Times in which the weight goes clearly faster than planned, in beats. @returns neighbouring ones as one */
export function rushes(danced: Performance, ideal: Performance): { from: number; to: number }[] {
  const found: { from: number; to: number }[] = []
  for (const [index, { leaves, split, full, stands }] of danced.times.entries()) {
    if (!inCurve(danced, index) || !moves(danced, index)) continue
    const planned = timesIn(ideal, index)
    // A stop inside a half is no part of its going.
    const [first, second] = stands === undefined || stands.at < 0.5 ? [split, split] : [split, stands.to]
    const stood = stands !== undefined && stands.at < 0.5 ? stands.to - stands.from : 0
    const halves = [
      { from: leaves, to: first, took: first - leaves - stood, plan: planned.split - planned.leaves },
      { from: second, to: full, took: full - second, plan: planned.full - planned.split },
    ]
    for (const { from, to, took, plan } of halves) {
      if (took >= RUSHED * plan - SAME) continue
      const before = found.at(-1)
      const begins = stood > 0 && from === leaves ? to - took : from
      if (before !== undefined && begins - before.to <= SAME) before.to = to
      else found.push({ from: begins, to })
    }
  }
  return found
}

/** A moment of an action against the plan's. */
export type MomentError = {
  readonly index: number
  readonly moment: 'leaves' | 'split' | 'full'
  readonly planned: number
  readonly danced: number
  /** Beats; late is positive. */
  readonly by: number
}

const MOMENTS = ['leaves', 'split', 'full'] as const

/**
 * How far each moment is from the plan's: when the weight leaves (the last instant at which it has not), is split and is
 * full (the first at which it is).
 */
export function momentErrors(danced: Performance, ideal: Performance): MomentError[] {
  return danced.times.flatMap((times, index) =>
    inCurve(danced, index)
      ? MOMENTS.map((moment) => {
          const planned = timesIn(ideal, index)[moment]
          return { index, moment, planned, danced: times[moment], by: times[moment] - planned }
        })
      : [],
  )
}
