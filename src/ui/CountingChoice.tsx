import { useStore } from 'zustand'
import type { Counting } from '../dance/dance.ts'
import type { Player } from '../player.ts'
import { withCounting } from '../session/session.ts'
import { labels } from '../words/labels.ts'
import { Choice } from './Choice.tsx'

const COUNTINGS: readonly Counting[] = ['slows and quicks', 'bars and beats', 'half beats']

/** How it is counted, on the screen and aloud. */
export function CountingChoice({ player, label }: { readonly player: Player; readonly label: string }) {
  const counting = useStore(player.store, (state) => state.session.counting)
  const { dance } = useStore(player.store, (state) => state.lesson)
  const noSlows = dance.signs.S === null
  return (
    <Choice
      className="counting-choice"
      label={label}
      value={counting}
      options={COUNTINGS.map((one) =>
        one === 'slows and quicks' && noSlows
          ? { value: one, text: labels.noSlows(dance), disabled: true }
          : { value: one, text: labels.countingName(one) },
      )}
      choose={(value) => player.change((session) => withCounting(session, value))}
    />
  )
}
