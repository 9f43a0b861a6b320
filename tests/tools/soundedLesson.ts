import type { DanceId } from '../../src/dance/dance.ts'
import { dances } from '../../src/dance/dances.ts'
import { playedTempoRange } from '../../src/dance/playedTempoRange.ts'
import { type Lesson, lessonOf } from '../../src/session/lesson.ts'
import { newSession, type Session } from '../../src/session/session.ts'
import type { TickChoices } from '../../src/sound/ticksOf.ts'
import { beat } from '../../src/units.ts'
import { walks } from './exampleFigure.ts'

/** As many walks as there are beat values, as a lesson. @param firstCount where they begin, unless where the dance does */
export function walksLesson(
  dance: DanceId,
  values: readonly number[],
  change: (session: Session) => Session = (session) => session,
  firstCount: number = dances[dance].firstCount,
): Lesson {
  const figure = walks(dance, values)
  const begun = { ...figure, timings: [{ ...figure.timings[0]!, firstCount }] as const }
  return lessonOf(change(newSession(begun, beat(0))), begun)
}

/** Clicks on everything, and no words. */
export const ALL_CLICKS: TickChoices = { counting: 'half beats', count: 'off', bar: true, beats: true, halves: true }

/** Bars a minute over all that may be played, both ends included. */
export function playedTempi(dance: DanceId, parts: readonly number[]): number[] {
  const { from, to } = playedTempoRange(dances[dance])
  return parts.map((part) => from + part * (to - from))
}
