/** What was heard when: a moment of the page's clock and the moment of the sound that left the device then, in seconds. */
export type Heard = { readonly page: number; readonly sound: number }

/** Turns the page's time into the time of what is heard. */
export type HeardTime = {
  /** The sound's time that is heard at `page`, seconds; never goes back. */
  at(page: number): number
  /** Takes in what the device says. @param now when it was asked, by the page's clock */
  learn(heard: Heard, now: number): void
  /** True once the sound's clock was seen not to move for `FROZEN` seconds of the page's. */
  isFrozen(): boolean
}

/** A device that says "running" while its clock stands is silent (seconds; pitfall of interrupted sound). */
export const FROZEN = 0.3
/** A difference that is no jitter any more: the device has changed, or slept. */
const JUMP = 0.05
/** How much of each difference is taken over: jitter of some 0.1 ms then shows as a few µs, and drift is followed. */
const TAKEN = 0.05

/**
 * Follows the sound's clock smoothly: the raw one moves in steps of some 3 ms, and its relation to the page's clock drifts by
 * some ten millionths.
 * @param first the first pair
 */
export function heardTime(first: Heard): HeardTime {
  let ahead = first.sound - first.page
  let last = Number.NEGATIVE_INFINITY
  let moved = first
  let seen = first.page
  return {
    at(page) {
      last = Math.max(last, page + ahead)
      return last
    },
    learn({ page, sound }, now) {
      const off = sound - page - ahead
      if (Math.abs(off) > JUMP) {
        ahead += off
        // A new device, or one that has slept: what was heard before is past.
        last = Math.min(last, page + ahead)
      } else ahead += TAKEN * off
      seen = Math.max(seen, now)
      // By whatever little: it stands only where it does not move at all.
      if (sound !== moved.sound) moved = { page: seen, sound }
    },
    isFrozen: () => seen - moved.page > FROZEN,
  }
}
