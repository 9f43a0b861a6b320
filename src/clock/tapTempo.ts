import { type Seconds, seconds } from '../units.ts'
import { median, middles } from './median.ts'

/** The taps of one run as plain data; the older ones are kept only as beats that have gone by. */
export type Taps = {
  /** The last taps, oldest first. */
  readonly times: readonly Seconds[]
  /** Beats from the first tap of the run to the first of `times`. */
  readonly beatsBefore: number
  /** Half beats by which the beat was moved by hand; later is positive. */
  readonly nudge: number
}

/** What the taps say. */
export type TapTempo = {
  readonly secondsPerBeat: Seconds
  readonly beatsPerMinute: number
  /**
   * When the one was: the first tap of the run, on the even beats that fit the last taps best, and nudged. Taps come some
   * tens of milliseconds before the beat that is heard (Repp, Psychon. Bull. Rev. 12:969–992, 2005; the size from memory);
   * that is left in, for no page can tell it from the delay of its own sound.
   */
  readonly one: Seconds
}

/** Intervals that are looked at. */
const INTERVALS = 8
/** A longer pause begins anew, in seconds. Nobody taps slower than every 2 s in time (from memory). */
const PAUSE = 3
/** Sooner than this a finger has bounced, in seconds: the quickest tap every 0.15 to 0.2 s (from memory). */
const BOUNCE = 0.12
/** A tap is on a beat when it comes a whole number of beats after another, give or take this part of a beat. */
const OFF = 0.3
/** From here on a tap is off, and further off is no worse, as a part of a beat. */
const CLEARLY_OFF = 0.15
/** What a tap that is left over costs more, in the same squares. */
const TOO_MANY = 0.04
/** Nothing is said of fewer. */
const FEWEST_TAPS = 3

export const noTaps: Taps = { times: [], beatsBefore: 0, nudge: 0 }

/** A tap that was found to be on a beat. */
type Seated = {
  readonly tap: number
  readonly at: number
  readonly beat: number
  /** Beats are counted through within a run; between two of them it is a guess. */
  readonly run: number
}

/** Even beats, and the taps that are on them. */
type Even = { readonly period: number; readonly one: number; readonly seated: readonly Seated[] }

/**
 * Which beat each tap is on, if a beat lasts about `period`. Two beats between two taps: one was missed. Where the next tap
 * is on none but the one after it is, the next was one too many, or astray. Where neither is, a new run begins.
 */
function seatedBy(times: readonly number[], period: number): readonly Seated[] {
  const seated: Seated[] = [{ tap: 0, at: times[0] as number, beat: 0, run: 0 }]
  for (let last = seated[0] as Seated; last.tap < times.length - 1; last = seated.at(-1) as Seated) {
    const { tap, at, beat, run } = last
    const beatsTo = (other: number): number => ((times[other] as number) - at) / period
    const isOn = (other: number): boolean =>
      other < times.length && beatsTo(other) > OFF && Math.abs(beatsTo(other) - Math.round(beatsTo(other))) <= OFF
    const next = [tap + 1, tap + 2].find(isOn)
    const found = next ?? tap + 1
    const runs = next === undefined ? run + 1 : run
    seated.push({ tap: found, at: times[found] as number, beat: beat + Math.round(beatsTo(found)), run: runs })
  }
  return seated
}

/** The taps of the longest run, the later of two. */
function longestRun(seated: readonly Seated[]): readonly Seated[] {
  const runs = [...new Set(seated.map(({ run }) => run))].map((run) => seated.filter((one) => one.run === run))
  return runs.reduce((best, run) => (run.length >= best.length ? run : best), [])
}

/**
 * The even beats through some taps. Their length is the median over every two taps, per beat between them (H. Theil 1950;
 * P. K. Sen, J. Am. Stat. Assoc. 63:1379–1389, 1968; from memory): the median of neighbours alone has nearly three times its
 * error. They lie where the median tap is on its beat.
 * @param seated of one run, at least two, each on a beat of its own
 */
function evenBeats(seated: readonly Seated[]): Even {
  const lengths = seated.flatMap((to, k) => seated.slice(0, k).map(({ at, beat }) => (to.at - at) / (to.beat - beat)))
  const period = median(lengths)
  return { period, one: median(seated.map(({ at, beat }) => at - beat * period)), seated }
}

/** How far a time is from the nearest beat, as a part of a beat. */
const offBeat = ({ period, one }: Even, at: number): number => {
  const beats = (at - one) / period
  return Math.abs(beats - Math.round(beats))
}

/** All taps near an even beat, one for each beat: the nearest. */
function onBeats(times: readonly number[], even: Even): Seated[] {
  const taps = times.map((at, tap) => ({ tap, at, beat: Math.round((at - even.one) / even.period), run: 0 }))
  const off = times.map((at) => offBeat(even, at))
  // Of two equally near ones the earlier.
  const isNearest = ({ tap, beat }: Seated): boolean =>
    taps.every((other) => {
      const further = (off[other.tap] as number) - (off[tap] as number)
      return other.beat !== beat || further > 0 || (further === 0 && other.tap >= tap)
    })
  return taps.filter((tap) => (off[tap.tap] as number) <= OFF && isNearest(tap))
}

/** The even beats through the taps that were seated, and through all others that are near them. */
function evenBeatsOf(times: readonly number[], seated: readonly Seated[]): Even | null {
  const run = longestRun(seated)
  if (run.length < FEWEST_TAPS) return null
  const all = onBeats(times, evenBeats(run))
  return all.length < Math.max(FEWEST_TAPS, times.length / 2) ? null : evenBeats(all)
}

/** How badly even beats explain the taps: squares of how far they are off, and a price for taps left over. */
function costOf(times: readonly number[], even: Even): number {
  const off = times.reduce((sum, at) => sum + Math.min(CLEARLY_OFF, offBeat(even, at)) ** 2, 0)
  return off + (times.length - even.seated.length) * TOO_MANY
}

/** The same beats, counted from the one nearest to `at`. */
function countedFrom(at: number, { period, one, seated }: Even): Even {
  const first = Math.round((at - one) / period)
  return {
    period,
    one: one + first * period,
    seated: seated.map((tap) => ({ ...tap, beat: tap.beat - first })),
  }
}

/**
 * The even beats that fit the taps; null while fewer than three, or than half of them, are on them. The first tap is on beat
 * 0, or nearest to it. Tried are: each tap a beat; and either middle one of the intervals as the beat, with taps missed and too
 * many. The least off wins.
 * @param times at least two
 */
function bestBeats(times: readonly number[]): Even | null {
  const intervals = times.slice(1).map((at, k) => at - (times[k] as number))
  const eachABeat = times.map((at, tap): Seated => ({ tap, at, beat: tap, run: 0 }))
  const [best] = [eachABeat, ...middles(intervals).map((period) => seatedBy(times, period))]
    .flatMap((seated) => evenBeatsOf(times, seated) ?? [])
    .map((even) => ({ even, cost: costOf(times, even) }))
    .sort((a, b) => a.cost - b.cost)
  return best === undefined ? null : countedFrom(times[0] as number, best.even)
}

/** One tap more. After a pause, or a time before the last one, a new run begins; a bounce of the finger changes nothing. */
export function tapped(taps: Taps, at: Seconds): Taps {
  const last = taps.times.at(-1)
  if (last === undefined || at - last > PAUSE || at < last) return { times: [at], beatsBefore: 0, nudge: 0 }
  if (at - last < BOUNCE) return taps
  const times = [...taps.times, at]
  if (times.length <= INTERVALS + 1) return { ...taps, times }
  // The oldest goes, and with it those that are on no beat: beats are counted on from a tap that is on one.
  const seated =
    bestBeats(times)?.seated ?? seatedBy(times, median(times.slice(1).map((time, k) => time - (times[k] as number))))
  const first = seated.find(({ tap }) => tap > 0) as Seated
  return { ...taps, times: times.slice(first.tap), beatsBefore: taps.beatsBefore + first.beat }
}

/** The beat moved by hand. @param halfBeats later is positive; rounded to a whole number */
export const nudged = (taps: Taps, halfBeats: number): Taps => ({ ...taps, nudge: taps.nudge + Math.round(halfBeats) })

/** Tempo and beat of the last taps; null before three, and while fewer than half of them are on any even beats. */
export function tapTempo({ times, beatsBefore, nudge }: Taps): TapTempo | null {
  const even = times.length < FEWEST_TAPS ? null : bestBeats(times)
  if (even === null) return null
  const { period, one } = even
  return {
    secondsPerBeat: seconds(period),
    beatsPerMinute: 60 / period,
    one: seconds(one + (nudge / 2 - beatsBefore) * period),
  }
}

/** Beats since the one, at `now`; not whole between two beats, below 0 before it. */
export const beatsSinceOne = ({ one, secondsPerBeat }: TapTempo, now: Seconds): number => (now - one) / secondsPerBeat
