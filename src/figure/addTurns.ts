import { type Radians, radians } from '../units.ts'

/** What a description has room for under a fraction's line. */
const MOST_UNDER = 999
/** Of a turn: two fractions with such denominators lie further apart. */
const SAME = 1e-9

/**
 * Two turns one after the other, to the right positive. The sum of two fractions of a turn is the number that the reader
 * makes of the sum's own fraction, so that it can be written and compared; of other numbers, their plain sum.
 */
export function addTurns(first: Radians, second: Radians): Radians {
  if (first === 0 || second === 0) return first === 0 ? second : first
  const turns = (first + second) / (2 * Math.PI)
  for (let under = 1; under <= MOST_UNDER; under++) {
    const over = Math.round(turns * under)
    // Not −0, which JSON does not keep.
    if (Math.abs(over / under - turns) < SAME) return radians(over === 0 ? 0 : (over / under) * 2 * Math.PI)
  }
  return radians(first + second)
}
