import type { Moments, Schedule } from '../timing/schedule.ts'
import type { Beat, Seconds } from '../units.ts'
import { leastTime } from './plan.ts'
import { chain } from './propagate.ts'

/** One action begins late. */
export type Slip = {
  /** Which, by index. */
  readonly at: number
  /** Beats, 0 or more. */
  readonly by: Beat
}

/** What a slip does to the action that slipped and to those after it. */
export type KnockOn = {
  /** By how much each ends late, in beats, from the one that slipped on; it never grows. */
  readonly late: readonly number[]
  /** How many begin late, the one that slipped counted. The last of them makes up for it, if `healed`. */
  readonly steps: number
  /** The last action of the figure ends in time. */
  readonly healed: boolean
}

/** Less than this, in beats, is in time. */
const SAME = 1e-9
const SECONDS_A_MINUTE = 60

function momentsFrom({ actions }: Schedule, { at, by }: Slip): [Moments, ...Moments[]] {
  if (!(by >= 0)) throw new RangeError(`a slip must be 0 beats or more, got ${by}`)
  const [first, ...after] = at >= 0 ? actions.slice(at).map(({ moments }) => moments) : []
  if (first === undefined) throw new RangeError(`a slip must be at one of the ${actions.length} actions, got ${at}`)
  return [first, ...after]
}

/**
 * How far a slip is passed on: each action begins no sooner than planned nor than the one before has ended, and takes its
 * time or, to make up for it, the least that this dancer can. As `perform` dances it, without building curves.
 * @param shortest the shortest time in which the dancer carries the weight across, in beats, above 0; ∞: never quicker than
 * planned
 * @throws RangeError when the slip is at no action or below 0, or `shortest` is not above 0
 */
export function knockOn(schedule: Schedule, slip: Slip, shortest: number): KnockOn {
  if (!(shortest > 0)) throw new RangeError(`the shortest time must be above 0, got ${shortest}`)
  const moments = momentsFrom(schedule, slip)
  const least = moments.map((plan) => leastTime(plan, shortest))
  const due = moments.map(({ full }) => full)
  const ends = chain(due, least, moments[0].leaves + slip.by + (least[0] as number))
  const late = ends.map((end, k) => {
    const by = end - (due[k] as number)
    return by > SAME ? by : 0
  })
  const begunLate = moments.filter(({ leaves }, k) => (k === 0 ? slip.by : (ends[k - 1] as number) - leaves) > SAME)
  return { late, steps: begunLate.length, healed: late.at(-1) === 0 }
}

const beatsFor = (time: Seconds, beatsPerMinute: number): number => (time * beatsPerMinute) / SECONDS_A_MINUTE

/** A slip at one tempo. */
export type KnockOnAt = KnockOn & { readonly beatsPerMinute: number }

/**
 * The same slip at several tempi: a dancer's quickest is so many seconds, whatever the tempo.
 * @param tempi beats a minute, each above 0
 */
export const knockOnChart = (
  schedule: Schedule,
  slip: Slip,
  shortest: Seconds,
  tempi: readonly number[],
): readonly KnockOnAt[] =>
  tempi.map((beatsPerMinute) => ({
    beatsPerMinute,
    ...knockOn(schedule, slip, beatsFor(shortest, beatsPerMinute)),
  }))

/** Beats a minute, both ends included. */
export type Tempi = { readonly from: number; readonly to: number }

/** Up to which tempo something is made up for, and which action, by index, is the first to end in time at the highest. */
export type Turning =
  | { readonly made: 'at every tempo'; readonly by: number }
  | { readonly made: 'up to'; readonly beatsPerMinute: number; readonly by: number }
  | { readonly made: 'at no tempo' }

export type TurningTempo = {
  /** The action that slipped ends in time itself. */
  readonly itself: Turning
  /** Some action of the figure ends in time, and so do all after it. */
  readonly inFigure: Turning
  /** The tempi that were asked for: "every" and "no" tempo are meant of these. */
  readonly tempi: Tempi
}

/** The largest m for which Σ min(m, time) ≤ room; ∞ when all times together fit. Those shorter than m take their own. */
function largestFitting(times: readonly number[], room: number): number {
  const rising = [...times].sort((a, b) => a - b)
  let left = room
  for (const [k, time] of rising.entries()) {
    const each = left / (rising.length - k)
    if (each < time - SAME) return each
    left -= time
  }
  return Number.POSITIVE_INFINITY
}

/**
 * The highest tempo at which a slip is made up for. In closed form: planned actions never overlap, so no slack is negative
 * and the lateness of action n is max(0, δ − sum of slacks). It is 0 when all from the slip to n, at their shortest, fit
 * between the late start and the planned end: Σ min(m, b − a) ≤ b_n − a_k − δ. The sum grows with m, and m with the tempo.
 * @param tempi from above 0, not above to
 * @throws RangeError when the slip is at no action or below 0, or the tempi are out of order
 */
export function turningTempo(schedule: Schedule, slip: Slip, shortest: Seconds, tempi: Tempi): TurningTempo {
  const { from, to } = tempi
  if (!(from > 0 && from <= to)) throw new RangeError(`tempi must rise from above 0, got ${from} to ${to}`)
  const moments = momentsFrom(schedule, slip)
  const start = moments[0].leaves + slip.by
  const turning = (within: readonly Moments[]): Turning => {
    const room = (within.at(-1) as Moments).full - start
    const most = largestFitting(
      within.map(({ leaves, full }) => full - leaves),
      room,
    )
    const highest = (most * SECONDS_A_MINUTE) / shortest
    if (highest < from) return { made: 'at no tempo' }
    const { late } = knockOn(schedule, slip, beatsFor(shortest, Math.min(highest, to)))
    const by = slip.at + late.indexOf(0)
    return highest >= to ? { made: 'at every tempo', by } : { made: 'up to', beatsPerMinute: highest, by }
  }
  return { itself: turning(moments.slice(0, 1)), inFigure: turning(moments), tempi }
}
