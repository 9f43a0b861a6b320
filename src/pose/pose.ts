import type { Foot } from '../figure/figure.ts'
import { otherFoot } from '../transfer/actingFeet.ts'
import type { Floor, FloorAction } from './floor.ts'
import type { Place } from './footPosition.ts'
import { carriedRound, HALF_DOUBLE_SUPPORT, HANDS_OVER, type Swing } from './swing.ts'
import { cornerVelocity, hermite, length, mix, scale, smooth, subtract, type Vector } from './vector.ts'

export type FootPose = Place & {
  /** Metres above the floor. */
  readonly height: number
  readonly onFloor: boolean
  /** Share of the weight on it, 0 to 1; the two feet's add up to 1. */
  readonly load: number
}

/** A dancer at one moment, on the floor: metres and radians. */
export type Pose = { readonly left: FootPose; readonly right: FootPose; readonly weight: Vector }

/** A swinging foot's highest point, metres: enough for a shadow to show (own judgement). */
const LIFT = 0.05
/** Within this of a full, metres, the weight's path is rounded. */
const ROUNDING = 0.03

/** The acting foot's share at the part `u` of its action. */
function loadOfActing({ loadBefore, loadAfter, stays, loadsFrom }: FloorAction, u: number): number {
  if (stays) return loadBefore + (loadAfter - loadBefore) * smooth(u)
  if (u < HANDS_OVER) return loadBefore * (1 - smooth(u / HANDS_OVER))
  const end = 0.5 + HALF_DOUBLE_SUPPORT
  const usual = 0.5 - HALF_DOUBLE_SUPPORT
  if (loadsFrom <= usual) return loadAfter * smooth((u - usual) / (end - usual))
  // Put down late: from its touch to the split half of it, or all of it from the split on.
  if (loadsFrom >= 0.5) return loadAfter * smooth((u - loadsFrom) / (end - loadsFrom))
  return u < 0.5
    ? 0.5 * loadAfter * smooth((u - loadsFrom) / (0.5 - loadsFrom))
    : loadAfter * (0.5 + 0.5 * smooth((u - 0.5) / (end - 0.5)))
}

function onSwing(swing: Swing, p: number): Place & { readonly height: number } {
  const { from, to, start, end, via, round, lifts } = swing
  const done = (p - from) / (to - from)
  const height = lifts ? LIFT * 4 * done * (1 - done) : 0
  if (round !== null) {
    // As one who turns sees it: it stands, then goes to its place; the turn carries all of it round.
    const { centre, by, until, departs } = round
    const before = carriedRound(end, centre, -by)
    const own = departs < to ? smooth((p - departs) / (to - departs)) : smooth(done)
    const seen = { ...mix(start, before, own), heading: start.heading + own * (before.heading - start.heading) }
    return { ...carriedRound(seen, centre, by * smooth((p - from) / (until - from))), height }
  }
  if (via === null) {
    const s = smooth(done)
    return { ...mix(start, end, s), heading: start.heading + s * (end.heading - start.heading), height }
  }
  const [first, second] = [via.at - from, to - via.at]
  const passing = cornerVelocity(
    scale(subtract(via.place, start), 1 / first),
    scale(subtract(end, via.place), 1 / second),
  )
  const turning = cornerVelocity(
    { x: (via.place.heading - start.heading) / first, y: 0 },
    { x: (end.heading - via.place.heading) / second, y: 0 },
  ).x
  if (p < via.at) {
    const x = (p - from) / first
    return {
      x: hermite(start.x, 0, via.place.x, passing.x * first, x),
      y: hermite(start.y, 0, via.place.y, passing.y * first, x),
      heading: hermite(start.heading, 0, via.place.heading, turning * first, x),
      height,
    }
  }
  const x = (p - via.at) / second
  return {
    x: hermite(via.place.x, passing.x * second, end.x, 0, x),
    y: hermite(via.place.y, passing.y * second, end.y, 0, x),
    heading: hermite(via.place.heading, turning * second, end.heading, 0, x),
    height,
  }
}

function footAt(floor: Floor, foot: Foot, p: number, load: number): FootPose {
  let place: Place = floor.start[foot]
  for (const swing of floor.swings[foot]) {
    if (p <= swing.from) break
    if (p < swing.to) return { ...onSwing(swing, p), onFloor: !swing.lifts, load }
    place = swing.end
  }
  return { x: place.x, y: place.y, heading: place.heading, height: 0, onFloor: true, load }
}

/** The weight's velocity (a unit of progress) when action `index` is done. */
function passingVelocity(floor: Floor, index: number): Vector {
  const before = floor.actions[index]
  const after = floor.actions[index + 1]
  const way = before ? subtract(before.rest, before.restBefore) : { x: 0, y: 0 }
  // Nothing before or after: it comes from, or goes to, rest anyway; straight on.
  if (before === undefined || after === undefined) return way
  return cornerVelocity(way, subtract(after.rest, after.restBefore))
}

function weightAt(floor: Floor, index: number, u: number): Vector {
  const { restBefore, rest } = floor.actions[index] as FloorAction
  const way = subtract(rest, restBefore)
  const rounded = Math.min(0.5, ROUNDING / length(way))
  if (index > 0 && u < rounded) {
    const leaving = scale(passingVelocity(floor, index - 1), rounded)
    const [end, velocity] = [mix(restBefore, rest, rounded), scale(way, rounded)]
    const x = u / rounded
    return {
      x: hermite(restBefore.x, leaving.x, end.x, velocity.x, x),
      y: hermite(restBefore.y, leaving.y, end.y, velocity.y, x),
    }
  }
  if (index < floor.actions.length - 1 && u > 1 - rounded) {
    const reaching = scale(passingVelocity(floor, index), rounded)
    const [start, velocity] = [mix(restBefore, rest, 1 - rounded), scale(way, rounded)]
    const x = (u - 1 + rounded) / rounded
    return {
      x: hermite(start.x, velocity.x, rest.x, reaching.x, x),
      y: hermite(start.y, velocity.y, rest.y, reaching.y, x),
    }
  }
  return mix(restBefore, rest, u)
}

/**
 * The dancer at progress `p` (actions done; held at 0 and at the end). Pure: the same answer in any order.
 * @param floor from `layOutFloor`, at least one action
 */
export function pose(floor: Floor, p: number): Pose {
  const n = floor.actions.length
  const done = Math.min(n, Math.max(0, p))
  const index = Math.min(n - 1, Math.floor(done))
  const u = done - index
  const action = floor.actions[index] as FloorAction
  const acting = loadOfActing(action, u)
  const loads = { [action.foot]: acting, [otherFoot(action.foot)]: 1 - acting } as Record<Foot, number>
  return {
    left: footAt(floor, 'left', done, loads.left),
    right: footAt(floor, 'right', done, loads.right),
    weight: weightAt(floor, index, u),
  }
}
