import { type Seconds, seconds } from '../units.ts'
import type { Driver } from './driver.ts'

/** A driver turned by hand: for tests, and wherever frames are made one by one. */
export type CrankedDriver = Driver & {
  readonly running: boolean
  /** Lets time pass without a frame. */
  wait(by: number): void
  /** Lets time pass, then makes one frame if running. */
  crank(by: number): void
}

export function crankedDriver(start = 0): CrankedDriver {
  let time = start
  let frame: (() => void) | null = null
  return {
    get running() {
      return frame !== null
    },
    now: (): Seconds => seconds(time),
    run(next) {
      frame ??= next
    },
    rest() {
      frame = null
    },
    wait(by) {
      time += by
    },
    crank(by) {
      time += by
      frame?.()
    },
  }
}
