import type { RefObject } from 'react'
import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import { keyWords } from '../words/keyWords.ts'
import { labels } from '../words/labels.ts'
import { keys } from './keys.ts'

type Props = {
  readonly player: Player
  readonly dialog: RefObject<HTMLDialogElement | null>
  readonly letters: boolean
  readonly setLetters: (on: boolean) => void
}

/** Cautions, where the figure's facts come from, and the keys. */
export function Notes({ player, dialog, letters, setLetters }: Props) {
  const { figure, dance, schedule } = useStore(player.store, (state) => state.lesson)
  const facts = [
    labels.figureFacts(dance, figure),
    labels.figureAbout(figure),
    labels.timingSource(schedule.timing),
    labels.conventionSource(figure, dance),
    labels.tempoSource(dance),
  ].filter((text) => text !== '')
  return (
    <dialog className="notes" ref={dialog} aria-label={labels.notes}>
      {/* First, so that the dialog opens at its top: the focus goes here. */}
      <button type="button" className="quiet-button notes-close" onClick={() => dialog.current?.close()}>
        {labels.close}
      </button>
      <h2>{labels.cautionsTitle}</h2>
      <ul>
        {labels.cautions.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <h2>{labels.thisFigure}</h2>
      {facts.map((text) => (
        <p key={text}>
          <bdi>{text}</bdi>
        </p>
      ))}
      <h2>{labels.keysTitle}</h2>
      <ul>
        {keys.map(({ key, shift, deed, places }) => (
          <li key={`${key} ${shift}`}>{keyWords(key, shift, deed, places.length === 1)}</li>
        ))}
      </ul>
      <label className="switch">
        <input type="checkbox" checked={letters} onChange={(event) => setLetters(event.currentTarget.checked)} />
        {labels.letterKeys}
      </label>
    </dialog>
  )
}
