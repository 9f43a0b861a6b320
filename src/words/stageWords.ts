import type { Action, Foot, TurnKind } from '../figure/figure.ts'
import { footWay } from '../pose/footPosition.ts'
import { actingFeet, otherFoot } from '../transfer/actingFeet.ts'
import { behind, type Comparison, waits } from '../transfer/comparison.ts'
import { faultOf } from '../transfer/faults.ts'
import type { ActionTimes, Performance } from '../transfer/performance.ts'
import { beatsInWords, fraction } from './fraction.ts'

const EXACT = 1e-6

/** What one does who turns on a foot. */
const TURNING: Readonly<Record<TurnKind, string>> = {
  pivot: 'pivoting',
  twist: 'twisting',
  'heel turn': 'turning on the heel',
}

/** What becomes of the free foot when a step is done: what the next action is decides. */
function freeFoot(foot: Foot, next: Action | undefined): string {
  if (next === undefined) return `${foot} collected`
  const way = footWay(next.direction)
  if (way === 'stays') return `${foot} in its place`
  return way === 'comes' || next.weight === 0 ? `${foot} on its way in` : `${foot} passing`
}

/**
 * How far the weight is at the split. Half way only where all of it goes over: a part that goes, or that was there before,
 * leaves it elsewhere.
 * @param before the share that the acting foot still has from the step before
 */
function atSplit({ direction, weight }: Action, before: number): string {
  const isHalf = direction === 'in place' ? Math.abs(before + weight - 1) < EXACT : before === 0 && weight === 1
  return `${isHalf ? 'half' : 'part'} way between the feet`
}

function whileActing(action: Action, foot: Foot, u: number, before: number): string {
  const standing = otherFoot(foot)
  const { footTurn } = action
  if (action.direction === 'hold') {
    return footTurn === null ? `standing on the ${standing} foot` : `${TURNING[footTurn.kind]} on the ${standing} foot`
  }
  if (footTurn?.kind === 'heel turn' && u < 0.5 - EXACT)
    return `turning on the ${standing} heel, ${foot} foot on its way in`
  if (action.weight === 0) {
    const name = action.direction === 'tap' || action.direction === 'point' ? `${action.direction}s` : 'touches'
    return u < 0.5 - EXACT
      ? `${foot} foot coming in, no weight on it`
      : `${foot} foot ${name}, weight stays on the ${standing}`
  }
  if (Math.abs(u - 0.5) < EXACT) {
    const way = atSplit(action, before)
    return action.direction === 'in place' ? way : `placed, ${way}`
  }
  if (u > 0.5) return `transferring to the ${foot} foot`
  return action.direction === 'in place' ? `leaving the ${standing} foot` : `moving, ${foot} foot on its way`
}

function whenDone(action: Action, foot: Foot, next: Action | undefined, waiting: boolean): string {
  const standing = otherFoot(foot)
  if (action.weight === 0) {
    return action.direction === 'hold'
      ? `standing on the ${standing} foot`
      : `over the ${standing} foot, ${foot} touching without weight`
  }
  const turns = action.footTurn === null || action.footTurn.kind === 'heel turn' ? '' : TURNING[action.footTurn.kind]
  if (action.weight < 1) {
    const part = `part weight on the ${foot} foot (${fraction(action.weight)})`
    if (waiting) return `${part}, waiting`
    return turns === '' ? part : `${part}, ${turns}`
  }
  if (turns !== '' && !waiting) return `fully over the ${foot} foot, ${turns}`
  return waiting
    ? `standing on the ${foot} foot, waiting`
    : `fully over the ${foot} foot, ${freeFoot(otherFoot(foot), next)}`
}

/** What is said of a stop inside an action and of what comes of it; null where nothing is. @param u the part of the action */
function whileStopped(
  action: Action,
  foot: Foot,
  { at, from, to }: NonNullable<ActionTimes['stands']>,
  t: number,
  u: number,
  before: number,
): string | null {
  const { direction } = action
  if (at >= 0.5 - EXACT) return t > from + EXACT && t < to - EXACT ? `stopped ${atSplit(action, before)}` : null
  // From its touch on the foot is down: it waits for the body, which then comes.
  if (t < from - EXACT || u >= 0.5 - EXACT) return null
  const where = direction === 'in place' ? 'in its place' : 'placed'
  if (t > to + EXACT) return `${foot} foot ${where}, the body follows`
  return direction === 'in place'
    ? `${foot} foot ${where}, the body waits`
    : `${foot} foot ${where} without the body, which waits`
}

/** What is asked of a performance again and again, worked out once. */
type Known = {
  readonly ideal: Performance
  readonly feet: readonly Foot[]
  readonly planned: readonly Foot[]
  readonly standing: ReturnType<typeof waits>
}
const known = new WeakMap<Performance, Known>()

function knownOf({ schedule: { figure }, ideal }: Comparison, performance: Performance): Known {
  const before = known.get(performance)
  if (before?.ideal === ideal) return before
  const [feet, planned] = [performance, ideal].map(({ carried }) => actingFeet(figure, carried)) as [Foot[], Foot[]]
  const now = { ideal, feet, planned, standing: waits(performance, ideal) }
  known.set(performance, now)
  return now
}

function stateNow(comparison: Comparison, panel: number, t: number): string {
  const { schedule, panels } = comparison
  const { performance } = panels[panel] as Comparison['panels'][number]
  const { feet, planned, standing } = knownOf(comparison, performance)
  const actions = schedule.figure.actions
  /** As it is danced: with the weight that it takes. */
  const danced = (index: number): Action => ({
    ...(actions[index] as Action),
    weight: performance.carried[index] as Action['weight'],
  })
  /** Of part weight the rest is still on the foot that acts next. */
  const restBefore = (index: number): number => {
    const last = actions.findLastIndex(({ direction }, k) => k < index && direction !== 'hold')
    const took = last < 0 ? 0 : (performance.carried[last] as number)
    return took > 0 && took < 1 ? 1 - took : 0
  }
  const onWhichFoot = (index: number, state: string): string =>
    feet[index] === planned[index] ? state : `wrong foot: ${state}`
  const waiting = standing.some(({ from, to }) => t > from + EXACT && t < to - EXACT)
  const p = performance.curve.at(t)
  const whole = Math.round(p)
  if (Math.abs(p - whole) >= EXACT) {
    const index = Math.floor(p)
    const [action, foot, u] = [danced(index), feet[index] as Foot, p - index]
    const stands = performance.times[index]?.stands
    const before = restBefore(index)
    const stopped = stands === undefined ? null : whileStopped(action, foot, stands, t, u, before)
    return onWhichFoot(index, stopped ?? whileActing(action, foot, u, before))
  }
  if (whole === 0) return `over the ${otherFoot(schedule.figure.firstFoot)} foot, ready`
  const done = whole - 1
  const next = actions[whole] === undefined ? undefined : danced(whole)
  return onWhichFoot(done, whenDone(danced(done), feet[done] as Foot, next, waiting))
}

/**
 * What the weight does in one panel at a grid point, short: "fully over the right foot, left passing";
 * "late by ½ beat: moving, left foot on its way".
 * @param panel index into the comparison's panels
 */
export function stageWords(comparison: Comparison, panel: number, t: number): string {
  const { way, performance } = comparison.panels[panel] as Comparison['panels'][number]
  // Other dynamics are no fault: between the moments the weight lies elsewhere, and is in time at each.
  if (way.kind !== 'in time' && faultOf(way.kind).of === 'dynamics') return stateNow(comparison, panel, t)
  const by = Math.round(behind(performance, comparison.ideal, t) * 8) / 8
  const state = stateNow(comparison, panel, t)
  if (by === 0) return state
  return `${by > 0 ? 'late' : 'early'} by ${beatsInWords(Math.abs(by))}: ${state}`
}
