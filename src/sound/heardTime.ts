/** What was heard when: a moment of the page's clock and the moment of the sound that left the device then, in seconds. */
export type Heard = { readonly page: number; readonly sound: number }

/** Turns the page's time into the time of what is heard. */
export type HeardTime = {
  /** The sound's time that is heard at `page`, seconds; never goes back, unless the device was found to be elsewhere. */
  at(page: number): number
  /** Takes in what the device says. */
  learn(heard: Heard): void
}

/** A difference that is no jitter any more: the device has changed, or slept. In seconds. */
const JUMP = 0.05
/** A difference is taken over in about this time, in seconds: jitter then shows as a few µs, and drift is followed. */
const GLIDE = 0.3
/** After a pause one reading is worth no more than it is after this, in seconds: it may be off by a whole step. */
const MOST = 0.05

/**
 * Follows the sound's clock smoothly, however often it is asked: the raw one moves in steps of some 3 ms, and its relation to
 * the page's clock drifts by some ten millionths.
 * @param first the first pair
 */
export function heardTime(first: Heard): HeardTime {
  let ahead = first.sound - first.page
  let learnt = first.page
  let last = Number.NEGATIVE_INFINITY
  return {
    at(page) {
      last = Math.max(last, page + ahead)
      return last
    },
    learn({ page, sound }) {
      const off = sound - page - ahead
      const since = Math.min(MOST, Math.max(0, page - learnt))
      learnt = Math.max(learnt, page)
      if (Math.abs(off) > JUMP) {
        ahead += off
        last = Number.NEGATIVE_INFINITY
      } else ahead += off * (1 - Math.exp(-since / GLIDE))
    },
  }
}
