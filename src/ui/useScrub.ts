import { type RefObject, useEffect, useRef } from 'react'
import type { Player } from '../player.ts'

/**
 * While a finger holds the slider, playing waits; when it lets go (or the drag is broken off in any way) playing goes on
 * if it went on before.
 * @returns whether the slider is held now
 */
export function useScrub(player: Player, slider: RefObject<HTMLInputElement | null>): RefObject<boolean> {
  const held = useRef(false)
  useEffect(() => {
    const element = slider.current
    if (element === null) return
    let goOn = false
    const take = (event: PointerEvent): void => {
      if (!event.isPrimary || event.button !== 0) return
      goOn = goOn || player.store.getState().playing
      held.current = true
      player.pause()
    }
    const release = (): void => {
      if (!held.current) return
      held.current = false
      if (goOn) player.play()
      goOn = false
    }
    element.addEventListener('pointerdown', take)
    const ends = ['pointerup', 'pointercancel', 'blur'] as const
    for (const end of ends) addEventListener(end, release)
    element.addEventListener('lostpointercapture', release)
    return () => {
      release()
      element.removeEventListener('pointerdown', take)
      for (const end of ends) removeEventListener(end, release)
      element.removeEventListener('lostpointercapture', release)
    }
  }, [player, slider])
  return held
}
