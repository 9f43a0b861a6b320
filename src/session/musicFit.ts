import type { MusicFit } from '../clock/withMusic.ts'
import type { Seconds } from '../units.ts'
import type { Lesson } from './lesson.ts'

const ROUNDING = 1e-9

/** Whether rounds are whole bars, so that a 1 stays a 1 in the music. Rounds of a few steps are whole beats only. */
export const keepsBars = ({ round, schedule: { beatsPerBar }, repeats }: Lesson): boolean =>
  !repeats || Math.abs(round / beatsPerBar - Math.round(round / beatsPerBar)) < ROUNDING

/** How a lesson's rounds lie against music. @param one when a bar of it begins, in the driver's time */
export function musicFit(lesson: Lesson, one: Seconds): MusicFit {
  const { firstCount, beatsPerBar } = lesson.schedule
  return { one, at: 1 - firstCount, beatsPerBar, every: keepsBars(lesson) ? beatsPerBar : 1 }
}
