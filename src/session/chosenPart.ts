import type { Range } from '../clock/clock.ts'
import type { Lesson } from './lesson.ts'
import { loopRange } from './loopRange.ts'

/**
 * The part of the figure between two beats of what is shown, in either order: on the grid, as the session keeps it. In a
 * joined loop the figure is shown from a later round on; the part lies in the round in which it begins.
 */
export function chosenPart({ joined, once }: Lesson, from: number, to: number): Range {
  const { length, grid } = once.schedule
  const before = joined ? Math.floor((Math.min(from, to) + grid) / length) * length : 0
  return loopRange(once.schedule, from - before, to - before).part
}
