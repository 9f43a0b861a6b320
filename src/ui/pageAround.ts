import type { PageAround } from '../sound/pageAround.ts'
import { type AudioSessionHost, silentSwitch } from '../sound/silentSwitch.ts'

/** The browser's own page. */
export const pageAround = (): PageAround => ({
  every(seconds, call) {
    const timer = setInterval(call, seconds * 1000)
    return () => clearInterval(timer)
  },
  hidden: () => document.visibilityState === 'hidden',
  onHidden(listener) {
    document.addEventListener('visibilitychange', listener)
    return () => document.removeEventListener('visibilitychange', listener)
  },
  silentSwitch: silentSwitch(navigator as AudioSessionHost),
})
