/** As much of a browser's `navigator` as is used; Safari has it. */
export type AudioSessionHost = { readonly audioSession?: { type: string } | undefined }

/** What lets sound pass a telephone's silent switch. */
export type SilentSwitch = {
  /** Whether the browser can be asked for it. */
  readonly offered: boolean
  /** From now on the page's sound passes the switch, as a film's does; or does not. */
  pass(through: boolean): void
}

/**
 * A page that says that it plays is heard with the switch on silent, but other programs' music stops: so it is asked for
 * only where somebody wants it, and only while something sounds. A page cannot read the switch.
 */
export function silentSwitch(host: AudioSessionHost): SilentSwitch {
  const session = (): { type: string } | undefined => {
    try {
      return host.audioSession
    } catch {
      return undefined
    }
  }
  let passes = false
  return {
    get offered() {
      return session() !== undefined
    },
    pass(through) {
      if (through === passes) return
      const found = session()
      if (found === undefined) return
      try {
        found.type = through ? 'playback' : 'auto'
        passes = through
      } catch {
        // A browser that refuses plays on as it did.
      }
    },
  }
}
