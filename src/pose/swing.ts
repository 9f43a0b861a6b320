import type { Action, Foot } from '../figure/figure.ts'
import { otherFoot } from '../transfer/actingFeet.ts'
import { HALF_DOUBLE_SUPPORT } from '../transfer/doubleSupport.ts'
import type { Body } from './body.ts'
import type { FloorAction } from './floor.ts'
import { footWay, type Place, placeBeside } from './footPosition.ts'
import { add, subtract, turn, type Vector } from './vector.ts'

/** The part of an action from which on the new foot carries all, and the old one is free. */
export const RELEASED = 0.5 + HALF_DOUBLE_SUPPORT
/** A foot that still carries part of the weight hands it over in this part of the step before it lifts. */
export const HANDS_OVER = HALF_DOUBLE_SUPPORT / 2
/** A foot nearer than this to the place beside the other one, metres, need not be collected on its way. */
const ALREADY_BESIDE = 0.01

/** One unbroken movement of a foot, from rest to rest, in progress. */
export type Swing = {
  readonly from: number
  readonly to: number
  readonly start: Place
  readonly end: Place
  /** Where it passes on the way, and when. */
  readonly via: { readonly at: number; readonly place: Place } | null
  /** Carried round a foot that pivots, from the swing's beginning on; its own way begins at `departs`. */
  readonly round: {
    readonly centre: Vector
    readonly by: number
    readonly until: number
    readonly departs: number
  } | null
  /** false: the foot stays on the floor and turns on its spot. */
  readonly lifts: boolean
  readonly foot: Foot
}

export const samePlace = (a: Place, b: Place): boolean =>
  Math.hypot(a.x - b.x, a.y - b.y) < 1e-9 && Math.abs(a.heading - b.heading) < 1e-9

/** A place carried round a point. */
export const carriedRound = (place: Place, centre: Vector, by: number): Place => ({
  ...add(centre, turn(subtract(place, centre), by)),
  heading: place.heading + by,
})

/** A foot that turns on its spot, under load or not. */
export const turnsOnSpot = (foot: Foot, start: Place, by: number, from: number, to: number): Swing => ({
  foot,
  from,
  to,
  start,
  end: { ...start, heading: start.heading + by },
  via: null,
  round: null,
  lifts: false,
})

/** True when `foot` carries nothing from half a double support after the action's split on. */
const freeAfterSplit = (action: FloorAction, foot: Foot): boolean =>
  !action.stays || (action.foot === foot && action.loadBefore === 0)

/**
 * How the acting foot gets to its place: whether it is already on its way when its action begins is decided here.
 * A foot that has just given its weight away comes in one unbroken path (close, tap, cross), passes beside the other
 * foot as the action before is done (a travelling step), or is carried round by a pivot and then steps; one that is
 * beside it already, or still carries, waits.
 * @param touchesAt the part of the action at which it is put down
 * @param standsUntil the progress until which it still makes a movement of its own (a turn on its spot)
 */
export function swingOf(
  index: number,
  { foot, place, standing, loadBefore }: FloorAction,
  before: FloorAction | undefined,
  start: Place,
  action: Action,
  touchesAt: number,
  standsUntil: number,
  body: Body,
): Swing | null {
  const pivot = before?.pivot ?? null
  if (samePlace(start, place) && pivot === null) return null
  const to = index + touchesAt
  const directly = (from: number): Swing => ({
    foot,
    from,
    to,
    start,
    end: place,
    via: null,
    round: null,
    lifts: true,
  })
  if (loadBefore > 0) return directly(index + HANDS_OVER)
  if (before === undefined || !freeAfterSplit(before, foot) || footWay(action.direction) === 'stays')
    return samePlace(start, place) ? null : directly(index)
  const released = Math.max(standsUntil, index - 1 + RELEASED)
  if (footWay(action.direction) === 'comes') return directly(released)
  if (pivot !== null) {
    const round = { centre: standing, by: pivot.by, until: pivot.until, departs: index }
    return { ...directly(released), round }
  }
  if (released >= index) return directly(index)
  const beside = placeBeside(foot, standing, before.facingWhenFull, body)
  if (Math.hypot(beside.x - start.x, beside.y - start.y) < ALREADY_BESIDE) return directly(index)
  return { ...directly(released), via: { at: index, place: beside } }
}

/** Both feet stay down after an action that moved none: the next moves none either, or there is nothing to collect. */
export function oldFootStays(
  next: Action | undefined,
  place: Place,
  standing: Place,
  foot: Foot,
  facing: number,
  body: Body,
): boolean {
  if (next !== undefined) return footWay(next.direction) === 'stays' && next.turn === 0 && next.footTurn === null
  return samePlace(standing, placeBeside(otherFoot(foot), place, facing, body))
}

/** When nothing follows, the foot that is free is collected beside the one that carries; after a pivot it goes round with it. */
export function collected(actions: readonly FloorAction[], body: Body): Swing | null {
  const last = actions.at(-1)
  if (last === undefined || last.loadAfter !== 1) return null
  const foot = otherFoot(last.foot)
  const from = actions.length - 1 + RELEASED
  const to = actions.length
  const swing = { foot, from, to, start: last.standing, via: null, lifts: true }
  if (last.pivot !== null) {
    const { by, until } = last.pivot
    const round = { centre: last.place, by, until, departs: to }
    return { ...swing, end: carriedRound(last.standing, last.place, by), round }
  }
  const end = placeBeside(foot, last.place, last.facing, body)
  return samePlace(last.standing, end) ? null : { ...swing, end, round: null }
}
