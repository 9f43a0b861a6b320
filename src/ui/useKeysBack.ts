import { type RefObject, useLayoutEffect, useRef } from 'react'
import { BEAT_SLIDER } from './keyPlace.ts'

/** For what may go away with the keyboard in it: then the beat's slider has the keys, as after the page's other buttons. */
export function useKeysBack(): RefObject<HTMLElement | null> {
  const home = useRef<HTMLElement>(null)
  useLayoutEffect(() => {
    const element = home.current
    return () => {
      if (element?.contains(document.activeElement)) {
        document.getElementById(BEAT_SLIDER)?.focus({ preventScroll: true })
      }
    }
  }, [])
  return home
}
