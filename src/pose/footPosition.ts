import type { Action, Direction, Foot, Placed } from '../figure/figure.ts'
import { type Body, USUAL_SIZE } from './body.ts'
import { add, mix, subtract, turn, type Vector } from './vector.ts'

/** Where a foot stands: its middle, and the heading of its toes (0 along y, to the right positive; whole turns are kept). */
export type Place = Vector & { readonly heading: number }

/**
 * What a direction does with the foot.
 * travels: it passes beside the other foot on its way; comes: one unbroken path to a place near the other foot;
 * stays: it does not leave its place.
 */
export type FootWay = 'travels' | 'comes' | 'stays'

const DEGREES = Math.PI / 180

type Position = {
  readonly way: FootWay
  /** From straight ahead towards the foot's own side, degrees; the size is taken along it. null: beside the other foot. */
  readonly bearing: number | null
  /** The feet have changed sides. */
  readonly crossed?: true
}

/**
 * The foot positions of the trade, as they are at the end of a step (common practice; the angles of "slightly" are own judgement).
 */
const POSITIONS: Readonly<Record<Direction, Position>> = {
  forward: { way: 'travels', bearing: 0 },
  'forward and slightly side': { way: 'travels', bearing: 20 },
  'diagonally forward': { way: 'travels', bearing: 45 },
  'side and slightly forward': { way: 'travels', bearing: 70 },
  side: { way: 'travels', bearing: 90 },
  'slightly forward': { way: 'travels', bearing: 0 },
  'slightly back': { way: 'travels', bearing: 180 },
  'slightly side': { way: 'travels', bearing: 90 },
  'side and slightly back': { way: 'travels', bearing: 110 },
  'diagonally back': { way: 'travels', bearing: 135 },
  'back and slightly side': { way: 'travels', bearing: 160 },
  back: { way: 'travels', bearing: 180 },
  point: { way: 'travels', bearing: 90 },
  close: { way: 'comes', bearing: null },
  'close slightly forward': { way: 'comes', bearing: 0 },
  'close slightly back': { way: 'comes', bearing: 180 },
  'half close': { way: 'comes', bearing: null },
  tap: { way: 'comes', bearing: null },
  brush: { way: 'comes', bearing: null },
  'cross in front': { way: 'comes', bearing: 0, crossed: true },
  'cross behind': { way: 'comes', bearing: 180, crossed: true },
  'lock in front': { way: 'comes', bearing: 0, crossed: true },
  'lock behind': { way: 'comes', bearing: 180, crossed: true },
  'in place': { way: 'stays', bearing: null },
  hold: { way: 'stays', bearing: null },
}

export const footWay = (direction: Direction): FootWay => POSITIONS[direction].way

/** +1 for the right foot, −1 for the left: the side that is its own. */
export const ownSide = (foot: Foot): 1 | -1 => (foot === 'right' ? 1 : -1)

/** Closed to the other foot, which stands at `standing`, by a dancer who faces `facing`. */
export function placeBeside(foot: Foot, standing: Vector, facing: number, body: Body): Place {
  return { ...add(standing, turn({ x: ownSide(foot) * body.stance, y: 0 }, facing)), heading: facing }
}

/** How far across the line of the standing foot a step lies, in stances to its own side (own judgement; trade: "on or across"). */
const ACROSS: Readonly<Record<Placed, number>> = { 'in CBMP': 0, across: -0.5 }
/** A foot stands in line with the other only when there is room for both, in foot lengths between their middles. */
const ROOM_IN_LINE = 1.05

/** What of an action decides where its foot comes to stand. */
export type FootAction = Pick<Action, 'direction' | 'size' | 'placed' | 'position'>

/** A step outside the partner is taken in CBMP unless it is said to be placed otherwise (common practice). */
const placedOf = ({ placed, position }: FootAction): Placed | null =>
  placed ?? (position === 'outside partner' ? 'in CBMP' : null)

/**
 * In promenade the couple goes on between their two facings, an eighth of a turn to the open side of each: the step to
 * the side is taken there, and so is the step forward and across (the charts: pointing diagonally, along the line of dance).
 */
function promenadeBearing({ direction, placed, position }: FootAction): number | null {
  if (position !== 'promenade') return null
  if (direction === 'side') return 45
  return direction === 'forward' && placed === 'across' ? -45 : null
}

/** Half way from where the foot is to its place beside the other one, never nearer to it than closed (IDTA cards: half closed). */
function halfClosed(foot: Foot, standing: Vector, from: Vector, facing: number, body: Body): Place {
  const beside = placeBeside(foot, standing, facing, body)
  const half = turn(subtract(mix(from, beside, 0.5), standing), -facing)
  const across = ownSide(foot) * Math.max(body.stance, ownSide(foot) * half.x)
  return { ...add(standing, turn({ x: across, y: half.y }, facing)), heading: facing }
}

/**
 * Where `foot` comes to stand by an action that does not stay.
 * @param standing the other foot's place
 * @param facing the dancer's facing after the turn made with the action, radians
 * @param from where the foot is now
 */
export function footPosition(
  action: FootAction,
  foot: Foot,
  standing: Vector,
  facing: number,
  body: Body,
  from: Vector,
): Place {
  const { bearing, crossed } = POSITIONS[action.direction]
  const side = ownSide(foot)
  if (action.direction === 'half close') {
    if (action.size === null) return halfClosed(foot, standing, from, facing, body)
    const across = side * Math.max(body.stance, action.size)
    return { ...add(standing, turn({ x: across, y: 0 }, facing)), heading: facing }
  }
  if (bearing === null) return placeBeside(foot, standing, facing, body)
  const promenade = promenadeBearing(action)
  if (promenade !== null) {
    const length = action.size ?? USUAL_SIZE[action.direction]
    const along = turn({ x: 0, y: length }, side * promenade * DEGREES)
    return { ...add(standing, turn(along, facing)), heading: facing }
  }
  const size = action.size ?? USUAL_SIZE[action.direction]
  const along = { x: side * Math.sin(bearing * DEGREES) * size, y: Math.cos(bearing * DEGREES) * size }
  const placed = placedOf(action)
  const inLine = placed !== null && Math.abs(along.y) >= ROOM_IN_LINE * body.footLength
  // The feet keep their own tracks: a step ahead stays a stance apart, a step aside is never less than one.
  const across = inLine
    ? side * ACROSS[placed] * body.stance
    : crossed
      ? -side * body.stance
      : side * Math.max(body.stance, Math.abs(along.x))
  return { ...add(standing, turn({ x: across, y: along.y }, facing)), heading: facing }
}
