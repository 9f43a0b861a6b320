import { type CrankedDriver, crankedDriver } from '../../src/clock/crankedDriver.ts'
import type { PageAround } from '../../src/sound/pageAround.ts'
import { type AudioSessionHost, silentSwitch } from '../../src/sound/silentSwitch.ts'
import type { SoundContext } from '../../src/sound/speaker.ts'
import { type FakeContext, fakeContext } from './fakeContext.ts'

/** What every device that is made begins with. */
export type Devices = Partial<
  Pick<FakeContext, 'frozen' | 'drift' | 'latency' | 'says' | 'stamps' | 'resuming' | 'called'> & {
    readonly sampleRate: number
    readonly state: string
  }
>

/** A browser's sound, cranked by hand together with the page's frames. */
export type FakeSound = {
  /** The page's own clock and frames. */
  readonly driver: CrankedDriver
  /** What every device that is made from now on begins with. */
  devices: Devices
  /** none: there is no AudioContext; throws: making one fails. */
  browser: 'good' | 'none' | 'throws'
  /** All devices that were ever made. */
  readonly made: readonly FakeContext[]
  /** The last one. @throws when none was made */
  readonly device: FakeContext
  /** For `createSpeaker`. */
  make(): SoundContext | null
  page(): number
  /** For whoever wants to be called once. */
  later(seconds: number, call: () => void): () => void
  /** The page besides its sound. */
  readonly around: PageAround
  /** Hides it or shows it again: hidden it makes no frames, and its timers come every so many seconds. */
  hide(timers: number | null): void
  /** Lets time pass in which the page does something else: no frame, no timer. */
  busy(by: number): void
  /** Lets time pass without a frame; timers go. */
  wait(by: number): void
  /** Lets time pass, then makes one frame if running. */
  crank(by: number): void
  /** Frames for so long. @param rate frames a second */
  run(seconds: number, rate?: number): void
}

/** @param start the page's clock, seconds */
export function fakeSound(devices: Devices = {}, start = 7, host: AudioSessionHost = {}): FakeSound {
  const driver = crankedDriver(start)
  const made: FakeContext[] = []
  const timers = new Set<{ due: number; readonly seconds: number; readonly call: () => void }>()
  const watchers = new Set<() => void>()
  /** Seconds between timers while it is hidden; null: it is not. */
  let rarely: number | null = null
  const busy = (by: number): void => {
    driver.wait(by)
    for (const device of made) device.pass(by)
  }
  const pass = (by: number): void => {
    busy(by)
    for (const timer of [...timers])
      if (timer.due <= driver.now() + 1e-9) {
        // A page that was away is called once and not for all that it has missed.
        timer.due = driver.now() + Math.max(timer.seconds, rarely ?? 0)
        timer.call()
      }
  }
  const fake: FakeSound = {
    driver,
    devices,
    browser: 'good',
    made,
    get device() {
      const last = made.at(-1)
      if (last === undefined) throw new Error('no device was made')
      return last
    },
    make() {
      if (fake.browser === 'throws') throw new Error('no sound hardware')
      if (fake.browser === 'none') return null
      const { sampleRate = 48_000, state = 'suspended', ...more } = fake.devices
      made.push(Object.assign(fakeContext(fake.page, sampleRate, state), more))
      return fake.device.context
    },
    page: () => driver.now(),
    later(seconds, call) {
      const stop = fake.around.every(seconds, () => {
        stop()
        call()
      })
      return stop
    },
    around: {
      every(seconds, call) {
        const timer = { due: driver.now() + seconds, seconds, call }
        timers.add(timer)
        return () => timers.delete(timer)
      },
      hidden: () => rarely !== null,
      onHidden(listener) {
        watchers.add(listener)
        return () => watchers.delete(listener)
      },
      silentSwitch: silentSwitch(host),
    },
    hide(every) {
      rarely = every
      for (const timer of timers) timer.due = Math.max(timer.due, driver.now() + (every ?? 0))
      if (every === null) for (const timer of timers) timer.due = driver.now()
      for (const watcher of [...watchers]) watcher()
    },
    busy,
    wait: pass,
    crank(by) {
      pass(by)
      if (rarely === null) driver.crank(0)
    },
    run(seconds, rate = 60) {
      for (let frame = 0; frame < Math.round(seconds * rate); frame++) fake.crank(1 / rate)
    },
  }
  return fake
}
