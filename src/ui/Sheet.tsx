import { type ReactNode, useEffect, useId, useRef } from 'react'
import { Icon } from './Icon.tsx'
import { useEscape } from './useEscape.ts'

type Props = {
  readonly title: string
  readonly closeLabel: string
  readonly close: () => void
  readonly children: ReactNode
}

/**
 * Lies over a part of the page, which stays alive beneath it, until it is closed. Escape closes it, and the keyboard goes
 * back to where it was.
 */
export function Sheet({ title, closeLabel, close, children }: Props) {
  const home = useRef<HTMLElement>(null)
  const titleId = useId()
  useEffect(() => {
    const before = document.activeElement
    const element = home.current
    element?.focus({ preventScroll: true })
    return () => {
      const { activeElement } = document
      const isHere = activeElement === null || activeElement === document.body || element?.contains(activeElement)
      if (isHere && before instanceof HTMLElement) before.focus({ preventScroll: true })
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
