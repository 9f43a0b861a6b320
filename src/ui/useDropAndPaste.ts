import { useEffect } from 'react'

export type Brought = {
  readonly files: (files: readonly File[]) => void
  readonly text: (text: string) => void
  /** Neither: an address, a picture from another page. */
  readonly foreign: () => void
}

/** On the document's root while something is held over the page. */
const HELD = 'data-held-over'

/** Where pasting and dropping are the field's own. */
function isTextField(target: EventTarget | null): boolean {
  if (!(target instanceof Element)) return false
  if (target instanceof HTMLInputElement) return !['range', 'checkbox', 'radio', 'button', 'file'].includes(target.type)
  return target.closest('textarea, [contenteditable]') !== null
}

/**
 * What is dropped anywhere on the page, its dialogs too, and what is pasted outside text fields. Nothing that is dropped
 * ever leads away from the page.
 */
export function useDropAndPaste({ files, text, foreign }: Brought): void {
  useEffect(() => {
    const root = document.documentElement
    /** Something of the page's own is dragged: a selected sentence, say. */
    let ours = false
    const listeners = new AbortController()
    const options = { signal: listeners.signal }
    const held = (on: boolean): unknown => root.toggleAttribute(HELD, on && !ours)

    addEventListener('dragstart', () => (ours = true), options)
    addEventListener('dragend', () => (ours = false), options)
    addEventListener(
      'dragover',
      (event) => {
        event.preventDefault()
        if (event.dataTransfer !== null) event.dataTransfer.dropEffect = ours ? 'none' : 'copy'
        held(true)
      },
      options,
    )
    addEventListener('dragleave', ({ relatedTarget }) => relatedTarget === null && held(false), options)
    addEventListener(
      'drop',
      (event) => {
        event.preventDefault()
        held(false)
        const { dataTransfer } = event
        if (ours || dataTransfer === null) return
        const dropped = dataTransfer.getData('text/plain')
        if (dataTransfer.files.length > 0) files([...dataTransfer.files])
        else if (dropped.trim() !== '' && !dataTransfer.types.includes('text/uri-list')) text(dropped)
        else foreign()
      },
      options,
    )
    addEventListener(
      'paste',
      (event) => {
        const { clipboardData } = event
        if (event.defaultPrevented || isTextField(event.target) || clipboardData === null) return
        const pasted = clipboardData.getData('text/plain')
        if (clipboardData.files.length > 0) files([...clipboardData.files])
        else if (pasted.trim() !== '') text(pasted)
        else return
        event.preventDefault()
      },
      options,
    )
    return () => listeners.abort()
  }, [files, text, foreign])
}
