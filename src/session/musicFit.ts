import type { MusicFit } from '../clock/withMusic.ts'
import { isWholeBars } from '../timing/wholeBars.ts'
import type { Seconds } from '../units.ts'
import type { Lesson } from './lesson.ts'

/** Whether rounds are whole bars, so that a 1 stays a 1 in the music. Rounds of a few steps are whole beats only. */
export const keepsBars = ({ round, schedule, repeats }: Lesson): boolean => !repeats || isWholeBars(round, schedule)

/** How a lesson's rounds lie against music. @param one when a bar of it begins, in the driver's time */
export function musicFit(lesson: Lesson, one: Seconds): MusicFit {
  const { firstCount, beatsPerBar } = lesson.schedule
  return { one, at: 1 - firstCount, beatsPerBar, every: keepsBars(lesson) ? beatsPerBar : 1 }
}
