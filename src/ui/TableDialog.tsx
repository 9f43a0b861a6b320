import { useEffect, useMemo, useRef, useState } from 'react'
import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import { calledAt } from '../timing/counts.ts'
import { gridPoints } from '../timing/grid.ts'
import { actingFeet } from '../transfer/actingFeet.ts'
import { actionWords } from '../words/actionWords.ts'
import { countWords } from '../words/countWords.ts'
import { labels } from '../words/labels.ts'
import { shownLine } from '../words/shownLine.ts'
import { showWords } from '../words/showWords.ts'
import { stageWords } from '../words/stageWords.ts'
import { panelName } from './panelName.ts'
import { useModal } from './useModal.ts'

type Props = { readonly player: Player; readonly close: () => void }

/** The figure as a table of half beats: the same as the picture, for whoever reads, or hears, rather than looks. */
export function TableDialog({ player, close }: Props) {
  const dialog = useModal(close)
  const lesson = useStore(player.store, (state) => state.lesson)
  const order = useStore(player.store, (state) => state.session.order)
  const [now, setNow] = useState(player.gridBeat())
  useEffect(() => player.onGrid(setNow), [player])
  const current = useRef<HTMLTableRowElement>(null)
  useEffect(() => current.current?.scrollIntoView({ block: 'center' }), [])
  const rows = useMemo(() => {
    const { schedule, figure, ideal, range } = lesson
    const feet = actingFeet(figure, ideal.carried)
    // Not beyond the last one's end: there the count goes on alone.
    const to = Math.max(...order.map((panel) => lesson.panels[panel]?.performance.curve.to ?? 0))
    return gridPoints(range.from, Math.min(range.to, to), schedule.grid).map((at) => {
      const called = calledAt(schedule, at)
      const begins = called !== null && Math.abs(called.called - at) < 1e-9
      return {
        at,
        count: countWords(lesson, at),
        step: begins ? `${called.index + 1}. ${actionWords(called.action, feet[called.index] ?? 'left')}` : '',
        stages: order.map((panel) => stageWords(lesson, panel, at)),
      }
    })
  }, [lesson, order])
  return (
    <dialog className="notes table-dialog" ref={dialog} aria-label={showWords.tableHint} onClose={close}>
      <button type="button" className="quiet-button notes-close" onClick={close}>
        {labels.close}
      </button>
      <h2>
        <bdi>{showWords.tableTitle(shownLine(lesson.figure.title))}</bdi>
      </h2>
      <table>
        <thead>
          <tr>
            <th scope="col">{showWords.tableColumns.count}</th>
            <th scope="col">{showWords.tableColumns.step}</th>
            {order.map((panel, place) => (
              <th scope="col" key={panel}>
                {panelName(lesson, panel, place, true)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ at, count, step, stages }) => (
            <tr key={at} aria-current={at === now ? 'step' : undefined} ref={at === now ? current : null}>
              <th scope="row">
                <button type="button" aria-label={showWords.goTo(count)} onClick={() => player.seek(at)}>
                  {count}
                </button>
              </th>
              <td>{step}</td>
              {stages.map((stage, place) => (
                <td key={order[place]}>{stage}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </dialog>
  )
}
