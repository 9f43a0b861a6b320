import { useEffect } from 'react'

/** What Escape would end now, the latest last: only that is ended, as one expects of things that lie on each other. */
const open: (() => void)[] = []

function onKey(event: KeyboardEvent): void {
  if (event.key !== 'Escape' || event.defaultPrevented || document.querySelector('dialog[open]') !== null) return
  const latest = open.at(-1)
  if (latest === undefined) return
  event.preventDefault()
  latest()
}

/**
 * Lets Escape end something, unless a dialog is open, which has its own way.
 * @param deed must stay the same function
 * @param on whether there is anything to end
 */
export function useEscape(deed: () => void, on = true): void {
  useEffect(() => {
    if (!on) return
    if (open.length === 0) addEventListener('keydown', onKey)
    open.push(deed)
    return () => {
      open.splice(open.lastIndexOf(deed), 1)
      if (open.length === 0) removeEventListener('keydown', onKey)
    }
  }, [deed, on])
}
