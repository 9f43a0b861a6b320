import { useStore } from 'zustand'
import type { Figure } from '../figure/figure.ts'
import type { Player } from '../player.ts'
import { withShortest } from '../session/session.ts'
import { dependsOnTempo, type Fault, wayOf } from '../transfer/faults.ts'
import { shortestTimes } from '../transfer/shortestTimes.ts'
import type { Way } from '../transfer/way.ts'
import { faultWords } from '../words/faultWords.ts'
import { measureWords } from '../words/measureWords.ts'
import { performanceWords } from '../words/performanceWords.ts'
import { shownLine } from '../words/shownLine.ts'
import { Choice } from './Choice.tsx'
import { Spread } from './Spread.tsx'
import { TempoControl } from './TempoControl.tsx'

type Props = {
  readonly player: Player
  /** Index into the panels. */
  readonly panel: number
  readonly fault: Fault
  readonly way: Way
  readonly amount: number | null
  readonly set: (way: Way) => void
  /** Where it is best seen. */
  readonly demo: Figure | undefined
  readonly openNumbers: () => void
}

/** What is offered, with what is set, which a link may have set otherwise. */
const offered = (choices: readonly number[], amount: number): number[] =>
  [...new Set([...choices, amount])].sort((a, b) => a - b)

/** The chosen fault: what is seen, what helps, how much of it, and on which steps. */
export function FaultDetails({ player, panel, fault, way, amount, set, demo, openNumbers }: Props) {
  const lesson = useStore(player.store, (state) => state.lesson)
  const shortest = useStore(player.store, (state) => state.session.shortest)
  const { kind } = fault
  const on = 'on' in way ? (way.on ?? []) : []
  const toggle = (index: number): void => {
    const next = fault.on === 'one' ? [index] : on.includes(index) ? on.filter((one) => one !== index) : [...on, index]
    set(wayOf(kind, amount ?? undefined, next.length === lesson.once.schedule.actions.length ? [] : next))
  }
  const isOn = (index: number): boolean => (fault.on === 'one' && on.length === 0 ? index === 0 : on.includes(index))
  return (
    <div className="fault-details">
      <p>{faultWords.seen(kind)}</p>
      <p>{faultWords.remedy(kind)}</p>
      <p className="sheet-note">{faultWords.source(fault)}</p>
      {fault.amount === null ||
      amount === null ||
      (kind === 'early' && lesson.figure.convention === 'struck') ? null : (
        <Choice
          label={faultWords.amount}
          value={amount}
          options={offered(fault.amount.choices, amount).map((value) => ({
            value,
            text: faultWords.amountText(kind, value),
          }))}
          choose={(value) => set(wayOf(kind, value, on))}
        />
      )}
      {fault.on === 'all' ? null : (
        <fieldset className="sheet-group fault-steps">
          <legend>{faultWords.steps[fault.on]}</legend>
          {fault.on === 'chosen' ? (
            <button
              type="button"
              className="toggle"
              aria-pressed={on.length === 0}
              onClick={() => set(wayOf(kind, amount ?? undefined))}
            >
              {faultWords.allSteps}
            </button>
          ) : null}
          {lesson.once.schedule.actions.map(({ index, sign }) => (
            <button
              key={index}
              type="button"
              className="toggle"
              aria-pressed={isOn(index)}
              onClick={() => toggle(index)}
            >
              {faultWords.step(index, sign)}
            </button>
          ))}
        </fieldset>
      )}
      {dependsOnTempo(way) ? (
        <Choice
          label={faultWords.shortest}
          value={shortest}
          options={Object.values(shortestTimes).map((value) => ({ value, text: faultWords.shortestText(value) }))}
          choose={(value) => player.change((session) => withShortest(session, value))}
        />
      ) : null}
      {kind === 'slip' ? null : <p>{performanceWords(lesson.once, panel)}</p>}
      {dependsOnTempo(way) && kind !== 'slip' ? <TempoControl player={player} /> : null}
      {kind === 'slip' && 'by' in way ? <Spread player={player} slip={{ at: on[0] ?? 0, by: way.by }} /> : null}
      <button type="button" className="quiet-button" onClick={openNumbers}>
        {measureWords.open}
      </button>
      {demo === undefined || demo.id === lesson.figure.id ? null : (
        <button type="button" className="fault-demo" onClick={() => player.choose(demo.id)}>
          {faultWords.demo(shownLine(demo.title))}
        </button>
      )}
    </div>
  )
}
