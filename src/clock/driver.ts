import type { Seconds } from '../units.ts'

/** What moves the picture on: a time and a call for every frame. The page's own, or one cranked by hand. */
export type Driver = {
  /** Seconds from any fixed start; never goes back. */
  now(): Seconds
  /** The earliest time at which tempo and round can change: later than now where something sounds already. Left out: now. */
  next?(): Seconds
  /** The earliest time at which something can begin out of silence and be heard whole. Left out: as `next`. */
  first?(): Seconds
  /** Calls `frame` once a frame until told to rest. Asking again while it runs changes nothing. */
  run(frame: () => void): void
  /** No more frames are asked for. */
  rest(): void
}
