import { useRef } from 'react'
import { openWords } from '../words/openWords.ts'
import { Icon } from './Icon.tsx'

/** Asks for files; any, for what is in them decides. */
export function OpenButton({ open }: { readonly open: (files: readonly File[]) => void }) {
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <button
        type="button"
        className="quiet-button bar-button bar-button-known"
        title={openWords.openHint}
        aria-label={openWords.open}
        onClick={() => input.current?.click()}
      >
        <Icon name="open" />
        <span className="bar-button-word">{openWords.open}</span>
      </button>
      <input
        ref={input}
        type="file"
        multiple
        hidden
        aria-label={openWords.open}
        onChange={({ currentTarget }) => {
          open([...(currentTarget.files ?? [])])
          // Or the same file, mended, would be no change.
          currentTarget.value = ''
        }}
      />
    </>
  )
}
