import { type RefObject, useEffect, useRef } from 'react'
import type { Player } from '../player.ts'

/**
 * The beat under a finger. A native slider takes hold of its thumb without moving it, and a thumb of 44 px covers several
 * half beats on a phone; so the beat goes to the finger first.
 */
function beatAtPointer(slider: HTMLInputElement, clientX: number): number {
  const { x, width } = slider.getBoundingClientRect()
  const thumb = Number.parseFloat(getComputedStyle(slider).getPropertyValue('--target'))
  const [min, max] = [Number(slider.min), Number(slider.max)]
  const along = (clientX - x - thumb / 2) / (width - thumb)
  return min + Math.min(1, Math.max(0, along)) * (max - min)
}

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
      player.pause()
      player.seek(beatAtPointer(element, event.clientX))
      held.current = true
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
