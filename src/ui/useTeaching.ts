import { useCallback, useEffect, useLayoutEffect, useState } from 'react'

import { BEAT_SLIDER } from './keyPlace.ts'
import { useEscape } from './useEscape.ts'

/** On the root element while teaching: the styles take everything but the picture, the count and the strip away. */
const TEACHING = 'teaching'

/**
 * The picture alone, on the whole screen where the device lets a page have it. Escape, and whatever else ends the whole
 * screen, ends it.
 */
export function useTeaching(): { readonly on: boolean; readonly toggle: () => void } {
  const [on, setOn] = useState(false)
  useLayoutEffect(() => {
    document.documentElement.toggleAttribute(`data-${TEACHING}`, on)
    // The bar comes back for as long as the keyboard is in it.
    if (on) document.getElementById(BEAT_SLIDER)?.focus({ preventScroll: true })
    if (!on && document.fullscreenElement !== null) void document.exitFullscreen().catch(() => {})
  }, [on])
  useEffect(() => {
    if (!on) return
    const onScreen = (): void => {
      if (document.fullscreenElement === null) setOn(false)
    }
    document.addEventListener('fullscreenchange', onScreen)
    return () => document.removeEventListener('fullscreenchange', onScreen)
  }, [on])
  const toggle = useCallback(() => {
    setOn((was) => !was)
    // Asked for within the press, or browsers refuse; a refusal changes nothing, the page itself is enough.
    const root = document.documentElement
    if (!root.hasAttribute(`data-${TEACHING}`)) root.requestFullscreen?.().catch(() => {})
  }, [])
  const leave = useCallback(() => setOn(false), [])
  useEscape(leave, on)
  return { on, toggle }
}
