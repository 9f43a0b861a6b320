import { useStore } from 'zustand'
import type { Counting } from '../dance/dance.ts'
import type { Player } from '../player.ts'
import { DEFAULT_EARLY, DEFAULT_LATE, EARLY_PARTS, LATE_STEPS } from '../session/session.ts'
import { labels } from '../words/labels.ts'
import { openWords } from '../words/openWords.ts'
import { Choice } from './Choice.tsx'
import { TempoControl } from './TempoControl.tsx'

const COUNTINGS: readonly Counting[] = ['slows and quicks', 'bars and beats', 'half beats']

/** What a lesson can be varied by. */
export function Settings({ player, id }: { readonly player: Player; readonly id: string }) {
  const panels = useStore(player.store, (state) => state.session.panels)
  const counting = useStore(player.store, (state) => state.session.counting)
  const timing = useStore(player.store, (state) => state.session.timing)
  const { dance, figure } = useStore(player.store, (state) => state.lesson)
  const ways = panels.map(({ way }) => way)
  const late = ways.find((way) => way.kind === 'late')?.by ?? DEFAULT_LATE
  const early = ways.find((way) => way.kind === 'early')?.part ?? DEFAULT_EARLY
  const noSlows = dance.signs.S === null
  return (
    <section className="settings" id={id} aria-label={labels.settings}>
      <TempoControl player={player} />
      <Choice
        label={labels.late}
        value={late}
        options={LATE_STEPS.map((by) => ({ value: by, text: labels.lateBy(by) }))}
        choose={player.setLate}
      />
      <Choice
        label={labels.early}
        value={early}
        options={EARLY_PARTS.map((part) => ({ value: part, text: labels.earlyPart(part) }))}
        choose={player.setEarly}
      />
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
        choose={player.setCounting}
      />
    </section>
  )
}
