import { useEffect, useState } from 'react'
import type { Player } from '../player.ts'

/** Milliseconds after a pause in which the screen still stays on: a teacher explains. */
const AFTERWARDS = 120_000

/**
 * Keeps the screen on while a figure plays, and for two minutes after. The browser takes that away when the page is hidden,
 * so it is asked for again when it is looked at.
 * @returns false once the browser has refused: the screen may go dark
 */
export function useAwake(player: Player): boolean {
  const [granted, setGranted] = useState(true)
  useEffect(() => {
    let lock: WakeLockSentinel | null = null
    let asking = false
    let gone = false
    let timer: ReturnType<typeof setTimeout> | undefined
    const release = (): void => {
      lock?.release().catch(() => {})
      lock = null
    }
    const ask = (): void => {
      clearTimeout(timer)
      if (asking || (lock !== null && !lock.released) || document.visibilityState !== 'visible') return
      if (!('wakeLock' in navigator)) {
        setGranted(false)
        return
      }
      asking = true
      navigator.wakeLock
        .request('screen')
        .then(
          (given) => {
            lock = given
            if (gone) release()
            else setGranted(true)
          },
          () => setGranted(false),
        )
        .finally(() => {
          asking = false
        })
    }
    let was = false
    const follow = (): void => {
      const { playing } = player.store.getState()
      if (playing === was) return
      was = playing
      if (playing) ask()
      else timer = setTimeout(release, AFTERWARDS)
    }
    const onVisible = (): void => {
      if (player.store.getState().playing) ask()
    }
    const stop = player.store.subscribe(follow)
    document.addEventListener('visibilitychange', onVisible)
    return () => {
      gone = true
      stop()
      document.removeEventListener('visibilitychange', onVisible)
      clearTimeout(timer)
      release()
    }
  }, [player])
  return granted
}
