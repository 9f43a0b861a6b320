import { type RefObject, useLayoutEffect, useState } from 'react'

/** How large the strip's picture is, in rem. */
export type StripRoom = { readonly width: number; readonly height: number }

/** Before it is laid out: a phone's. */
const FIRST: StripRoom = { width: 18, height: 4.5 }

/** @param home as wide as the beats' axis @param picture finds the picture in it */
export function useStripRoom(home: RefObject<HTMLElement | null>, picture: string): StripRoom {
  const [room, setRoom] = useState(FIRST)
  useLayoutEffect(() => {
    const element = home.current?.querySelector(picture)
    if (element == null) return
    const measure = (): void => {
      const { width, height } = element.getBoundingClientRect()
      const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize)
      if (width === 0 || height === 0) return
      setRoom((former) => {
        const next = { width: width / rem, height: height / rem }
        return next.width === former.width && next.height === former.height ? former : next
      })
    }
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(element)
    return () => observer.disconnect()
  }, [home, picture])
  return room
}
