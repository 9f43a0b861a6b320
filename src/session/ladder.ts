import type { Dance } from '../dance/dance.ts'
import { defaultTempo } from '../dance/defaultTempo.ts'
import { playedTempoRange } from '../dance/playedTempoRange.ts'
import { secondsPerBeat } from '../dance/secondsPerBeat.ts'
import type { Schedule } from '../timing/schedule.ts'
import { shortestTimes } from '../transfer/shortestTimes.ts'

/**
 * The build-up from slow to full: so many loops at each of a number of rising speeds. Plain data. Speeds are parts of the
 * dance's usual tempo, 1 = all of it, as in `dance/speed.ts`.
 */
export type Ladder = {
  readonly from: number
  readonly to: number
  /** How many speeds there are; the last is `to`. */
  readonly steps: number
  /** Loops at each speed. */
  readonly loops: number
  /** Bars that are counted in before each speed. */
  readonly countIn: number
  /** Goes up only when it is told to. */
  readonly onTap: boolean
  /** 0-based. */
  readonly rung: number
  /** Loops that are done at this speed, 0 to `loops`; no more are counted. */
  readonly done: number
  /** Stays at this speed until it is let go. */
  readonly held: boolean
}

/** Where one is. */
export type Rung = {
  readonly speed: number
  /** 1 to `of`. */
  readonly number: number
  readonly of: number
  /** The loop that is danced now, 1 to `loops`; the last one again where all are done. */
  readonly loop: number
  readonly loops: number
  /** Bars to be counted in before the next loop; 0: none, it goes on. */
  readonly countIn: number
  readonly held: boolean
  /** All loops of this speed are done, and it goes up when it is told to. */
  readonly waits: boolean
  /** All loops of the last speed are done; it goes on at that speed. */
  readonly isThrough: boolean
}

export type LadderWishes = Partial<Pick<Ladder, 'from' | 'to' | 'steps' | 'loops' | 'countIn' | 'onTap'>> & {
  /** The quickest step's time in beats, where the figure is known: what the first speed goes by. Left out: a beat. */
  readonly shortest?: number
}

// All own judgement.
const SLOWEST_START = 0.3
const FASTEST_START = 0.7
/** Starts that nobody has chosen are whole ones of these, so that they can be said. */
const START_IN = 0.05
const STEPS = 6
const MOST_STEPS = 20
const LOOPS = 4
const MOST_LOOPS = 99
/** A shorter bar than this, in seconds at full speed, is too short to get ready in: two are counted. */
const SHORT_BAR = 1.5
/** Speeds closer than this cannot be told apart. */
const LEAST_RISE = 0.01
const ROUNDING = 1e-9

/** Held in its range; what is no number is the usual one. */
const within = (value: unknown, low: number, high: number, usual: number): number =>
  typeof value === 'number' && !Number.isNaN(value) ? Math.min(high, Math.max(low, value)) : usual

const wholeWithin = (...asked: Parameters<typeof within>): number => Math.round(within(...asked))

/** The quickest step's time, in beats, from its leave to its full. */
export const shortestStep = ({ actions }: Schedule): number =>
  Math.min(...actions.filter(({ action }) => action.weight > 0).map(({ moments }) => moments.full - moments.leaves))

/**
 * The speed at which a step of so many beats lasts a dancer's comfortable time, held in 0.3 to 0.7 and cut to whole 5 %.
 * At the usual tempo of all our dances a beat is more than 0.7 of that time: only steps of less than a beat begin lower.
 * @param beats above 0; ∞ (a figure without steps) begins at 0.7
 */
export function startSpeed(dance: Dance, beats: number): number {
  const usual = secondsPerBeat(dance, defaultTempo(dance).barsPerMinute)
  const comfortable = (beats * usual) / shortestTimes.comfortable
  const held = within(comfortable, SLOWEST_START, FASTEST_START, FASTEST_START)
  return Math.floor(held / START_IN + ROUNDING) / Math.round(1 / START_IN)
}

/** At its start; what is wished for is held in range, what is left out is as usual. `from` above `to`: `to` alone. */
export function newLadder(dance: Dance, wishes: LadderWishes = {}): Ladder {
  const { barsPerMinute } = defaultTempo(dance)
  const played = playedTempoRange(dance)
  const [slowest, fastest] = [played.from / barsPerMinute, played.to / barsPerMinute]
  const to = within(wishes.to, slowest, fastest, 1)
  const from = Math.min(to, within(wishes.from, slowest, fastest, startSpeed(dance, wishes.shortest ?? 1)))
  const most = Math.min(MOST_STEPS, 1 + Math.floor((to - from) / LEAST_RISE + ROUNDING))
  const barLasts = 60 / (barsPerMinute * to)
  return {
    from,
    to,
    steps: wholeWithin(wishes.steps, 1, most, Math.min(most, STEPS)),
    loops: wholeWithin(wishes.loops, 1, MOST_LOOPS, LOOPS),
    countIn: wholeWithin(wishes.countIn, 1, 2, barLasts < SHORT_BAR ? 2 : 1),
    onTap: wishes.onTap === true,
    rung: 0,
    done: 0,
    held: false,
  }
}

/** Each speed, rising; the first is `from` unless there is but one, the last exactly `to`. */
export const speedsOf = ({ from, to, steps }: Ladder): readonly number[] =>
  Array.from({ length: steps }, (_, k) => (k === steps - 1 ? to : from + ((to - from) * k) / (steps - 1)))

const isLast = ({ rung, steps }: Ladder): boolean => rung === steps - 1

const at = (ladder: Ladder, rung: number): Ladder => ({ ...ladder, rung, done: 0 })

/** A loop has been danced: the next one, at the next speed when all of this one's are done and nothing holds it. */
export function afterLoop(ladder: Ladder): Ladder {
  const done = Math.min(ladder.loops, ladder.done + 1)
  const climbs = done === ladder.loops && !ladder.held && !ladder.onTap && !isLast(ladder)
  return climbs ? at(ladder, ladder.rung + 1) : { ...ladder, done }
}

/** Stays at this speed, or is let go: it then goes up after the loop in which all are done. */
export const hold = (ladder: Ladder, held: boolean): Ladder => ({ ...ladder, held })

/** One speed back, from its first loop on; at the lowest, that one from its first loop on. */
export const back = (ladder: Ladder): Ladder => at(ladder, Math.max(0, ladder.rung - 1))

/** One speed up at once, from its first loop on, held or not; nothing changes at the highest. */
export const up = (ladder: Ladder): Ladder => (isLast(ladder) ? ladder : at(ladder, ladder.rung + 1))

export function rungOf(ladder: Ladder): Rung {
  const { rung, steps, done, loops, countIn, held, onTap } = ladder
  const all = done === loops
  return {
    speed: speedsOf(ladder)[rung] as number,
    number: rung + 1,
    of: steps,
    loop: Math.min(loops, done + 1),
    loops,
    countIn: done === 0 ? countIn : 0,
    held,
    waits: all && onTap && !isLast(ladder),
    isThrough: all && isLast(ladder),
  }
}

/** What is kept of a figure's ladder. */
export type RememberedLadder = Pick<Ladder, 'from' | 'to' | 'steps' | 'loops' | 'countIn' | 'onTap' | 'rung'>

/** The ladder and its last rung, as plain data; loops are danced anew. */
export const remembered = ({ from, to, steps, loops, countIn, onTap, rung }: Ladder): RememberedLadder => ({
  from,
  to,
  steps,
  loops,
  countIn,
  onTap,
  rung,
})

const NUMBERS = ['from', 'to', 'steps', 'loops', 'countIn', 'rung'] as const

/** Whether kept data are all there. What they say may still be out of range. */
function isRemembered(kept: unknown): kept is RememberedLadder {
  if (typeof kept !== 'object' || kept === null) return false
  const entries = new Map<string, unknown>(Object.entries(kept))
  return NUMBERS.every((key) => Number.isFinite(entries.get(key))) && typeof entries.get('onTap') === 'boolean'
}

/**
 * The ladder that was kept, at the rung that was reached, held in range; a new one where what was kept is none.
 * @param kept anything: it comes from outside
 */
export function restored(dance: Dance, kept: unknown, wishes: LadderWishes = {}): Ladder {
  if (!isRemembered(kept)) return newLadder(dance, wishes)
  const ladder = newLadder(dance, kept)
  return at(ladder, wholeWithin(kept.rung, 0, ladder.steps - 1, 0))
}
