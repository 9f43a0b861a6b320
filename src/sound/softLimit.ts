/** No sample is larger: −1 dBFS, so that what a converter draws between two samples does not clip either. */
const CEILING = 0.89
/** Up to here nothing is changed. */
export const KNEE = 0.6
const ROOM = CEILING - KNEE

/**
 * A sample held under the ceiling. Below the knee it is unchanged; above, a hyperbolic tangent bends it towards the
 * ceiling. The curve and its slope are continuous, so that loud passages grow warmer and not harsh. It looks at one sample
 * at a time: it needs no look-ahead, and a part of a round comes out as it does in the whole.
 */
export function softLimit(sample: number): number {
  const size = Math.abs(sample)
  return size <= KNEE ? sample : Math.sign(sample) * (KNEE + ROOM * Math.tanh((size - KNEE) / ROOM))
}
