import { modulo } from '../clock/modulo.ts'
import type { Counting, Dance } from '../dance/dance.ts'
import { countAt, musicPlace } from '../timing/counts.ts'
import { gridPoints } from '../timing/grid.ts'
import { isAfterSteps } from '../timing/isAfterSteps.ts'
import type { Schedule } from '../timing/schedule.ts'
import { isWholeBars } from '../timing/wholeBars.ts'
import { type ClickChoices, clickFor } from './clickFor.ts'
import type { Tick } from './tick.ts'
import { wordFor } from './wordFor.ts'

/** What of a lesson is heard. */
export type Sounded = {
  readonly schedule: Schedule
  readonly dance: Dance
  /** Where a round begins, in beats. */
  readonly range: { readonly from: number }
  /** Beats from the start of a round to the start of the next. */
  readonly round: number
  /** The actions that are danced, by index, both included. */
  readonly steps: { readonly first: number; readonly last: number }
}

/** What is to be heard of it. */
export type TickChoices = ClickChoices & {
  readonly counting: Counting
  /** Words: none, all of the counting, or only those on which a step is called. */
  readonly count: 'off' | 'counting' | 'steps'
  /** In half beats: also the ands on which no step is called; left out: yes. Where halves blur, nobody can say them. */
  readonly ands?: boolean
}

/** A step's call where it falls in the round, in beats from its start. */
type Call = { readonly at: number; readonly called: number }

const NEAR = 1e-9
const isNear = (a: number, b: number): boolean => Math.abs(a - b) < NEAR

/** A time held inside the round: what is called as the round ends is heard where the next begins. */
const intoRound = (time: number, { range, round }: Sounded): number => modulo(time - range.from, round)

/** The calls of the steps that are danced, earliest in the round first. */
const callsOf = (sounded: Sounded): Call[] =>
  sounded.schedule.actions
    .filter(({ index }) => index >= sounded.steps.first && index <= sounded.steps.last)
    .map(({ called }) => ({ at: intoRound(called, sounded), called }))
    .sort((a, b) => a.at - b.at)

/** Every beat and half of the music in the round, and every call, in beats from its start; each once. */
function timesOf({ schedule, range, round }: Sounded, calls: readonly Call[]): number[] {
  const start = range.from + schedule.firstCount - 1
  const halves = gridPoints(start, start + round - 2 * NEAR, 0.5).map((time) => Math.max(0, time - start))
  const all = [...halves, ...calls.map(({ at }) => at)].sort((a, b) => a - b)
  return all.filter((at, k) => k === 0 || !isNear(at, all[k - 1] as number))
}

type Moment = {
  /** In the figure, in beats. */
  readonly time: number
  readonly count: number
  readonly on: 'beat' | 'half' | 'between'
  readonly call: Call | null
}

function momentAt(sounded: Sounded, at: number, call: Call | null): Moment {
  const time = sounded.range.from + at
  const { count, part } = musicPlace(sounded.schedule, time)
  return { time, count, on: part < NEAR ? 'beat' : isNear(part, 0.5) ? 'half' : 'between', call }
}

/** The count as it stands on the screen; a call that is danced but falls past the steps is counted where it was made. */
function numberFor(sounded: Sounded, moment: Moment, { counting, count, ands = true }: TickChoices): string | null {
  const { time, on, call } = moment
  const past = isAfterSteps(sounded.schedule, sounded.steps, time)
  // In a round that is no whole bars the numbers would leap.
  const keepsBars = isWholeBars(sounded.round, sounded.schedule)
  if (call === null) {
    const counted = on === 'beat' || (on === 'half' && counting === 'half beats' && ands)
    if (count === 'steps' || !counted) return null
    if (past) return keepsBars ? wordFor(on === 'beat' ? String(moment.count) : '&') : null
  }
  const said = call !== null && past ? call.called : time
  return wordFor(countAt(sounded.schedule, sounded.dance, counting, said).text)
}

/**
 * Slow, quick, and, a on the calls; while the dancers wait for the next round its beats by number. The beats before the
 * figure are the end of the round before.
 */
function slowOrQuickFor(
  sounded: Sounded,
  { time, count: beat, on, call }: Moment,
  { counting, count }: TickChoices,
): string | null {
  const { schedule, dance, round } = sounded
  const textAt = (t: number) => wordFor(countAt(schedule, dance, counting, t).text)
  if (call !== null) return textAt(call.called)
  const standsIn = time < 0 ? time + round : time
  const waits = time < 0 ? standsIn >= schedule.length - NEAR : time >= schedule.length - NEAR
  if (count !== 'counting' || on !== 'beat') return null
  if (isAfterSteps(sounded.schedule, sounded.steps, time))
    return isWholeBars(round, schedule) ? wordFor(String(beat)) : null
  return waits ? textAt(time) : null
}

function wordOf(sounded: Sounded, moment: Moment, choices: TickChoices): string | null {
  if (choices.count === 'off') return null
  const { S, Q } = sounded.dance.signs
  const inSigns = choices.counting === 'slows and quicks' && S !== null && Q !== null
  return inSigns ? slowOrQuickFor(sounded, moment, choices) : numberFor(sounded, moment, choices)
}

/**
 * What is heard in one round, earliest first; no two at one time, and none without a click or a word. What is said is what
 * the screen shows at that time, where it counts at all.
 * @throws RangeError unless the round is longer than nothing
 */
export function ticksOf(sounded: Sounded, choices: TickChoices): Tick[] {
  if (!(sounded.round > 0)) throw new RangeError(`a round must be longer than 0 beats, got ${sounded.round}`)
  const calls = callsOf(sounded)
  return timesOf(sounded, calls).flatMap((at) => {
    const moment = momentAt(sounded, at, calls.find((call) => isNear(call.at, at)) ?? null)
    const tick: Tick = {
      at,
      click: clickFor(moment.count, moment.on === 'beat', choices),
      say: wordOf(sounded, moment, choices),
    }
    return tick.click === null && tick.say === null ? [] : [tick]
  })
}
