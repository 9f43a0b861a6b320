import { secondsPerBeat } from '../dance/secondsPerBeat.ts'
import type { Lesson } from '../session/lesson.ts'
import { type Seconds, seconds } from '../units.ts'
import { roundTime } from './roundTime.ts'

/** All that is heard is made at this rate, in hertz; a device with another one converts it. */
export const SAMPLE_RATE = 48_000

/**
 * What a beat lasts as it is played: as the tempo has it, but with a round of a whole number of samples, so that picture and
 * sound have one number and never drift apart (at most half a sample in a round).
 */
export const beatLasts = ({ dance, round }: Pick<Lesson, 'dance' | 'round'>, barsPerMinute: number): Seconds =>
  seconds(
    roundTime({ beats: round, secondsPerBeat: secondsPerBeat(dance, barsPerMinute), sampleRate: SAMPLE_RATE })
      .secondsPerBeat,
  )
