import { useStore } from 'zustand'
import type { Counting } from '../dance/dance.ts'
import type { Player } from '../player.ts'
import { withCounting } from '../session/session.ts'
import { labels } from '../words/labels.ts'
import { ladderWords } from '../words/ladderWords.ts'
import { openWords } from '../words/openWords.ts'
import { Choice } from './Choice.tsx'
import { Icon } from './Icon.tsx'
import { TempoControl } from './TempoControl.tsx'

const COUNTINGS: readonly Counting[] = ['slows and quicks', 'bars and beats', 'half beats']

type Props = { readonly player: Player; readonly id: string; readonly practise: () => void }

/** What a lesson can be varied by. */
export function Settings({ player, id, practise }: Props) {
  const counting = useStore(player.store, (state) => state.session.counting)
  const timing = useStore(player.store, (state) => state.session.timing)
  const { dance, figure } = useStore(player.store, (state) => state.lesson)
  const noSlows = dance.signs.S === null
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
      {figure.timings.length > 1 ? (
        <Choice
          className="timing-choice"
          label={openWords.timing}
          value={timing}
          options={figure.timings.map((one, index) => ({ value: index, text: labels.timingText(one) }))}
          choose={player.setTiming}
        />
      ) : null}
      <Choice
        label={labels.counting}
        value={counting}
        options={COUNTINGS.map((one) =>
          one === 'slows and quicks' && noSlows
            ? { value: one, text: labels.noSlows(dance), disabled: true }
            : { value: one, text: labels.countingName(one) },
        )}
        choose={(value) => player.change((session) => withCounting(session, value))}
      />
    </section>
  )
}
