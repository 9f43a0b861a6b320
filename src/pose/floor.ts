import { alignmentEighths } from '../figure/alignmentEighths.ts'
import type { Action, Figure, Foot } from '../figure/figure.ts'
import { actingFeet, otherFoot } from '../transfer/actingFeet.ts'
import { HALF_DOUBLE_SUPPORT } from '../transfer/doubleSupport.ts'
import type { Share } from '../units.ts'
import type { Body } from './body.ts'
import { footPosition, footWay, type Place, placeBeside } from './footPosition.ts'
import { type Paths, pathsOf } from './pathsOf.ts'
import { type StandingTurn, standingTurn } from './standingTurn.ts'
import { carriedRound, collected, oldFootStays, type Swing, samePlace, swingOf, turnsOnSpot } from './swing.ts'
import { mix, type Vector } from './vector.ts'

/** A foot is never put down sooner than this after its step has begun, however early it is said to touch. */
const SHORTEST_SWING = 1 / 20

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
  /** The dancer's facing at the end, radians, and as the weight is full (a turn on the foot may still go on then). */
  readonly facing: number
  readonly facingWhenFull: number
  /** The turn on the new foot that carries the free one round with it, and the progress at which it ends. */
  readonly pivot: { readonly by: number; readonly until: number } | null
}

export type Floor = {
  readonly body: Body
  readonly start: { readonly left: Place; readonly right: Place; readonly standing: Foot }
  readonly actions: readonly FloorAction[]
  readonly swings: { readonly left: readonly Swing[]; readonly right: readonly Swing[] }
  /** The same worked out as cubics of the progress: what `pose` evaluates. */
  readonly paths: Paths
}

/** The first facing, radians; 0 along the floor's y where the figure is not tied to the room. */
const firstFacing = ({ starts }: Figure): number => (starts === null ? 0 : (alignmentEighths(starts) * Math.PI) / 4)

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
  const standingFirst = otherFoot(figure.firstFoot)
  load[standingFirst] = 1
  if (figure.freeFoot !== null) {
    const stands = { direction: figure.freeFoot, size: null, placed: null, position: null }
    const from = feet[figure.firstFoot]
    feet[figure.firstFoot] = footPosition(stands, figure.firstFoot, feet[standingFirst], facing, body, from)
  }
  const start = { left: feet.left, right: feet.right, standing: standingFirst }

  const actions: FloorAction[] = []
  const swings: Record<Foot, Swing[]> = { left: [], right: [] }
  const acting = actingFeet(figure, carried)
  const touchesAt = (index: number): number => Math.max(SHORTEST_SWING, touches[index] ?? 0.5 - HALF_DOUBLE_SUPPORT)
  const turnOnSpot = (feetThatTurn: readonly Foot[], { by, from, until }: StandingTurn): void => {
    for (const foot of feetThatTurn) {
      const swing = turnsOnSpot(foot, feet[foot], by, from, until)
      swings[foot].push(swing)
      feet[foot] = swing.end
    }
  }
  let rest: Vector = feet[start.standing]
  for (const [index, action] of figure.actions.entries()) {
    const foot = acting[index] as Foot
    const standingFoot = otherFoot(foot)
    const loadBefore = load[foot]
    const turned = standingTurn(figure.actions, index, foot, standingFoot, carried, loadBefore, touchesAt)
    facing += action.turn
    if (turned?.when === 'during') {
      facing += turned.by
      turnOnSpot(turned.feet, turned)
    }
    const standing = feet[standingFoot]
    const place = placeOf(action, foot, feet[foot], standing, facing, turned, body)
    const loadAfter = action.direction === 'hold' ? loadBefore : (carried[index] as number)
    const goesOn = turned?.when === 'after' && turned.until > index + 1
    const floorAction: FloorAction = {
      foot,
      place,
      standing,
      loadBefore,
      loadAfter,
      stays:
        footWay(action.direction) === 'stays' &&
        samePlace(feet[foot], place) &&
        (loadAfter < 1 ||
          (turned === null && oldFootStays(figure.actions[index + 1], place, standing, foot, facing, body))),
      loadsFrom: Math.max(0.5 - HALF_DOUBLE_SUPPORT, touchesAt(index)),
      restBefore: rest,
      rest: mix(standing, place, loadAfter),
      facing: facing + (turned?.when === 'after' ? turned.by : 0),
      // A turn that goes on is half done at the full: it lies alike on both sides of it.
      facingWhenFull: facing + (turned?.when === 'after' ? turned.by * (goesOn ? 0.5 : 1) : 0),
      pivot: turned?.when === 'after' && turned.carries ? { by: turned.by, until: turned.until } : null,
    }
    const swing =
      turned?.when === 'during' && turned.carries
        ? goesRound(foot, feet[foot], place, standing, turned)
        : swingOf(
            index,
            floorAction,
            actions.at(-1),
            feet[foot],
            action,
            touchesAt(index),
            swings[foot].at(-1)?.to ?? 0,
            body,
          )
    if (swing !== null) swings[foot].push(swing)
    actions.push(floorAction)
    feet[foot] = place
    load[foot] = loadAfter
    load[standingFoot] = 1 - loadAfter
    rest = floorAction.rest
    if (turned?.when === 'after') {
      facing += turned.by
      turnOnSpot(turned.feet, turned)
    }
  }
  const last = collected(actions, body)
  if (last !== null) swings[last.foot].push(last)
  return { body, start, actions, swings, paths: pathsOf(start, actions, swings) }
}

/** Where the acting foot stands when its action is done, before any turn on it. */
function placeOf(
  action: Action,
  foot: Foot,
  now: Place,
  standing: Place,
  facing: number,
  turned: StandingTurn | null,
  body: Body,
): Place {
  if (footWay(action.direction) !== 'stays') return footPosition(action, foot, standing, facing, body, now)
  const during = turned?.when === 'during'
  if (during && turned.carries) return carriedRound(now, standing, turned.by)
  const hasTurned = during && turned.feet.includes(foot)
  return { ...now, heading: (action.turn !== 0 || during) && !hasTurned ? facing : now.heading }
}

/** The free foot goes round with the leg that turns while nothing else happens. */
const goesRound = (foot: Foot, start: Place, end: Place, centre: Vector, { by, from, until }: StandingTurn): Swing => ({
  foot,
  from,
  to: until,
  start,
  end,
  via: null,
  round: { centre, by, until, departs: until },
  lifts: true,
})
