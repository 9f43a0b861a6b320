import { type Seconds, seconds } from '../units.ts'
import type { Driver } from './driver.ts'

/** What is heard, as far as time goes. */
export type SoundTime = {
  /**
   * The sound's time that is heard at a moment of the page's clock, seconds; null: nothing is heard. It goes as the page's
   * clock does, but for jitter; it leaps where the device changes.
   */
  heardAt(page: number): number | null
  /** The earliest time, of the sound's, for which something else can still be asked; null: nothing is heard. */
  earliest(): number | null
}

/** A driver whose time is that of what is heard, as long as anything is. */
export type SoundingDriver = Driver & {
  /** A moment of the sound's clock at which something of this time is heard; null: nothing is. */
  toSound(time: number): number | null
  /** How much of what is heard comes before its beat: so much later something begins out of silence. In seconds. */
  setBreath(breath: number): void
}

/** More than this at once, in seconds, is no jitter: then the picture does not go along. Half a frame. */
const LEAP = 0.008

/**
 * One time for picture and sound: while something is heard it goes with that, else with the page's clock. Where the two
 * change places, and where the sound's leaps (another device, an offset), it goes on without a jump: the sound is then
 * mended, not the picture. It never goes back.
 */
export function soundingDriver(driver: Driver, sound: SoundTime): SoundingDriver {
  /** What this time is ahead of the sound's or the page's. */
  let ahead = 0
  let bySound = false
  let breath = 0
  /** What was told last, and the page's time then. */
  let last: { readonly time: number; readonly page: number } | null = null

  const now = (): Seconds => {
    const page = driver.now()
    const heard = sound.heardAt(page)
    const base = heard ?? page
    // The page's clock tells what went by since it was last asked.
    const goesOn = last === null ? page : last.time + Math.max(0, page - last.page)
    const sounds = heard !== null
    if (sounds !== bySound || Math.abs(base + ahead - goesOn) > LEAP) ahead = goesOn - base
    bySound = sounds
    last = { time: Math.max(last?.time ?? goesOn, base + ahead), page }
    return seconds(last.time)
  }

  const next = (): Seconds => {
    const time = now()
    const earliest = sound.earliest()
    return bySound && earliest !== null ? seconds(Math.max(time, earliest + ahead)) : time
  }

  return {
    now,
    next,
    first() {
      const soon = next()
      return bySound ? seconds(soon + breath) : soon
    },
    run: (frame) => driver.run(frame),
    rest: () => driver.rest(),
    toSound(time) {
      now()
      return bySound ? time - ahead : null
    },
    setBreath(next) {
      breath = next
    },
  }
}
