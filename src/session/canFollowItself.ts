import { dances } from '../dance/dances.ts'
import type { Action, Figure } from '../figure/figure.ts'
import { bodyWithFeet } from '../pose/body.ts'
import { type Floor, layOutFloor } from '../pose/floor.ts'
import type { Place } from '../pose/footPosition.ts'
import { subtract, turn, type Vector } from '../pose/vector.ts'
import { type ScheduledAction, schedule } from '../timing/schedule.ts'
import { type Beat, beat, beatValue, type Radians, radians, sumOfValues } from '../units.ts'
import { repeatedFigure } from './repeatedFigure.ts'

/**
 * Why a figure cannot follow itself without a stop.
 * weight on both feet: none is free at its end; another foot: an odd number of changes, so the other foot is free, and what
 * it does (a turn, promenade, a side that leads) cannot be danced the other way round; partners elsewhere: it ends in another
 * position with the partner than it begins in; another way: it is tied to the room and ends facing elsewhere; feet elsewhere:
 * its first actions go by where the feet stand, and they stand elsewhere; still moving: the last action is done too late for
 * the first to be in time.
 */
export type WhyNot =
  | 'weight on both feet'
  | 'another foot'
  | 'partners elsewhere'
  | 'another way'
  | 'feet elsewhere'
  | 'still moving'

export type Following =
  | {
      readonly can: true
      /** Every second round begins with the other foot, and is the first one as in a mirror. */
      readonly swapped: boolean
      /** How long a round lasts: the figure itself, with nothing after it. */
      readonly round: Beat
      /** Rounds until feet and bars are as at first: 1 where nothing changes. */
      readonly rounds: number
      /** How far a round turns the dancer; to the right is positive. */
      readonly turned: Radians
    }
  | { readonly can: false; readonly why: WhyNot }

/** Feet that stand so near to where they stood in the round before, in metres, stand there: a foot's breadth. Own judgement. */
const CLOSE_ENOUGH = 0.1
const SAME_HEADING = 1e-6

/** What can be danced as in a mirror without becoming something else. */
const hasNoSide = ({ turn: turned, footTurn, position, leading }: Action): boolean =>
  turned === 0 && footTurn === null && (position === null || position === 'closed') && leading === null

/** How open the couple is. Outside partner is a way to step, and the hold stays closed. */
const openness = ({ position }: Action): string =>
  position === null || position === 'outside partner' ? 'closed' : position

const wholeTurns = (angle: number): boolean => Math.abs(Math.sin(angle / 2)) < SAME_HEADING

/** Where a foot is, seen by a dancer who stands at `from`; in a mirror where feet are swapped. */
function seenFrom(place: Place, from: Vector, facing: number, mirrored: boolean): Place {
  const { x, y } = turn(subtract(place, from), -facing)
  const side = mirrored ? -1 : 1
  return { x: side * x, y, heading: side * (place.heading - facing) }
}

const isThere = (a: Place, b: Place): boolean =>
  Math.hypot(a.x - b.x, a.y - b.y) <= CLOSE_ENOUGH && wholeTurns(a.heading - b.heading)

/** Whether action `index` of the second round puts the feet where it did in the first, seen from the foot that acts. */
function isSamePlace({ actions }: Floor, index: number, count: number, swapped: boolean): boolean {
  const [one, other] = [actions[index], actions[index + count]]
  if (one === undefined || other === undefined) return false
  const first = seenFrom(one.standing, one.place, one.facing, false)
  const second = seenFrom(other.standing, other.place, other.facing, swapped)
  return isThere(first, second)
}

/** The first action again, a round later: done when it should be, and what a teacher has set is kept. */
function isInTime(first: ScheduledAction | undefined, again: ScheduledAction | undefined, round: number): boolean {
  if (first === undefined || again === undefined) return false
  const { moments: own } = first.action
  const kept = (['leaves', 'split', 'full'] as const).filter((key) => key === 'full' || own[key] !== undefined)
  return kept.every((key) => Math.abs(again.moments[key] - round - first.moments[key]) < 1e-9)
}

const greatestCommon = (a: number, b: number): number => (b === 0 ? a : greatestCommon(b, a % b))

/** Rounds until the figure begins on the same count of the bar again. */
function roundsToBar({ dance, timings }: Figure, timing: number): number {
  const length = sumOfValues(timings[timing]?.values ?? [])
  const bar = beatValue(dances[dance].beatsPerBar)
  return bar / greatestCommon(length, bar)
}

/**
 * Whether a figure can be danced over and over without a stop: one joined loop.
 * @param timing index into the figure's timings
 * @throws RangeError when there is no such timing
 */
export function canFollowItself(figure: Figure, timing = 0): Following {
  const { actions } = figure
  const count = actions.length
  const twice = repeatedFigure(figure, timing, 2)
  const floor = layOutFloor(
    twice,
    twice.actions.map(({ weight }) => weight),
    twice.actions.map(() => null),
    bodyWithFeet(1),
  )
  const no = (why: WhyNot): Following => ({ can: false, why })
  const [begins, ends] = [actions[0], actions[count - 1]]
  const [last, again] = [floor.actions[count - 1], floor.actions[count]]
  if (begins === undefined || ends === undefined || last === undefined || again === undefined) {
    throw new RangeError('a figure has at least one action')
  }
  if (last.loadAfter > 0 && last.loadAfter < 1) return no('weight on both feet')

  const swapped = again.foot !== figure.firstFoot
  if (swapped && !actions.every(hasNoSide)) return no('another foot')
  if (openness(begins) !== openness(ends)) return no('partners elsewhere')
  const turned = last.facing - floor.start.left.heading
  if (figure.starts !== null && !wholeTurns(turned)) return no('another way')
  if (!actions.every((_, index) => isSamePlace(floor, index, count, swapped))) return no('feet elsewhere')

  const once = schedule(figure, timing)
  if (!isInTime(once.actions[0], schedule(twice).actions[count], once.length)) return no('still moving')
  const feet = swapped ? 2 : 1
  const bars = roundsToBar(figure, timing)
  return {
    can: true,
    swapped,
    round: once.length,
    rounds: (feet * bars) / greatestCommon(feet, bars),
    turned: radians(turned),
  }
}

/** How long the whole joined loop lasts: until feet and bars are as at first. */
export const joinedBeats = ({ round, rounds }: Extract<Following, { can: true }>): Beat => beat(round * rounds)
