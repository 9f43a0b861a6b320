import type { Schedule, ScheduledAction } from '../timing/schedule.ts'
import type { Beat, Share } from '../units.ts'
import { type ActionTimes, type Performance, performance } from './performance.ts'

/** Which way of dancing a figure to show. Plain data, so that it can be kept and sent. */
export type Way =
  | { readonly kind: 'in time' }
  /** Each action begins `by` beats (0 to `LATEST`) after its plan and keeps its own pace. */
  | { readonly kind: 'late'; readonly by: Beat }
  /** Too soon onto the foot: across in the first `part` of the step's time (`EARLIEST_PART` to 1), then waits. */
  | { readonly kind: 'early'; readonly part: Share }

/** The most that a dancer can be late by, in beats, and the least part of the step's time to be across in. */
export const LATEST = 1
export const EARLIEST_PART = 0.25

/** How far a struck step that comes early is ahead, in beats: foot and weight go together, so all of it is. */
const STRUCK_EARLY = 0.5

/** The rule of each way: the plan of an action → when it is danced. */
function rule(way: Way, schedule: Schedule): (plan: ActionTimes) => ActionTimes {
  switch (way.kind) {
    case 'in time':
      return (plan) => plan
    case 'late':
      return ({ leaves, split, full }) => ({ leaves: leaves + way.by, split: split + way.by, full: full + way.by })
    case 'early':
      if (schedule.convention === 'struck') {
        return ({ leaves, split, full }) => ({
          leaves: leaves - STRUCK_EARLY,
          split: split - STRUCK_EARLY,
          full: full - STRUCK_EARLY,
        })
      }
      return ({ leaves, split, full }) => ({
        leaves,
        split: leaves + way.part * (split - leaves),
        full: leaves + way.part * (full - leaves),
      })
  }
}

/** The scheduled actions danced in the given way. Pure; the schedule is left as it is. */
export function perform(schedule: Schedule, way: Way): Performance {
  const danced = rule(way, schedule)
  return performance(
    schedule.actions.map(({ moments }: ScheduledAction) => danced(moments)),
    schedule.actions.map(({ action }) => action.weight),
    schedule.grid,
  )
}
