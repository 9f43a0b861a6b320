import type { Schedule } from '../timing/schedule.ts'
import type { Share } from '../units.ts'
import { HALF_DOUBLE_SUPPORT } from './doubleSupport.ts'
import { type ActionTimes, type Performance, type Profile, performance } from './performance.ts'
import { type ActionRule, between, danced, leastTime, type Plan, shifted } from './plan.ts'
import { inRhythm } from './rhythm.ts'
import { isOn, type Way } from './way.ts'

/** How far a struck step that comes early is ahead, in beats: foot and weight go together, so all of it is. */
const STRUCK_EARLY = 0.5
/** A foot is not down sooner than this part of the least time after its step has begun. */
const SOONEST_TOUCH = 0.25
/** Of an action that is to take less than its time, at least this part is left. */
const SHORTEST_LEFT = 0.5
/** The value of the steps that can be placed and not carried, in beats. */
const HALF_BEAT = 0.5

/** Late by the same on every action; on some, the others make up for it. */
const late =
  (by: number, hurries: boolean, shortest: number): ActionRule =>
  (plan, ready) => {
    const leaves = Math.max(plan.leaves + by, ready)
    if (!hurries) return between(plan, leaves, leaves + (plan.full - plan.leaves))
    return between(plan, leaves, Math.max(plan.full, leaves + leastTime(plan, shortest)))
  }

/** Too soon onto the foot. Struck, the whole strike comes half a beat sooner: the only early that also leaves early. */
const early =
  (part: number, struck: boolean): ActionRule =>
  (plan, ready) => {
    const { leaves, split, full } = plan
    if (struck) {
      if (part === 1) return plan
      const sooner = Math.max(-STRUCK_EARLY, ready - leaves)
      return shifted(plan, sooner)
    }
    return { leaves, split: leaves + part * (split - leaves), full: leaves + part * (full - leaves) }
  }

/** Gains a little each step: every action takes `by` less than its time, and the next begins so much sooner. */
function gaining({ times }: Plan, by: number): ActionTimes[] {
  let gained = 0
  return times.map((plan) => {
    const leaves = plan.leaves - gained
    gained += Math.min(by, SHORTEST_LEFT * (plan.full - plan.leaves))
    return between(plan, leaves, plan.full - gained)
  })
}

/** The foot is put down without the body, which comes after. */
const footFirst =
  (by: number, shortest: number): ActionRule =>
  (plan, ready) => {
    const at = 0.5 - HALF_DOUBLE_SUPPORT
    const leaves = Math.max(plan.leaves, ready)
    const least = leastTime(plan, shortest)
    const planned = plan.leaves + 2 * at * (plan.split - plan.leaves)
    const touches = Math.max(planned, leaves + SOONEST_TOUCH * least)
    const goesOn = touches + by
    const full = Math.max(plan.full, goesOn + least / 2)
    const split = goesOn + ((plan.split - planned) / (plan.full - planned)) * (full - goesOn)
    return { leaves, split, full, ...(goesOn > touches ? { stands: { at, from: touches, to: goesOn } } : {}) }
  }

/** On its count split and not full, and full half a beat later. */
const placed: ActionRule = (plan, ready) => {
  const leaves = Math.max(plan.leaves, ready)
  const split = Math.max(plan.full, leaves + (plan.full - plan.leaves))
  return { leaves, split, full: split + HALF_BEAT }
}

/** The actions that begin a run of half-beat steps. */
function beginRuns({ actions }: Schedule): Set<number> {
  const short = actions.map(({ action, value }) => action.weight > 0 && value === HALF_BEAT)
  return new Set(short.flatMap((is, index) => (is && short[index - 1] !== true ? [index] : [])))
}

/** Half of the second half goes by in the middle, and the rest is hurried. */
const stops: ActionRule = ({ leaves, split, full }) => ({
  leaves,
  split,
  full,
  stands: { at: 0.5, from: split, to: (split + full) / 2 },
})

/** When each action happens. */
function timesOf(plan: Plan, way: Way): readonly ActionTimes[] {
  const { schedule, times, shortest } = plan
  const on = (index: number): boolean => isOn(way, index)
  const carries = (index: number): boolean => on(index) && (schedule.actions[index]?.action.weight ?? 0) > 0
  switch (way.kind) {
    case 'late':
    case 'hurrying':
      return danced(plan, on, late(way.by, way.kind === 'hurrying', shortest))
    case 'slip': {
      const slipped = way.on?.[0] ?? 0
      return danced(plan, (index) => index === slipped, late(way.by, true, shortest))
    }
    case 'early':
      return danced(plan, on, early(way.part, schedule.convention === 'struck'))
    case 'ahead':
      return times.map((action) => shifted(action, -way.by))
    case 'gaining':
      return gaining(plan, way.by)
    case 'foot first':
      return danced(plan, carries, footFirst(way.by, shortest))
    case 'placed': {
      const first = beginRuns(schedule)
      return danced(plan, (index) => first.has(index), placed)
    }
    case 'stops':
      return danced(plan, carries, stops)
    case 'cut short':
    case 'misplaced':
    case 'evened':
      return inRhythm(schedule, way)
    default:
      return times
  }
}

/** A step to the other foot that closes, and takes the weight. */
const isClose = (direction: string, weight: number): boolean => direction.startsWith('close') && weight === 1

/** The share of the weight that each action takes. */
const carriedIn = ({ actions }: Schedule, way: Way): Share[] =>
  actions.map(({ action: { direction, weight } }, index) => {
    if (!isOn(way, index)) return weight
    if (way.kind === 'no change' && isClose(direction, weight)) return 0 as Share
    if (way.kind === 'part weight' && weight === 1) return way.part
    return weight
  })

const profileOf = ({ kind }: Way): Profile => (kind === 'swelling' || kind === 'arrested' ? kind : 'even')

/**
 * The scheduled actions danced in the given way. Pure; the schedule is left as it is.
 * @param shortest the shortest time in which this dancer can carry the weight across, in beats at the playing tempo; ∞:
 * never quicker than planned
 */
export function perform(schedule: Schedule, way: Way, shortest = Number.POSITIVE_INFINITY): Performance {
  const times = schedule.actions.map(({ moments: { leaves, split, full } }) => ({ leaves, split, full }))
  const plan = { schedule, times, shortest }
  return performance(timesOf(plan, way), carriedIn(schedule, way), schedule.grid, profileOf(way))
}
