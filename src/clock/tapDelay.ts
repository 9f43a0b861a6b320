import { type Seconds, seconds } from '../units.ts'
import { median } from './median.ts'
import { modulo } from './modulo.ts'

/** A tap on a click that was heard, and when the beat before it was shown; both in seconds of the page's clock. */
export type HeardTap = { readonly at: Seconds; readonly shown: Seconds }

/** What taps on what is heard say of the sound's delay. */
export type TapDelay =
  /** So many taps are still wanted. */
  | { readonly kind: 'more'; readonly taps: number }
  /** They lie nowhere in particular, or too far apart. */
  | { readonly kind: 'uneven' }
  /** The sound comes so much later than the device says. `spread`: how far apart the taps lie, a standard deviation. */
  | { readonly kind: 'found'; readonly delay: Seconds; readonly spread: Seconds }

/** Taps that are wanted: with 20 ms each the delay is then known within 15 ms in 98 of 100 tests. */
export const WANTED_TAPS = 16
/** Older ones are not looked at. */
const LOOKED_AT = 40
/**
 * People tap so much before what they hear, in seconds: some tens of milliseconds, less of musicians (B. Repp, Psychon. Bull.
 * Rev. 12:969–992, 2005; the size from memory). That is added.
 */
const EARLY = 0.025
/**
 * The delays that are looked for, in seconds: none to the most that can be set, and a little for taps that are uneven. Half a
 * second in all, so that of taps on every half beat of a second one half cannot be meant.
 */
const LEAST = -0.06
const MOST = 0.44
/** Taps as near as this to one another belong together, in seconds. */
const NEAR = 0.08
/** Farther from the others a tap is astray, in seconds. */
const ASTRAY = 0.2
/** Of even taps, how far apart they lie in all, as a multiple of their spread: 99 in 100. */
const STRAYS = 5
/** This part of the taps may be astray or too many: half of them where every half beat was tapped. */
const LEFT_OVER = 0.55
/** More than this, in seconds, and nothing is said. */
const TOO_UNEVEN = 0.06

/** The median of the means of every two (Hodges and Lehmann 1963, from memory): as little moved by strays, and steadier. */
const middleOf = (values: readonly number[]): number =>
  median(values.flatMap((one, k) => values.slice(k).map((other) => (one + other) / 2)))

/** A standard deviation that a stray does not move: 1.4826 × the median distance from the middle. */
const spreadOf = (values: readonly number[], middle: number): number =>
  1.4826 * median(values.map((value) => Math.abs(value - middle)))

/** Of each beat the tap that is nearest to where the others lie. */
function onePerBeat(
  lags: readonly { readonly lag: number; readonly beat: number }[],
  middle: number,
): readonly number[] {
  const nearest = new Map<number, number>()
  for (const { lag, beat } of lags) {
    const before = nearest.get(beat)
    if (before === undefined || Math.abs(lag - middle) < Math.abs(before - middle)) nearest.set(beat, lag)
  }
  return [...nearest.values()]
}

/**
 * How late the sound is, from taps on what is heard. Only the beat's own length can tell one beat from the next: it must be
 * longer than the delays that are looked for.
 * @param secondsPerBeat 0.8 at the least
 * @param set seconds that are added already: what is found takes its place
 * @throws RangeError when beats are quicker
 */
export function tapDelay(taps: readonly HeardTap[], secondsPerBeat: number, set: number): TapDelay {
  if (!(secondsPerBeat >= 0.8)) throw new RangeError(`a beat must last 0.8 s or more, not ${secondsPerBeat}`)
  const first = taps[0]?.shown ?? 0
  // From before the least delay on, so that a tap before its beat belongs to that beat.
  const cut = LEAST - (secondsPerBeat - (MOST - LEAST)) / 2
  const lags = taps.slice(-LOOKED_AT).map(({ at, shown }) => {
    const since = at - shown + EARLY + set
    const lag = cut + modulo(since - cut, secondsPerBeat)
    return { lag, beat: Math.round((at + EARLY + set - lag - first) / secondsPerBeat) }
  })
  const possible = lags.filter(({ lag }) => lag >= LEAST && lag <= MOST)
  const beats = new Set(lags.map(({ beat }) => beat)).size
  if (beats < WANTED_TAPS) return { kind: 'more', taps: WANTED_TAPS - beats }
  const together = possible.map(({ lag }) => possible.filter((other) => Math.abs(other.lag - lag) <= NEAR))
  const most = together.reduce<typeof possible>((best, some) => (some.length > best.length ? some : best), [])
  if (most.length === 0) return { kind: 'uneven' }
  const rough = median(most.map(({ lag }) => lag))
  const kept = onePerBeat(lags, rough).filter((lag) => Math.abs(lag - rough) <= ASTRAY)
  const spread = spreadOf(kept, median(kept))
  // The first taps, until one is with it.
  const clear = Math.max(NEAR, STRAYS * spread) / 2
  const delay = middleOf(kept.filter((lag) => Math.abs(lag - median(kept)) <= clear))
  if (kept.length < lags.length * (1 - LEFT_OVER) || spread > TOO_UNEVEN) return { kind: 'uneven' }
  return { kind: 'found', delay: seconds(delay), spread: seconds(spread) }
}
