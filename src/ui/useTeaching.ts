import { useCallback, useEffect, useLayoutEffect, useRef, useState } from 'react'
import { BEAT_SLIDER } from './keyPlace.ts'
import { useEscape } from './useEscape.ts'

/** On the root element while teaching: the styles take everything but the picture, the count and the strip away. */
const TEACHING = 'data-teaching'

const leaveScreen = (): void => {
  if (document.fullscreenElement !== null) document.exitFullscreen().catch(() => {})
}

/**
 * The picture alone, on the whole screen where the device lets a page have it. Escape, and whatever else ends the whole
 * screen, ends it.
 */
export function useTeaching(): { readonly on: boolean; readonly toggle: () => void } {
  const [on, setOn] = useState(false)
  const before = useRef(false)
  useLayoutEffect(() => {
    const root = document.documentElement
    root.toggleAttribute(TEACHING, on)
    // The bar shows itself as long as the keyboard is in it, and the button that leaves goes away under it.
    if (on !== before.current) document.getElementById(BEAT_SLIDER)?.focus({ preventScroll: true })
    before.current = on
    if (!on) leaveScreen()
    return () => root.removeAttribute(TEACHING)
  }, [on])
  useEffect(() => leaveScreen, [])
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
    if (root.hasAttribute(TEACHING)) return
    root.requestFullscreen?.().then(
      () => {
        if (!root.hasAttribute(TEACHING)) leaveScreen()
      },
      () => {},
    )
  }, [])
  const leave = useCallback(() => setOn(false), [])
  useEscape(leave, on)
  return { on, toggle }
}
