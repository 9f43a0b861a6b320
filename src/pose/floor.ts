import type { Action, Figure, Foot, RoomDirection } from '../figure/figure.ts'
import { actingFeet, otherFoot } from '../transfer/actingFeet.ts'
import type { Share } from '../units.ts'
import type { Body } from './body.ts'
import { footPosition, footWay, type Place, placeBeside } from './footPosition.ts'
import { mix, type Vector } from './vector.ts'

/**
 * Half the part of a step (of 1 in progress) in which both feet carry: double support is 20–25 % of a walking step
 * (stance 60–65 % of the stride; Perry & Burnfield, Gait Analysis, from memory).
 */
export const HALF_DOUBLE_SUPPORT = 1 / 8
/** A foot that still carries part of the weight hands it over in this part of the step before it lifts. */
export const HANDS_OVER = HALF_DOUBLE_SUPPORT / 2
/** A foot nearer than this to the place beside the other one, metres, need not be collected on its way. */
const ALREADY_BESIDE = 0.01
/** A foot is never put down sooner than this after its step has begun, however early it is said to touch. */
const SHORTEST_SWING = 1 / 20

/** One unbroken movement of a foot, from rest to rest, in progress. */
export type Swing = {
  readonly from: number
  readonly to: number
  readonly start: Place
  readonly end: Place
  /** Where it passes on the way, and when. */
  readonly via: { readonly at: number; readonly place: Place } | null
  readonly foot: Foot
}

/** One action on the floor. */
export type FloorAction = {
  readonly foot: Foot
  readonly place: Place
  /** The other foot's place. */
  readonly standing: Place
  /** Share that the acting foot carries when the action begins and when it is done. */
  readonly loadBefore: number
  readonly loadAfter: number
  /** The acting foot does not leave the floor: its load passes over the whole action. */
  readonly stays: boolean
  /** The part of the action at which the load begins to pass onto the foot. */
  readonly loadsFrom: number
  /** Where the weight rests before and after. */
  readonly restBefore: Vector
  readonly rest: Vector
  /** The dancer's facing at the end, radians. */
  readonly facing: number
}

export type Floor = {
  readonly body: Body
  readonly start: { readonly left: Place; readonly right: Place; readonly standing: Foot }
  readonly actions: readonly FloorAction[]
  readonly swings: { readonly left: readonly Swing[]; readonly right: readonly Swing[] }
}

const QUARTER = Math.PI / 2
/** Headings of the room, 0 = line of dance, right positive; the wall is on the right. */
const ROOM_HEADING: Readonly<Record<RoomDirection, number>> = {
  'line of dance': 0,
  'diagonally to wall': QUARTER / 2,
  wall: QUARTER,
  'diagonally to wall against line of dance': QUARTER * 1.5,
  'against line of dance': QUARTER * 2,
  'diagonally to centre against line of dance': -QUARTER * 1.5,
  centre: -QUARTER,
  'diagonally to centre': -QUARTER / 2,
}

function firstFacing({ starts }: Figure): number {
  if (starts === null) return 0
  return ROOM_HEADING[starts.to] + (starts.way === 'backing' ? Math.PI : 0)
}

const samePlace = (a: Place, b: Place): boolean =>
  Math.hypot(a.x - b.x, a.y - b.y) < 1e-9 && Math.abs(a.heading - b.heading) < 1e-9

/** True when `foot` carries nothing from half a double support after the action's split on. */
const freeAfterSplit = (action: FloorAction, foot: Foot): boolean =>
  !action.stays || (action.foot === foot && action.loadBefore === 0)

/**
 * How the acting foot gets to its place: whether it is already on its way when its action begins is decided here.
 * A foot that has just given its weight away comes in one unbroken path (close, tap, cross) or passes beside the other
 * foot as the action before is done (a travelling step); one that is beside it already, or still carries, waits.
 */
function swingOf(
  index: number,
  { foot, place, standing, loadBefore }: FloorAction,
  before: FloorAction | undefined,
  start: Place,
  action: Action,
  touchesAt: number,
  body: Body,
): Swing | null {
  if (samePlace(start, place)) return null
  const to = index + touchesAt
  const directly = (from: number): Swing => ({ foot, from, to, start, end: place, via: null })
  if (loadBefore > 0) return directly(index + HANDS_OVER)
  if (before === undefined || !freeAfterSplit(before, foot) || footWay(action.direction) === 'stays')
    return directly(index)
  const released = index - 0.5 + HALF_DOUBLE_SUPPORT
  if (footWay(action.direction) === 'comes') return directly(released)
  const beside = placeBeside(foot, standing, before.facing, body)
  if (Math.hypot(beside.x - start.x, beside.y - start.y) < ALREADY_BESIDE) return directly(index)
  return { foot, from: released, to, start, end: place, via: { at: index, place: beside } }
}

/** Both feet stay down after an action that moved none: the next moves none either, or there is nothing to collect. */
function oldFootStays(
  next: Action | undefined,
  place: Place,
  standing: Place,
  foot: Foot,
  facing: number,
  body: Body,
): boolean {
  if (next !== undefined) return footWay(next.direction) === 'stays' && next.turn === 0
  return samePlace(standing, placeBeside(otherFoot(foot), place, facing, body))
}

/** When nothing follows, the foot that is free is collected beside the one that carries. */
function collected(actions: readonly FloorAction[], body: Body): Swing | null {
  const last = actions.at(-1)
  if (last === undefined || last.loadAfter !== 1) return null
  const foot = otherFoot(last.foot)
  const end = placeBeside(foot, last.place, last.facing, body)
  if (samePlace(last.standing, end)) return null
  const from = actions.length - 0.5 + HALF_DOUBLE_SUPPORT
  return { from, to: actions.length, start: last.standing, end, foot, via: null }
}

/**
 * The figure on the floor: where each foot comes to stand and how it gets there. The foot that acts follows the weight
 * that was carried, so a change left out moves all later feet.
 * @param carried the share of the weight each action took; same length as the actions
 * @param touches for each action the part of it at which its foot is put down, where somebody has set it; null = usual
 * @throws RangeError when a list's length is not the number of actions
 */
export function layOutFloor(
  figure: Figure,
  carried: readonly Share[],
  touches: readonly (number | null)[],
  body: Body,
): Floor {
  const n = figure.actions.length
  if (carried.length !== n || touches.length !== n) {
    throw new RangeError(`carried and touches must have ${n} entries, got ${carried.length} and ${touches.length}`)
  }
  let facing = firstFacing(figure)
  const middle: Vector = { x: 0, y: 0 }
  const half = { ...body, stance: body.stance / 2 }
  const feet: Record<Foot, Place> = {
    left: placeBeside('left', middle, facing, half),
    right: placeBeside('right', middle, facing, half),
  }
  const load: Record<Foot, number> = { left: 0, right: 0 }
  load[otherFoot(figure.firstFoot)] = 1
  const start = { left: feet.left, right: feet.right, standing: otherFoot(figure.firstFoot) }

  const actions: FloorAction[] = []
  const swings: Record<Foot, Swing[]> = { left: [], right: [] }
  const acting = actingFeet(figure, carried)
  let rest: Vector = feet[start.standing]
  for (const [index, action] of figure.actions.entries()) {
    const foot = acting[index] as Foot
    const standing = feet[otherFoot(foot)]
    const loadBefore = load[foot]
    const turns = action.turn !== 0
    facing += action.turn
    const place =
      footWay(action.direction) === 'stays'
        ? { ...feet[foot], heading: turns ? facing : feet[foot].heading }
        : footPosition(action, foot, standing, facing, body)
    const loadAfter = action.direction === 'hold' ? loadBefore : (carried[index] as number)
    const touchesAt = Math.max(SHORTEST_SWING, touches[index] ?? 0.5 - HALF_DOUBLE_SUPPORT)
    const floorAction: FloorAction = {
      foot,
      place,
      standing,
      loadBefore,
      loadAfter,
      stays:
        footWay(action.direction) === 'stays' &&
        samePlace(feet[foot], place) &&
        (loadAfter < 1 || oldFootStays(figure.actions[index + 1], place, standing, foot, facing, body)),
      loadsFrom: Math.max(0.5 - HALF_DOUBLE_SUPPORT, touchesAt),
      restBefore: rest,
      rest: mix(standing, place, loadAfter),
      facing,
    }
    const swing = swingOf(index, floorAction, actions.at(-1), feet[foot], action, touchesAt, body)
    if (swing !== null) swings[foot].push(swing)
    actions.push(floorAction)
    feet[foot] = place
    load[foot] = loadAfter
    load[otherFoot(foot)] = 1 - loadAfter
    rest = floorAction.rest
  }
  const last = collected(actions, body)
  if (last !== null) swings[last.foot].push(last)
  return { body, start, actions, swings }
}
