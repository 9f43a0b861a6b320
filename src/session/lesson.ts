import type { Range } from '../clock/clock.ts'
import type { Dance } from '../dance/dance.ts'
import { dances } from '../dance/dances.ts'
import type { Figure } from '../figure/figure.ts'
import { type Schedule, schedule } from '../timing/schedule.ts'
import { perform, type Way } from '../transfer/perform.ts'
import type { Performance } from '../transfer/performance.ts'
import { type Beat, beat } from '../units.ts'
import type { Session } from './session.ts'

export type LessonPanel = { readonly id: string; readonly way: Way; readonly performance: Performance }

/** What follows from a session and its figure: everything but the beat and the drawing. */
export type Lesson = {
  readonly figure: Figure
  readonly dance: Dance
  readonly schedule: Schedule
  /** The plan itself: what every panel is held against. */
  readonly ideal: Performance
  /** As the session lists them; the session's `order` says where they stand. */
  readonly panels: readonly LessonPanel[]
  /** From the earliest leave to the latest full of any panel, rounded outwards to the grid; to the round's end in a loop. */
  readonly range: Range
  /** Length of a round in beats: whole bars. */
  readonly round: Beat
}

/** A moment that is on a grid point but for rounding stays on it. */
const ROUNDING = 1e-9

const earliestLeave = (panels: readonly LessonPanel[]): number =>
  Math.min(...panels.map((panel) => panel.performance.curve.from))
const latestFull = (panels: readonly LessonPanel[]): number =>
  Math.max(...panels.map((panel) => panel.performance.curve.to))

/** Whole bars, and one more if somebody is still moving when the next round's first action leaves. */
function roundOf({ length, beatsPerBar }: Schedule, panels: readonly LessonPanel[]): Beat {
  const bars = Math.ceil(length / beatsPerBar - ROUNDING)
  const nextLeaves = earliestLeave(panels) + bars * beatsPerBar
  const stillMoving = latestFull(panels) > nextLeaves + ROUNDING
  return beat((bars + (stillMoving ? 1 : 0)) * beatsPerBar)
}

/** @throws RangeError when the session's timing is not one of the figure's */
export function lessonOf(session: Session, figure: Figure): Lesson {
  const scheduled = schedule(figure, session.timing)
  const panels = session.panels.map(({ id, way }) => ({ id, way, performance: perform(scheduled, way) }))
  const from = beat(Math.floor(earliestLeave(panels) / scheduled.grid + ROUNDING) * scheduled.grid)
  const to = beat(Math.ceil(latestFull(panels) / scheduled.grid - ROUNDING) * scheduled.grid)
  const round = roundOf(scheduled, panels)
  return {
    figure,
    dance: dances[figure.dance],
    schedule: scheduled,
    ideal: perform(scheduled, { kind: 'in time' }),
    panels,
    range: { from, to: session.loop ? beat(Math.max(to, from + round)) : to },
    round,
  }
}
