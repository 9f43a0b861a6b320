import { type Seconds, seconds } from '../units.ts'
import type { Driver } from './driver.ts'

/** What is heard, as far as time goes. */
export type SoundTime = {
  /** The sound's time that is heard at a moment of the page's clock, seconds; null: nothing is heard. Never goes back. */
  heardAt(page: number): number | null
  /** The earliest time, of the sound's, for which something else can still be asked; null: nothing is heard. */
  earliest(): number | null
}

/** A driver whose time is that of what is heard, as long as anything is. */
export type SoundingDriver = Driver & {
  /** A moment of the sound's clock at which something of this time is heard; null: nothing is. */
  toSound(time: number): number | null
}

/**
 * One time for picture and sound: while something is heard it goes with that, else with the page's clock. Where the two
 * change places it goes on without a jump, and it never goes back.
 */
export function soundingDriver(driver: Driver, sound: SoundTime): SoundingDriver {
  /** What this time is ahead of the sound's or the page's. */
  let ahead = 0
  let bySound = false
  let last = Number.NEGATIVE_INFINITY

  const now = (): Seconds => {
    const page = driver.now()
    const heard = sound.heardAt(page)
    const sounds = heard !== null
    const base = sounds ? heard : page
    if (sounds !== bySound) {
      // What went by since it was last asked is not known: the page's clock tells of it.
      ahead = Math.max(last, lastOf(page)) - base
      bySound = sounds
    }
    askedAt = page
    last = Math.max(last, base + ahead)
    return seconds(last)
  }
  let askedAt = Number.NaN
  /** The time at `page`, from when it was last asked. */
  const lastOf = (page: number): number =>
    Number.isFinite(last) && Number.isFinite(askedAt) ? last + Math.max(0, page - askedAt) : page

  return {
    now,
    run: (frame) => driver.run(frame),
    rest: () => driver.rest(),
    next() {
      const time = now()
      const earliest = sound.earliest()
      return bySound && earliest !== null ? seconds(Math.max(time, earliest + ahead)) : time
    },
    toSound(time) {
      now()
      return bySound ? time - ahead : null
    },
  }
}
