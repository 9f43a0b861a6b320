import { useEffect } from 'react'
import { useStore } from 'zustand'
import { secondsPerBeat } from '../dance/secondsPerBeat.ts'
import type { Player } from '../player.ts'
import { actingFeet } from '../transfer/actingFeet.ts'
import { momentErrors } from '../transfer/comparison.ts'
import { actionWords } from '../words/actionWords.ts'
import { labels } from '../words/labels.ts'
import { measureWords } from '../words/measureWords.ts'
import { errorWords } from '../words/momentWords.ts'
import { performanceWords } from '../words/performanceWords.ts'
import { panelName } from './panelName.ts'
import { useModal } from './useModal.ts'

type Props = {
  readonly player: Player
  /** Index into the panels. */
  readonly panel: number
  readonly close: () => void
}

const MOMENTS = ['leaves', 'split', 'full'] as const

/** How far every moment of a performance is from the plan, in beats and in milliseconds. */
export function MeasuresDialog({ player, panel: wanted, close }: Props) {
  const dialog = useModal(close)
  const lesson = useStore(player.store, (state) => state.lesson)
  const tempo = useStore(player.store, (state) => state.session.barsPerMinute)
  const names = useStore(player.store, (state) => state.session.names)
  // It would tell which picture is which.
  useEffect(() => {
    if (!names) close()
  }, [names, close])
  const panel = Math.min(wanted, lesson.panels.length - 1)
  const performance = lesson.panels[panel]?.performance ?? lesson.ideal
  const errors = momentErrors(performance, lesson.ideal)
  const feet = actingFeet(lesson.schedule.figure, performance.carried)
  const perBeat = secondsPerBeat(lesson.dance, tempo)
  const name = panelName(lesson, panel, 0, true)
  return (
    <dialog className="notes table-dialog" ref={dialog} aria-label={measureWords.title(name)}>
      <button type="button" className="quiet-button notes-close" onClick={close}>
        {labels.close}
      </button>
      <h2>{measureWords.title(name)}</h2>
      <p>{performanceWords(lesson.once, panel)}</p>
      <p className="sheet-note">{measureWords.at(labels.barsPerMinute(tempo))}</p>
      <table>
        <thead>
          <tr>
            <th scope="col">{measureWords.step}</th>
            {MOMENTS.map((moment) => (
              <th scope="col" key={moment}>
                {measureWords.moment(moment)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {lesson.schedule.actions
            .slice(lesson.steps.first, lesson.steps.last + 1)
            .map(({ index, written, sign, action }) => {
              const own = errors.filter((error) => error.index === index)
              return own.length === 0 ? null : (
                <tr key={index}>
                  <th scope="row">{`${written + 1} (${sign}) ${actionWords(action, feet[index] ?? 'left')}`}</th>
                  {own.map(({ moment, by }) => (
                    <td key={moment}>
                      <b className="cell-name" aria-hidden="true">
                        {measureWords.moment(moment)}:{' '}
                      </b>
                      {errorWords(by)}
                      {by === 0 ? '' : `, ${measureWords.milliseconds(Math.abs(by) * perBeat * 1000)}`}
                    </td>
                  ))}
                </tr>
              )
            })}
        </tbody>
      </table>
      <p className="sheet-note">{measureWords.tolerance}</p>
    </dialog>
  )
}
