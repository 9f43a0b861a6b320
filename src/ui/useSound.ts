import { useCallback, useEffect, useRef, useState, useSyncExternalStore } from 'react'
import type { SoundingDriver } from '../clock/soundingDriver.ts'
import type { Conductor } from '../conductor.ts'
import type { Player } from '../player.ts'
import type { SoundState, Speaker } from '../sound/speaker.ts'
import { pageAround } from './pageAround.ts'

/** What of sound the page has from its beginning; the rest comes with the first press. */
export type SoundSource = { readonly speaker: Speaker; readonly driver: SoundingDriver }

export type Sound = {
  /** What is true of it, whatever was asked for. */
  readonly state: SoundState
  /** null: nothing has been asked for yet. */
  readonly conductor: Conductor | null
  /** Within a press: on, or tried again. */
  readonly wake: () => void
  /** Off, also while what is to sound is still on its way. */
  readonly silence: () => void
}

/** @param failed told when what makes sound cannot be fetched; must stay the same function */
export function useSound(player: Player, { speaker, driver }: SoundSource, failed: () => void): Sound {
  const [conductor, setConductor] = useState<Conductor | null>(null)
  const loading = useRef(false)
  const listen = useCallback((told: () => void) => speaker.onState(told), [speaker])
  const state = useSyncExternalStore(
    listen,
    () => speaker.state,
    () => speaker.state,
  )
  const wake = useCallback(() => {
    // Browsers want it within the press; what is to sound may come later.
    speaker.wake()
    if (conductor !== null) {
      conductor.set({ on: true })
      return
    }
    if (loading.current) return
    loading.current = true
    import('../conductor.ts').then(
      ({ createConductor, FIRST_CHOICES }) => {
        const made = createConductor(player, speaker, driver, pageAround(), {
          ...FIRST_CHOICES,
          // Somebody may have switched it off again.
          on: speaker.state !== 'off',
        })
        setConductor(made)
        // Words come when they are there; without them there are clicks.
        import('../keep/loadVoice.ts').then(({ loadVoice }) => loadVoice()).then(made.say, () => {})
      },
      () => {
        loading.current = false
        speaker.sleep()
        failed()
      },
    )
  }, [conductor, player, speaker, driver, failed])
  useEffect(() => () => conductor?.close(), [conductor])
  const silence = useCallback(() => {
    if (conductor === null) speaker.sleep()
    else conductor.set({ on: false })
  }, [conductor, speaker])
  return { state, conductor, wake, silence }
}
