import { type ReactNode, useEffect, useId, useLayoutEffect, useRef } from 'react'
import { Icon } from './Icon.tsx'
import { BEAT_SLIDER } from './keyPlace.ts'
import { useEscape } from './useEscape.ts'

type Props = {
  readonly title: string
  readonly closeLabel: string
  readonly close: () => void
  readonly children: ReactNode
}

/**
 * Stands beside the page, which stays alive, until it is closed. Escape closes it, and the keyboard goes back to where it
 * was.
 */
export function Sheet({ title, closeLabel, close, children }: Props) {
  const home = useRef<HTMLElement>(null)
  const titleId = useId()
  const before = useRef<Element | null>(null)
  // At once: what opened the sheet may be folded away beside it, and would lose the keyboard before it is remembered.
  useLayoutEffect(() => {
    const { activeElement } = document
    before.current = activeElement === document.body ? null : activeElement
    home.current?.focus({ preventScroll: true })
  }, [])
  // And back only when the page is as it was without the sheet.
  useEffect(() => {
    const element = home.current
    return () => {
      const { activeElement } = document
      const isHere = activeElement === null || activeElement === document.body || element?.contains(activeElement)
      if (!isHere) return
      if (before.current instanceof HTMLElement) before.current.focus({ preventScroll: true })
      // What it came from may be folded away by now.
      if (document.activeElement !== before.current)
        document.getElementById(BEAT_SLIDER)?.focus({ preventScroll: true })
    }
  }, [])
  useEscape(close)
  return (
    <section className="sheet" aria-labelledby={titleId} ref={home} tabIndex={-1}>
      <div className="sheet-head">
        <h2 id={titleId}>{title}</h2>
        <button type="button" className="icon-button" aria-label={closeLabel} onClick={close}>
          <Icon name="dismiss" />
        </button>
      </div>
      {children}
    </section>
  )
}
