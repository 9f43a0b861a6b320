import type { Range } from '../clock/clock.ts'
import { calledAt, musicPlace } from '../timing/counts.ts'
import { gridPointBefore, nearestGridPoint } from '../timing/grid.ts'
import type { Schedule } from '../timing/schedule.ts'
import { type Beat, beat } from '../units.ts'
import type { Steps } from './session.ts'

/** A part of a figure that is danced over and over. */
export type LoopRange = {
  /** The part itself, in beats: on the grid, inside the figure. */
  readonly part: Range
  /** The actions that are danced, the lead-in's among them: what `onlySteps` needs. */
  readonly steps: Steps
  /** The first action that belongs to the part; the one before it leads in. */
  readonly first: number
  /** Beats from the start of a round to the part: the step before it, from where its weight leaves. */
  readonly leadIn: Beat
  /** The beats that are shown: a round from its start. */
  readonly range: Range
  /** The length of a round: whole beats; whole bars where the part is a bar or longer. */
  readonly round: Beat
}

/** The least part in beats, also on a quarter grid: less can neither be seen nor taken hold of. Own judgement. */
const SHORTEST_PART = 0.5
/** After less than a bar the dancers stand this long, in beats, so that one sees where they have come to. */
export const BREATH = 1
const ROUNDING = 1e-9

/** From first to last, on the grid and inside the figure, half a beat long at the least. */
function heldIn({ grid, length }: Schedule, one: number, other: number): Range {
  const shortest = Math.min(SHORTEST_PART, length)
  const [from, to] = [Math.min(one, other), Math.max(one, other)].map((t) => nearestGridPoint(t, grid)) as [Beat, Beat]
  const begins = Math.min(Math.max(0, from), gridPointBefore(length - shortest, grid))
  // A figure's end may lie off the grid (thirds of a beat).
  return { from: beat(begins), to: beat(Math.min(length, Math.max(to, begins + shortest))) }
}

/** From a bar's beginning, or the figure's, to the end of a bar: as much of a bar as the figure has. */
function isBar(schedule: Schedule, { from, to }: Range): boolean {
  const begins = (t: number): boolean => {
    const { count, part } = musicPlace(schedule, t)
    return count === 1 && part < ROUNDING
  }
  return begins(to) && (from === 0 || begins(from))
}

/** The actions called in a part; where none is, the one that goes on under it. */
function calledIn(schedule: Schedule, { from, to }: Range): Steps {
  const called = schedule.actions.filter((action) => action.called > from - ROUNDING && action.called < to - ROUNDING)
  const [first, last] = [called[0], called.at(-1)]
  if (first !== undefined && last !== undefined) return { first: first.index, last: last.index }
  const under = calledAt(schedule, from)?.index ?? 0
  return { first: under, last: under }
}

/** When somebody who dances only these actions as planned moves. */
function plannedMoves({ actions }: Schedule, { first, last }: Steps): Range {
  return { from: actions[first]?.moments.leaves ?? beat(0), to: actions[last]?.moments.full ?? beat(0) }
}

/**
 * A part of a figure as a loop. The actions called in it are danced, and the one before them, so that the first is entered
 * moving (before the figure's first there is none: it begins standing, as the figure does). A round lasts from where the first
 * of these leaves to where the last is full, and no less than from the first one's count to the part's end. A part of a bar or longer is heard as bars: its rounds are
 * whole bars, so that 1 stays 1 in the click, the count and the music; in a shorter one a whole bar would be mostly waiting,
 * so its rounds are whole beats and a beat's breath.
 * @param from, to beats, in either order; held in the figure, put on the grid, half a beat apart at the least
 * @param moves from the earliest leave to the latest full of all who dance these actions; left out: of the plan
 * @throws RangeError when a beat is not finite
 */
export function loopRange(
  schedule: Schedule,
  from: number,
  to: number,
  moves: (steps: Steps) => Range = (steps) => plannedMoves(schedule, steps),
): LoopRange {
  const { grid, beatsPerBar } = schedule
  const part = heldIn(schedule, beat(from), beat(to))
  const { first, last } = calledIn(schedule, part)
  const steps: Steps = { first: Math.max(0, first - 1), last }
  const moving = moves(steps)
  const start = gridPointBefore(Math.min(moving.from, part.from), grid)
  const end = Math.ceil(moving.to / grid - ROUNDING) * grid
  // Weight leaves before its count: as long from the first count danced to the part's end is long enough.
  const counted = part.to - (schedule.actions[steps.first]?.called ?? 0)
  const least = Math.max(end - start, counted)
  const wholeBars = part.to - part.from > beatsPerBar - ROUNDING || isBar(schedule, part)
  const round = wholeBars
    ? Math.ceil(least / beatsPerBar - ROUNDING) * beatsPerBar
    : Math.ceil(least - ROUNDING) + BREATH
  return {
    part,
    steps,
    first,
    leadIn: beat(part.from - start),
    range: { from: start, to: beat(start + round) },
    round: beat(round),
  }
}
