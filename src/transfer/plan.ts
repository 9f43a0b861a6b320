import type { Schedule } from '../timing/schedule.ts'
import type { ActionTimes } from './performance.ts'

/** What a rule makes a performance from. */
export type Plan = {
  readonly schedule: Schedule
  /** When each action is to happen. */
  readonly times: readonly ActionTimes[]
  /** The shortest time in which this dancer can carry the weight across, in beats; ∞: never quicker than planned. */
  readonly shortest: number
}

/** What a rule says of one action. @param ready when the action before it has ended; −∞ before the first */
export type ActionRule = (plan: ActionTimes, ready: number, index: number) => ActionTimes

/** The least time an action takes: nobody is asked to be quicker than the plan. */
export const leastTime = ({ leaves, full }: ActionTimes, shortest: number): number => Math.min(shortest, full - leaves)

const SAME = 1e-12

/** The action from `leaves` to `full`, split where the plan has it in proportion. */
export function between(plan: ActionTimes, leaves: number, full: number): ActionTimes {
  const planned = plan.full - plan.leaves
  if (Math.abs(full - leaves - planned) < SAME) return shifted(plan, leaves - plan.leaves)
  return { leaves, split: leaves + ((plan.split - plan.leaves) / planned) * (full - leaves), full }
}

/** The action `by` beats later (+) or sooner (−), at its own pace. */
export const shifted = ({ leaves, split, full }: ActionTimes, by: number): ActionTimes => ({
  leaves: leaves + by,
  split: split + by,
  full: full + by,
})

/**
 * Whoever is not in the plan's time any more begins as soon as he can and makes up for it: start = max(a, end before),
 * end = max(b, start + least time).
 */
function madeUp(plan: ActionTimes, ready: number, shortest: number): ActionTimes {
  if (ready <= plan.leaves) return plan
  return between(plan, ready, Math.max(plan.full, ready + leastTime(plan, shortest)))
}

/**
 * Action after action: a rule for those that it is made on, and the plan, made up for, for the others.
 * @param on whether the rule is made on an action
 */
export function danced({ times, shortest }: Plan, on: (index: number) => boolean, rule: ActionRule): ActionTimes[] {
  const all: ActionTimes[] = []
  let ready = Number.NEGATIVE_INFINITY
  for (const [index, plan] of times.entries()) {
    const next = on(index) ? rule(plan, ready, index) : madeUp(plan, ready, shortest)
    all.push(next)
    ready = next.full
  }
  return all
}
