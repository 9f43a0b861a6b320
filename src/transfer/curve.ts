import { type Beat, beat } from '../units.ts'

/**
 * Progress over time: p(t) = actions done by t; i when action i leaves, i + ½ at its split, i + 1 when it is full.
 * Never decreases; constant before its first knot and after its last.
 */
export type Curve = {
  readonly from: Beat
  readonly to: Beat
  /** Actions done at the end. */
  readonly actions: number
  /** p(t), for any finite t. */
  at(t: number): number
  /** dp/dt in actions a beat. */
  speed(t: number): number
  /** The first t with p(t) ≥ s; +∞ when there is none. Asked for a split or a full. */
  arrives(s: number): number
  /** The last t with p(t) ≤ s; +∞ at and above the end, −∞ below 0. Asked for a leave. */
  departs(s: number): number
  readonly knots: readonly Knot[]
}

export type Knot = { readonly t: number; readonly p: number }

const BUCKETS_A_BEAT = 4

/**
 * Slopes of the monotone C1 cubic through the knots: M. Steffen, "A simple method for monotonic interpolation in one
 * dimension", Astron. Astrophys. 239:443–450 (1990); 0 at both ends, for the dancer stands before and after.
 */
function steffenSlopes(t: Float64Array, p: Float64Array): Float64Array {
  const slopes = new Float64Array(t.length)
  for (let k = 1; k < t.length - 1; k++) {
    const [t0, t1, t2] = [t[k - 1] as number, t[k] as number, t[k + 1] as number]
    const [p0, p1, p2] = [p[k - 1] as number, p[k] as number, p[k + 1] as number]
    const before = (p1 - p0) / (t1 - t0)
    const after = (p2 - p1) / (t2 - t1)
    const parabola = (before * (t2 - t1) + after * (t1 - t0)) / (t2 - t0)
    slopes[k] = 2 * Math.min(before, after, parabola / 2)
  }
  return slopes
}

/**
 * The curve through the knots.
 * @throws RangeError unless there are two or more, strictly later one after another, with p never less
 */
export function curveThrough(knots: readonly Knot[]): Curve {
  const n = knots.length
  if (n < 2) throw new RangeError(`a curve needs two knots or more, got ${n}`)
  const t = Float64Array.from(knots, (knot) => knot.t)
  const p = Float64Array.from(knots, (knot) => knot.p)
  for (let k = 1; k < n; k++) {
    if (!((t[k] as number) > (t[k - 1] as number) && (p[k] as number) >= (p[k - 1] as number))) {
      throw new RangeError(
        `knots must be later one after another and never less; knot ${k} is (${t[k]}, ${p[k]}) after (${t[k - 1]}, ${p[k - 1]})`,
      )
    }
  }
  const slopes = steffenSlopes(t, p)
  const first = t[0] as number
  const last = t[n - 1] as number

  // The knot at or before each quarter beat, so that a time is found in a step or two.
  const buckets = new Int32Array(Math.ceil((last - first) * BUCKETS_A_BEAT) + 1)
  for (let bucket = 0, k = 0; bucket < buckets.length; bucket++) {
    while (k < n - 2 && (t[k + 1] as number) <= first + bucket / BUCKETS_A_BEAT) k++
    buckets[bucket] = k
  }
  // Time, progress and slope side by side.
  const rows = new Float64Array(3 * n)
  for (let k = 0; k < n; k++) rows.set([t[k] as number, p[k] as number, slopes[k] as number], 3 * k)
  const intervalOf = (time: number): number => {
    let k = buckets[Math.floor((time - first) * BUCKETS_A_BEAT)] as number
    while (k < n - 2 && (rows[3 * k + 3] as number) <= time) k++
    return k
  }
  const inside = (k: number, time: number): number => {
    const r = 3 * k
    const t0 = rows[r] as number
    const width = (rows[r + 3] as number) - t0
    const x = (time - t0) / width
    const p0 = rows[r + 1] as number
    const p1 = rows[r + 4] as number
    const m0 = (rows[r + 2] as number) * width
    const m1 = (rows[r + 5] as number) * width
    return p0 + x * (m0 + x * (3 * (p1 - p0) - 2 * m0 - m1 + x * (m0 + m1 - 2 * (p1 - p0))))
  }
  /** The time inside interval k at which p = s: halving, for p rises all the way. */
  const timeOf = (k: number, s: number): number => {
    let low = t[k] as number
    let high = t[k + 1] as number
    for (let step = 0; step < 60 && low < high; step++) {
      const mid = (low + high) / 2
      if (mid <= low || mid >= high) break
      if (inside(k, mid) < s) low = mid
      else high = mid
    }
    return high
  }

  return {
    from: beat(first),
    to: beat(last),
    actions: p[n - 1] as number,
    knots,
    at(time) {
      if (time <= first) return p[0] as number
      if (time >= last) return p[n - 1] as number
      return inside(intervalOf(time), time)
    },
    speed(time) {
      if (time <= first || time >= last) return 0
      const k = intervalOf(time)
      const width = (t[k + 1] as number) - (t[k] as number)
      const x = (time - (t[k] as number)) / width
      const rise = ((p[k + 1] as number) - (p[k] as number)) / width
      const [m0, m1] = [slopes[k] as number, slopes[k + 1] as number]
      return m0 + x * (2 * (3 * rise - 2 * m0 - m1) + 3 * x * (m0 + m1 - 2 * rise))
    },
    arrives(s) {
      if (s <= (p[0] as number)) return Number.NEGATIVE_INFINITY
      for (let k = 1; k < n; k++) {
        if ((p[k] as number) === s) return t[k] as number
        if ((p[k] as number) > s) return timeOf(k - 1, s)
      }
      return Number.POSITIVE_INFINITY
    },
    departs(s) {
      if (s >= (p[n - 1] as number)) return Number.POSITIVE_INFINITY
      for (let k = n - 2; k >= 0; k--) {
        if ((p[k] as number) === s) return t[k] as number
        if ((p[k] as number) < s) return timeOf(k, s)
      }
      return Number.NEGATIVE_INFINITY
    },
  }
}
