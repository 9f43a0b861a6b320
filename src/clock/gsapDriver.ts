import { gsap } from 'gsap/gsap-core'
import { seconds } from '../units.ts'
import type { Driver } from './driver.ts'

// Here, for the code may come before anybody plays.
gsap.ticker.lagSmoothing(0)
gsap.ticker.sleep()

/**
 * The page's driver: gsap's tick is the one animation-frame loop of the program; the time is the page's own clock, for
 * gsap's is bent after a stall. At rest the ticker sleeps at once (by itself it would run on for two seconds).
 */
export function gsapDriver(): Driver {
  let tick: (() => void) | null = null
  return {
    now: () => seconds(performance.now() / 1000),
    run(frame) {
      if (tick !== null) return
      tick = () => frame()
      gsap.ticker.add(tick)
      gsap.ticker.wake()
    },
    rest() {
      if (tick === null) return
      gsap.ticker.remove(tick)
      tick = null
      gsap.ticker.sleep()
    },
  }
}
