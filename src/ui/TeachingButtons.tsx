import { useRef } from 'react'
import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import { labels } from '../words/labels.ts'
import { showWords } from '../words/showWords.ts'
import { Icon } from './Icon.tsx'
import { useQuestion } from './useQuestion.ts'

/** All that is pressed in the teaching view, besides the picture itself. */
export function TeachingButtons({ player, leave }: { readonly player: Player; readonly leave: () => void }) {
  const playing = useStore(player.store, (state) => state.playing)
  const names = useStore(player.store, (state) => state.session.names)
  const question = useQuestion(player)
  const playButton = useRef<HTMLButtonElement>(null)
  const reveal = (): void => {
    // What was pressed goes away.
    playButton.current?.focus()
    player.reveal()
  }
  const word = playing ? labels.pause : labels.play
  return (
    <div className="teaching-buttons">
      {names ? null : (
        <>
          <b className="question">{question}</b>
          <button type="button" className="quiet-button" onClick={reveal}>
            {labels.showNames}
          </button>
        </>
      )}
      <button
        type="button"
        className="icon-button"
        ref={playButton}
        aria-label={showWords.inTeaching(word)}
        title={word}
        onClick={player.toggle}
      >
        <Icon name={playing ? 'pause' : 'play'} />
      </button>
      <button
        type="button"
        className="icon-button"
        aria-label={showWords.leaveTeaching}
        title={showWords.leaveTeaching}
        onClick={leave}
      >
        <Icon name="dismiss" />
      </button>
    </div>
  )
}
