import type { SilentSwitch } from './silentSwitch.ts'

/** What of the page, besides its sound, matters to what is heard. */
export type PageAround = {
  /** Calls somebody every so many seconds, or as often as the page is allowed to, until it is stopped. */
  every(seconds: number, call: () => void): () => void
  /** Nobody looks at it: then timers come rarely. */
  hidden(): boolean
  /** Told when it is hidden or shown again. Returns what stops it. */
  onHidden(listener: () => void): () => void
  readonly silentSwitch: SilentSwitch
}
