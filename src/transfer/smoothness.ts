import { ldlj } from './ldlj.ts'
import { sparc } from './sparc.ts'

/** How smooth a movement is, by three measures that do not depend on its amplitude; for experts. None has a unit. */
export type Smoothness = {
  /** Spectral arc length, at most −1: less negative is smoother. Sees stops and dips. */
  readonly sparc: number
  /** Log dimensionless jerk: higher is smoother; +Infinity without any jerk, as at constant speed. Blind at the ends. */
  readonly ldlj: number
  /** Highest speed over mean speed (way over time, by the trapezium rule), at least 1. 1: constant; 1.875: minimum jerk. */
  readonly peakOverMean: number
}

const FEWEST = 4
/** SPARC looks at frequencies up to 10 Hz: half of this (Nyquist). */
const FEWEST_A_SECOND = 20
/** So much below 0, in parts of the peak, is what rounding leaves of a 0. */
const ROUNDING = 1e-9

/** Checked, and in parts of the highest speed. */
function partsOfPeak(speed: ArrayLike<number>): Float64Array {
  if (speed.length < FEWEST) throw new RangeError(`smoothness takes at least ${FEWEST} samples, got ${speed.length}`)
  const samples = Float64Array.from(speed)
  let peak = 0
  for (const [k, v] of samples.entries()) {
    if (!Number.isFinite(v)) throw new RangeError(`speed must be finite, got ${v} at sample ${k}`)
    peak = Math.max(peak, v)
  }
  for (const [k, v] of samples.entries()) {
    if (v < -ROUNDING * peak) throw new RangeError(`speed must not be below 0, got ${v} at sample ${k}`)
    samples[k] = v / peak
  }
  if (peak === 0) throw new RangeError('there is no movement: every speed is 0')
  return samples
}

/**
 * Measures of how smooth a movement is, from its speed alone. They compare movements that are sampled alike: all depend a
 * little on the rate, and on whether the stand before and after is sampled too (T. Flash and N. Hogan’s minimum-jerk
 * movement of 1 s has LDLJ −5.302 at 100 a second and −5.320 at 1,000). Sources: `sparc.ts`, `ldlj.ts`.
 * @param speed at equal distances in time, in any unit, at least 4 of them, 0 or more
 * @param samplesASecond in hertz, at least 20
 * @throws RangeError for fewer samples, a number that is not finite, a speed below 0 (rounding apart), no movement at all,
 * fewer than 20 samples a second, and a movement too short (under 3 to 6 ms) for a spectrum up to 10 Hz
 */
export function smoothness(speed: readonly number[] | Float64Array, samplesASecond: number): Smoothness {
  if (!(samplesASecond >= FEWEST_A_SECOND && Number.isFinite(samplesASecond))) {
    throw new RangeError(`samples a second must be finite and at least ${FEWEST_A_SECOND}, got ${samplesASecond}`)
  }
  const parts = partsOfPeak(speed)
  const ends = ((parts[0] as number) + (parts.at(-1) as number)) / 2
  const way = parts.reduce((sum, v) => sum + v, 0) - ends
  return { sparc: sparc(parts, samplesASecond), ldlj: ldlj(parts), peakOverMean: (parts.length - 1) / way }
}
