import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import { labels } from '../words/labels.ts'
import { showWords } from '../words/showWords.ts'
import { useModal } from './useModal.ts'

type Props = { readonly player: Player; readonly close: () => void; readonly openKeys: () => void }

/** Cautions, and where the figure's facts come from. */
export function NotesDialog({ player, close, openKeys }: Props) {
  const dialog = useModal(close)
  const { figure, written, dance, schedule } = useStore(player.store, (state) => state.lesson)
  const facts = [
    labels.figureFacts(dance, figure),
    figure === written ? '' : showWords.opposite(written),
    labels.figureAbout(written),
    labels.timingSource(schedule.timing),
    labels.conventionSource(figure, dance),
    labels.tempoSource(dance),
  ].filter((text) => text !== '')
  return (
    <dialog className="notes" ref={dialog} aria-label={labels.notes}>
      {/* First, so that the dialog opens at its top: the focus goes here. */}
      <button type="button" className="quiet-button notes-close" onClick={close}>
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
      <button type="button" className="quiet-button" onClick={openKeys}>
        {showWords.keys}
      </button>
    </dialog>
  )
}
