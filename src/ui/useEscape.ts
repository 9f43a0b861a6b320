import { useEffect } from 'react'

/** Escape, unless a dialog or something else has taken it. @param deed must stay the same function @param on whether it does anything now */
export function useEscape(deed: () => void, on = true): void {
  useEffect(() => {
    if (!on) return
    const onKey = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape' || event.defaultPrevented || document.querySelector('dialog[open]') !== null) return
      event.preventDefault()
      deed()
    }
    addEventListener('keydown', onKey)
    return () => removeEventListener('keydown', onKey)
  }, [deed, on])
}
