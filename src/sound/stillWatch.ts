/** Watches a clock that should move. */
export type StillWatch = {
  /** @param clock what it shows, and @param page the page's clock then, in seconds */
  look(clock: number, page: number): void
  /** True once it was seen not to move for `FROZEN` seconds of the page's. */
  stands(): boolean
}

/** A device that says "running" while its clock stands so long, in seconds, is silent (after telephone calls). */
export const FROZEN = 0.3

export function stillWatch(): StillWatch {
  let shown = Number.NaN
  let moved = 0
  let seen = 0
  return {
    look(clock, page) {
      seen = page
      // By whatever little: it stands only where it does not move at all.
      if (clock !== shown) moved = page
      shown = clock
    },
    stands: () => seen - moved > FROZEN,
  }
}
