import type { Range } from '../clock/clock.ts'
import type { Dance } from '../dance/dance.ts'
import { dances } from '../dance/dances.ts'
import { secondsPerBeat } from '../dance/secondsPerBeat.ts'
import type { Figure } from '../figure/figure.ts'
import { naturalOpposite } from '../figure/naturalOpposite.ts'
import type { Seen } from '../scene/view.ts'
import { type CountInBars, countInFrom } from '../timing/countIn.ts'
import { type Schedule, schedule } from '../timing/schedule.ts'
import type { Comparison } from '../transfer/comparison.ts'
import { dependsOnTempo } from '../transfer/faults.ts'
import { onlySteps } from '../transfer/onlySteps.ts'
import { perform } from '../transfer/perform.ts'
import type { Performance } from '../transfer/performance.ts'
import type { Way } from '../transfer/way.ts'
import { type Beat, beat } from '../units.ts'
import { joinedSchedule } from './joinedSchedule.ts'
import { BREATH, loopRange } from './loopRange.ts'
import type { Session, Steps } from './session.ts'

export type LessonPanel = { readonly id: string; readonly way: Way; readonly performance: Performance }

/** What follows from a session and its figure: everything but the beat and the drawing. */
export type Lesson = {
  /** The figure as it is danced: its own part, or the partner's. */
  readonly figure: Figure
  /** The figure as it was written. */
  readonly written: Figure
  readonly dance: Dance
  readonly schedule: Schedule
  /** The plan itself: what every panel is held against. */
  readonly ideal: Performance
  /** As the session lists them; the session's `order` says which are shown and where they stand. */
  readonly panels: readonly LessonPanel[]
  /** The shortest time in which the dancer carries the weight across, in beats at the playing tempo. */
  readonly shortest: number
  /** The actions that are danced: all, or those that are practised by themselves. */
  readonly steps: Steps
  /** It follows itself without a stop: `schedule` holds several rounds then, of which those in `steps` are shown. */
  readonly joined: boolean
  /** The same, danced once: what is said of it as a whole. Itself unless it is joined. */
  readonly once: Comparison
  /** The part that is practised over and over and its first action, the one that leads into it left out; null: no part. */
  readonly part: (Range & { readonly first: number }) | null
  readonly seen: Seen
  /** The dancers face up at the beginning of this action, by index. */
  readonly facesUpBefore: number
  /** From the earliest leave to the latest full of any panel on the screen, rounded outwards to the grid; to the round's end in a loop. */
  readonly range: Range
  /** Length of a round in beats: whole bars; of a few steps: whole beats. */
  readonly round: Beat
  /** Over and over; otherwise it stops at the end of the range. */
  readonly repeats: boolean
}

/** A moment that is on a grid point but for rounding stays on it. */
const ROUNDING = 1e-9

/** From the earliest leave to the latest full. */
function danced(panels: readonly Pick<LessonPanel, 'performance'>[]): Range {
  const curves = panels.map(({ performance }) => performance.curve)
  return {
    from: beat(Math.min(...curves.map(({ from }) => from))),
    to: beat(Math.max(...curves.map(({ to }) => to))),
  }
}

/** Whole bars, and one more if somebody is still moving when the next round's first action leaves. */
function roundOf({ length, beatsPerBar }: Schedule, { from, to }: Range): Beat {
  const bars = Math.ceil(length / beatsPerBar - ROUNDING)
  const stillMoving = to > from + bars * beatsPerBar + ROUNDING
  return beat((bars + (stillMoving ? 1 : 0)) * beatsPerBar)
}

/** All of it over and over, and no part of it. */
const isJoined = ({ joined, loop, steps, part }: Session): boolean => joined && loop && steps === null && part === null

/** Held inside the figure, which may be another one than the steps were chosen in. */
function stepsOf({ steps }: Session, { actions }: Figure): Steps | null {
  if (steps === null) return null
  const last = Math.min(steps.last, actions.length - 1)
  return { first: Math.max(0, Math.min(steps.first, last)), last }
}

/** What of a session a lesson follows from, besides its figure. */
const DECIDES = [
  'timing',
  'panels',
  'order',
  'loop',
  'steps',
  'part',
  'joined',
  'seen',
  'opposite',
  'shortest',
] as const

/** Whether two sessions with one figure have the same lesson. */
export const leadsToSame = (a: Session, b: Session): boolean =>
  DECIDES.every((key) => a[key] === b[key]) &&
  (a.barsPerMinute === b.barsPerMinute || !a.panels.some(({ way }) => dependsOnTempo(way)))

/** A round and the beats that are shown of it. */
const rangeOf = (from: Beat, to: Beat, round: Beat): { readonly range: Range; readonly round: Beat } => ({
  range: { from, to: beat(Math.max(to, from + round)) },
  round,
})

/** @throws RangeError when the session's timing is not one of the figure's */
export function lessonOf(session: Session, written: Figure): Lesson {
  const figure = session.opposite ? naturalOpposite(written) : written
  const joined = isJoined(session) ? joinedSchedule(figure, session.timing) : null
  const scheduled = joined?.schedule ?? schedule(figure, session.timing)
  const shortest = session.shortest / secondsPerBeat(dances[figure.dance], session.barsPerMinute)
  const loop = session.part === null ? null : loopRange(scheduled, session.part.from, session.part.to)
  const chosen = loop?.steps ?? stepsOf(session, figure)
  const steps = joined?.steps ?? chosen ?? { first: 0, last: figure.actions.length - 1 }
  const performed = (way: Way, quickest: number = shortest): Performance => {
    const whole = perform(scheduled, joined?.wayIn(way) ?? way, quickest)
    return chosen === null ? whole : onlySteps(whole, steps.first, steps.last)
  }
  const panels = session.panels.map(({ id, way }) => ({ id, way, performance: performed(way) }))
  // Of whoever never makes up for anything: the round does not change while the tempo is dragged.
  const slowest = session.panels.map((panel, index) =>
    dependsOnTempo(panel.way) ? { performance: performed(panel.way, Number.POSITIVE_INFINITY) } : panels[index],
  )
  const moving = danced(session.order.flatMap((index) => slowest[index] ?? []))
  const from = beat(Math.floor(moving.from / scheduled.grid + ROUNDING) * scheduled.grid)
  const to = beat(Math.ceil(moving.to / scheduled.grid - ROUNDING) * scheduled.grid)
  const { range, round } =
    joined !== null
      ? rangeOf(joined.from, joined.from, joined.round)
      : loop === null
        ? rangeOf(
            from,
            to,
            chosen === null ? roundOf(scheduled, moving) : beat(Math.ceil(to - from - ROUNDING) + BREATH),
          )
        : loopRange(scheduled, loop.part.from, loop.part.to, () => moving)
  const repeats = session.loop || chosen !== null
  const whole = { dance: dances[figure.dance], schedule: scheduled, ideal: performed({ kind: 'in time' }), panels }
  return {
    figure,
    written,
    ...whole,
    once: joined === null ? whole : lessonOf({ ...session, joined: false }, written).once,
    shortest,
    steps,
    joined: joined !== null,
    facesUpBefore: joined?.steps.first ?? 0,
    part: loop === null ? null : { ...loop.part, first: loop.first },
    seen: session.seen,
    range: repeats ? range : { from, to },
    round,
    repeats,
  }
}

/** Where it begins when so many bars are counted in; at the range's start when none are. */
export const beginningOf = ({ range, schedule: scheduled, steps }: Lesson, bars: CountInBars): Beat =>
  bars === 0 ? range.from : countInFrom(scheduled, steps.first, bars)
