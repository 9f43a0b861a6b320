import type { Lesson } from './lesson.ts'

/**
 * A beat at which a still tells most: the second of the steps that are danced is done, and whoever is not in time is seen
 * not to be.
 */
export const tellingBeat = ({ schedule, range, steps }: Lesson): number =>
  schedule.actions[Math.min(steps.first + 1, steps.last)]?.moments.full ?? range.from
