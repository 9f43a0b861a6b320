import { type ReactNode, type RefObject, useLayoutEffect, useRef } from 'react'

/** Marks what gets the keyboard, as an attribute. */
export const GETS_KEYS = { 'data-gets-keys': '' } as const

type Props = {
  /** Whether the keyboard was in what stood here before; shared by all that take each other's place. */
  readonly hadKeys: RefObject<boolean>
  readonly children: ReactNode
}

/**
 * One of several things that take each other's place: it gets the keyboard when the former had it and went away with it; where
 * nothing in it wants it, its sheet does.
 */
export function InPlace({ hadKeys, children }: Props) {
  const home = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => {
    const element = home.current
    if (hadKeys.current) {
      const next = element?.querySelector<HTMLElement>('[data-gets-keys]') ?? element?.closest<HTMLElement>('.sheet')
      next?.focus()
    }
    hadKeys.current = false
    return () => {
      hadKeys.current = element?.contains(document.activeElement) ?? false
    }
  }, [hadKeys])
  return (
    <div className="in-place" ref={home}>
      {children}
    </div>
  )
}
