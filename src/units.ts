/**
 * The units that the whole program counts in. A brand keeps a beat from being added to a metre by
 * mistake; it costs nothing at run time. Arithmetic gives a plain number: wrap the result again.
 */
declare const unit: unique symbol
type Branded<Name extends string> = number & { readonly [unit]: Name }

/** Time in beats. 0 is the count on which a figure's first action is called; any finite number. */
export type Beat = Branded<'Beat'>
/** A length of time in a figure, as a whole number of 1/48 beat: halves, quarters and thirds stay exact. */
export type BeatValue = Branded<'BeatValue'>
/** Time in seconds; only at the edge (clock, sound). Any finite number. */
export type Seconds = Branded<'Seconds'>
/** A part of a whole, 0 to 1. */
export type Share = Branded<'Share'>
/** A length or place on the floor, in metres. */
export type Metres = Branded<'Metres'>
/** An angle; clockwise (to the right, seen from above) is positive. Any finite number. */
export type Radians = Branded<'Radians'>

const PARTS_OF_A_BEAT = 48

function finite(value: number, name: string): number {
  if (!Number.isFinite(value)) throw new RangeError(`${name} must be a finite number, got ${value}`)
  return value
}

/** @throws RangeError unless finite */
export const beat = (value: number): Beat => finite(value, 'a beat') as Beat

/** @throws RangeError unless finite */
export const seconds = (value: number): Seconds => finite(value, 'seconds') as Seconds

/** @throws RangeError unless finite */
export const metres = (value: number): Metres => finite(value, 'metres') as Metres

/** @throws RangeError unless finite */
export const radians = (value: number): Radians => finite(value, 'radians') as Radians

/** @throws RangeError unless in [0, 1] */
export function share(value: number): Share {
  if (!(value >= 0 && value <= 1)) throw new RangeError(`a share must be in [0, 1], got ${value}`)
  return value as Share
}

/**
 * The exact beat value `numerator / denominator`.
 * @throws RangeError unless it is a whole number of 1/48 beat
 */
export function beatValue(numerator: number, denominator = 1): BeatValue {
  const parts = (numerator * PARTS_OF_A_BEAT) / denominator
  if (!Number.isInteger(parts)) {
    throw new RangeError(
      `a beat value must be a whole number of 1/${PARTS_OF_A_BEAT} beat, got ${numerator}/${denominator}`,
    )
  }
  return parts as BeatValue
}

/** An exact beat value as a time in beats. */
export const toBeat = (value: BeatValue): Beat => (value / PARTS_OF_A_BEAT) as Beat

/** The exact sum of beat values. */
export const sumOfValues = (values: readonly BeatValue[]): BeatValue =>
  values.reduce((sum, value) => sum + value, 0) as BeatValue
