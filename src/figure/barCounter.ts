import type { Dance } from '../dance/dance.ts'
import { beatValue } from '../units.ts'

const BEAT: number = beatValue(1)

/** As far as counts go on beyond the bar: the longest figure so counted, the Sixteen (Dancing Tid-bits no. 43). */
export const LAST_COUNT_ON = 16

/**
 * Whether a dance's figures are counted on beyond the bar: the paso doble's, 1 to 8 or to 16 (the IDTA revision cards;
 * Dancing Tid-bits no. 43). Elsewhere a number beyond the bar is more likely the number of a step.
 */
export const countsOnBeyondBar = (dance: Dance): boolean => dance.id === 'paso doble'

/** Follows the counts of a timing through its bars. */
export type BarCounter = {
  readonly countsOn: boolean
  /** The highest count of the dance's figures. */
  readonly last: number
  /** Whether a count comes next, as a beat that the step before lasts over; true when nobody knows. */
  follows(count: number): boolean
  /**
   * A beat is named by its count.
   * @param held whether the step before lasts over it: no bar's number is meant then
   * @returns what belonged here when it is something else (a count, or &), else null
   */
  name(count: number, held: boolean): string | null
  /** A slow or quick goes by, with no count named. @param value in 1/48 of a counted beat; null when nobody knows */
  pass(value: number | null): void
  /** The count of the bar on which the first letter or count fell, 1-based. */
  firstCount(): number
}

/**
 * Counts begin again with every bar. On the first beat of a bar its number may stand in place of 1 (123 223 323: the
 * IDTA revision cards), and where a dance counts on, the next number.
 * @param danced beats danced for each beat that is counted: 2 where a tango is counted as it is written, in 2/4
 */
export function barCounter(dance: Dance, danced = 1): BarCounter {
  const bar = dance.beatsPerBar / danced
  const countsOn = countsOnBeyondBar(dance)
  const last = countsOn ? LAST_COUNT_ON : bar
  /** In 1/48 beat from count 1 of the first bar; null before the first sign. */
  let position: number | null = null
  let first = Math.floor((dance.firstCount - 1) / danced) + 1
  /** What the numbers of this bar are ahead of the counts of the bar. */
  let ahead = 0

  const begin = (count: number): string | null => {
    const known = count >= 1 && count <= last
    if (known) first = ((count - 1) % bar) + 1
    ahead = known ? count - first : 0
    // Any number can follow one that is no count.
    position = known ? first * BEAT : null
    return known ? null : String(first)
  }

  /** What the next count is. */
  const nextAt = (from: number) => {
    const beats = Math.ceil(from / BEAT)
    const inBar = beats % bar
    const next = countsOn && ahead + bar < LAST_COUNT_ON ? ahead + bar + 1 : 1
    return { beats, inBar, expected: inBar > 0 ? ahead + inBar + 1 : next }
  }

  const goOn = (from: number, count: number, held: boolean): string | null => {
    const { beats, inBar, expected } = nextAt(from)
    const barNumber = Math.floor(beats / bar) + 1
    const fits = (allowed: boolean, isAhead: number): boolean => {
      if (allowed) ahead = isAhead
      return allowed
    }
    const right =
      from % BEAT === 0 &&
      (inBar > 0
        ? count === expected
        : fits(count === 1, 0) ||
          fits(count === expected, count - 1) ||
          fits(!countsOn && !held && barNumber > 1 && count === barNumber, 0))
    // After a jump, go on from the number that was written, so that one slip is one problem.
    const resumed = right || count < 1 || count > bar ? inBar : count - 1
    position = (beats - inBar + resumed + 1) * BEAT
    if (right) return null
    return from % BEAT === 0 ? String(expected) : '&'
  }

  return {
    countsOn,
    last,
    follows: (count) => {
      if (position === null) return true
      const { inBar, expected } = nextAt(position)
      return position % BEAT === 0 && (count === expected || (inBar === 0 && count === 1))
    },
    name: (count, held) => (position === null ? begin(count) : goOn(position, count, held)),
    pass: (value) => {
      position = value === null ? null : (position ?? (first - 1) * BEAT) + value
    },
    firstCount: () => first,
  }
}
