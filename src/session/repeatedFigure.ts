import type { Figure, Timing } from '../figure/figure.ts'

/** The same, so many times over. */
const over = <One>(list: readonly One[], times: number): One[] => Array.from({ length: times }).flatMap(() => [...list])

/**
 * A figure danced several times in a row without a stop, in one of its timings. Whichever foot is free begins it again, so that
 * feet are swapped in every second round of a figure with an odd number of changes. What goes on above the feet is left out:
 * it was written for one round.
 * @param timing index into the figure's timings
 * @param times a whole number of 1 or more
 * @throws RangeError when there is no such timing
 */
export function repeatedFigure(figure: Figure, timing: number, times: number): Figure {
  const chosen = figure.timings[timing]
  if (chosen === undefined) throw new RangeError(`timing must be in [0, ${figure.timings.length}), got ${timing}`)
  const repeated: Timing = {
    ...chosen,
    text: over([chosen.text], times).join(' '),
    signs: over(chosen.signs, times),
    values: over(chosen.values, times),
  }
  return {
    ...figure,
    ends: null,
    timings: [repeated],
    actions: over(figure.actions, times),
    tracks: { bodyTurn: [], rise: [], sway: [] },
  }
}
