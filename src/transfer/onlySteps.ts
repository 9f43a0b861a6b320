import { curveThrough } from './curve.ts'
import type { Performance } from './performance.ts'

/**
 * The same dancing, but only of neighbouring actions: the dancer stands before the first and after the last of them.
 * Times and carried weight stay those of the whole figure, so that actions keep their indices.
 * @param first, last indices of actions, both included
 * @throws RangeError when the figure has no such actions
 */
export function onlySteps(performance: Performance, first: number, last: number): Performance {
  const { knots } = performance.curve
  const begin = knots.findLastIndex(({ p }) => p === first)
  const end = knots.findIndex(({ p }) => p === last + 1)
  if (begin < 0 || end <= begin) throw new RangeError(`there are no actions ${first} to ${last}`)
  return { ...performance, curve: curveThrough(knots.slice(begin, end + 1)) }
}
