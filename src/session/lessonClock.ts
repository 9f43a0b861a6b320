import { atTempo, type Clock, countedIn, playing, roundEnds, standingClock, within } from '../clock/clock.ts'
import { beforeStart, withMusic } from '../clock/withMusic.ts'
import type { CountInBars } from '../timing/countIn.ts'
import { type Beat, beat, type Seconds } from '../units.ts'
import { beginningOf, type Lesson } from './lesson.ts'
import { musicFit } from './musicFit.ts'

/** The beat at which the dancers are shown: while it is counted in, they stand as they begin. */
export const shownAt = ({ range }: Lesson, at: Beat): Beat => beat(Math.min(range.to, Math.max(range.from, at)))

/** A clock that stands at a lesson's start. @param lasts what a beat lasts */
export const lessonClock = (lesson: Lesson, lasts: Seconds, now: Seconds): Clock =>
  standingClock(lesson.range, lasts, lesson.repeats ? lesson.round : null, now)

/** A clock put right by the music that it keeps to. @param along when a bar of it begins; null: it keeps to none */
export const keptToMusic = (clock: Clock, lesson: Lesson, along: Seconds | null, when: Seconds): Clock =>
  along !== null && clock.playing ? withMusic(clock, musicFit(lesson, along), when) : clock

/** A joined loop is shown from a later round on, whole bars after the first: the beat goes with it. */
function roundsAhead(before: Lesson, after: Lesson): number {
  if (before.joined === after.joined) return 0
  return after.joined ? after.round : -before.round
}

/** The clock goes on while lesson and tempo become others, from `when` on. */
export function carriedOver(
  clock: Clock,
  { before, after }: { readonly before: Lesson; readonly after: Lesson },
  lasts: Seconds,
  when: Seconds,
): Clock {
  const ranged =
    before === after
      ? clock
      : within(clock, after.range, after.repeats ? after.round : null, when, roundsAhead(before, after))
  return lasts === ranged.secondsPerBeat ? ranged : atTempo(ranged, lasts, when)
}

/** When it can begin: `soon`, or a little later, so that its first sound is heard `whole`. */
export type Beginning = { readonly soon: Seconds; readonly whole: Seconds }

/**
 * The clock plays: from its start after counting in, with music as the music comes to its bar. From within the figure at
 * once: nobody stands still in the middle of a step.
 */
export function begun(
  clock: Clock,
  lesson: Lesson,
  countIn: CountInBars,
  along: Seconds | null,
  { soon, whole }: Beginning,
): Clock {
  const started = playing(clock, soon)
  if (started.anchor.beat !== lesson.range.from) return keptToMusic(started, lesson, along, soon)
  const begins = beginningOf(lesson, countIn)
  if (along === null) return countIn > 0 ? countedIn(clock, begins, whole) : playing(clock, whole)
  const least = Math.max(1, lesson.range.from - begins)
  return countedIn(clock, beforeStart(clock, musicFit(lesson, along), least, whole), whole)
}

/**
 * Counted in before the next round, and at another tempo from there on; until then all goes on as it did. The music goes on
 * over the seam: whole bars are counted from where the round ends, which is seldom on a 1.
 */
export function atNextRound(clock: Clock, lesson: Lesson, lasts: Seconds, countIn: CountInBars, now: Seconds): Clock {
  const { range, schedule } = lesson
  const ends = roundEnds(clock, now)
  const next = countedIn(clock, beat(range.from - countIn * schedule.beatsPerBar), ends, now)
  return { ...next, secondsPerBeat: lasts }
}
