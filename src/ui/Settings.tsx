import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import { labels } from '../words/labels.ts'
import { ladderWords } from '../words/ladderWords.ts'
import { openWords } from '../words/openWords.ts'
import { soundWords } from '../words/soundWords.ts'
import { Choice } from './Choice.tsx'
import { CountingChoice } from './CountingChoice.tsx'
import { Icon } from './Icon.tsx'
import { TempoControl } from './TempoControl.tsx'

type Props = {
  readonly player: Player
  readonly id: string
  readonly practise: () => void
  readonly sound: { readonly isOpen: boolean; readonly toggle: () => void }
}

/** What a lesson can be varied by. */
export function Settings({ player, id, practise, sound }: Props) {
  const timing = useStore(player.store, (state) => state.session.timing)
  const { figure } = useStore(player.store, (state) => state.lesson)
  return (
    <section className="settings" id={id} aria-label={labels.settings}>
      <TempoControl player={player} />
      <button
        type="button"
        className="quiet-button bar-button practise"
        aria-label={ladderWords.practice}
        title={ladderWords.hint}
        onClick={practise}
      >
        <Icon name="climb" />
        <span className="practise-word">{ladderWords.practice}</span>
      </button>
      <button
        type="button"
        className="quiet-button sound-set"
        aria-label={soundWords.more}
        title={soundWords.more}
        aria-expanded={sound.isOpen}
        onClick={sound.toggle}
      >
        <span>{soundWords.title}</span>
      </button>
      {figure.timings.length > 1 ? (
        <Choice
          className="timing-choice"
          label={openWords.timing}
          value={timing}
          options={figure.timings.map((one, index) => ({ value: index, text: labels.timingText(one) }))}
          choose={player.setTiming}
        />
      ) : null}
      <CountingChoice player={player} label={labels.counting} />
    </section>
  )
}
