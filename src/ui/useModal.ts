import { type RefObject, useEffect, useRef } from 'react'

/** A dialog that stands open as long as it is rendered; Escape and the system's back gesture end it by `closed`. */
export function useModal(closed: () => void): RefObject<HTMLDialogElement | null> {
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => {
    const element = dialog.current
    if (element === null) return
    const before = document.activeElement
    if (!element.open) element.showModal()
    const onCancel = (event: Event): void => {
      event.preventDefault()
      closed()
    }
    element.addEventListener('cancel', onCancel)
    return () => {
      element.removeEventListener('cancel', onCancel)
      element.close()
      if (before instanceof HTMLElement) before.focus({ preventScroll: true })
    }
  }, [closed])
  return dialog
}
