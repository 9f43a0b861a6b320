import type { Driver } from '../clock/driver.ts'
import { seconds } from '../units.ts'

/**
 * The page's driver, whose tick comes when it is first wanted: a picture that stands needs none, and should not wait for it.
 * Its time is the page's own clock from the beginning on.
 */
export function pageDriver(): Driver {
  const loading = (): Promise<Driver> => import('../clock/gsapDriver.ts').then(({ gsapDriver }) => gsapDriver())
  let loaded: Promise<Driver> | null = null
  let driver: Driver | null = null
  let wanted: (() => void) | null = null
  return {
    now: () => seconds(performance.now() / 1000),
    run(frame) {
      wanted = frame
      if (driver !== null) {
        driver.run(frame)
        return
      }
      loaded ??= loading()
      loaded.then(
        (ready) => {
          driver = ready
          if (wanted !== null) driver.run(wanted)
        },
        () => {
          // Without a network: asked for again at the next play.
          loaded = null
        },
      )
    },
    rest() {
      wanted = null
      driver?.rest()
    },
  }
}
