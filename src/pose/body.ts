import type { Direction } from '../figure/figure.ts'

/** The measures of a dancer that a picture needs, in metres. */
export type Body = {
  readonly footLength: number
  readonly footBreadth: number
  /** Between the middles of closed feet: they touch and do not overlap. */
  readonly stance: number
  /** How many times as large as the floor's scale the feet are drawn. */
  readonly times: number
}

/** Median man of ANSUR II (US Army 2012 survey, NATICK/TR-15/007): foot length 271 mm, breadth 102 mm. */
const FOOT_LENGTH = 0.271
const FOOT_BREADTH = 0.102
const BETWEEN_CLOSED_FEET = 0.01

/**
 * A dancer whose feet are drawn `times` as large as the floor's scale; the gap across grows with them.
 * @param times 1 to 1.5
 */
export function bodyWithFeet(times: number): Body {
  return {
    times,
    footLength: FOOT_LENGTH * times,
    footBreadth: FOOT_BREADTH * times,
    stance: (FOOT_BREADTH + BETWEEN_CLOSED_FEET) * times,
  }
}

/**
 * How far a step goes when a figure does not say, in metres from the standing foot along its direction.
 * Walking at one's own pace: 0.856 of the leg, 0.72 (women) to 0.77 m (men) (J. NeuroEng. Rehabil. 9:69, 2012, Table 1,
 * with ANSUR II trochanter heights); a practice walk is a little shorter. Side and the rest: own judgement;
 * a cross is long enough for the foot to pass clear of the other's heel or toes.
 */
export const USUAL_SIZE: Readonly<Record<Direction, number>> = {
  forward: 0.65,
  back: 0.65,
  side: 0.5,
  'slightly forward': 0.2,
  'slightly back': 0.2,
  'slightly side': 0.2,
  'diagonally forward': 0.6,
  'diagonally back': 0.6,
  'side and slightly forward': 0.5,
  'side and slightly back': 0.5,
  'forward and slightly side': 0.6,
  'back and slightly side': 0.6,
  close: 0,
  'close slightly forward': 0.08,
  'close slightly back': 0.08,
  'half close': 0,
  'cross in front': 0.3,
  'cross behind': 0.3,
  'lock in front': 0.15,
  'lock behind': 0.15,
  'in place': 0,
  tap: 0,
  brush: 0,
  point: 0.4,
  hold: 0,
}
