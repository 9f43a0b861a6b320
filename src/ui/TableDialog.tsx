import { memo, useEffect, useMemo, useRef, useState } from 'react'
import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import { calledAt } from '../timing/counts.ts'
import { gridPoints } from '../timing/grid.ts'
import { actingFeet } from '../transfer/actingFeet.ts'
import type { Beat } from '../units.ts'
import { actionWords } from '../words/actionWords.ts'
import { countWords } from '../words/countWords.ts'
import { labels } from '../words/labels.ts'
import { numbered } from '../words/numbered.ts'
import { shownLine } from '../words/shownLine.ts'
import { showWords } from '../words/showWords.ts'
import { stageWords } from '../words/stageWords.ts'
import { wayShort } from '../words/wayName.ts'
import { panelName } from './panelName.ts'
import { useModal } from './useModal.ts'

type Props = { readonly player: Player; readonly close: () => void }

/** The figure as a table of half beats: the same as the picture, for whoever reads, or hears, rather than looks. */
export function TableDialog({ player, close }: Props) {
  const dialog = useModal(close)
  const lesson = useStore(player.store, (state) => state.lesson)
  const order = useStore(player.store, (state) => state.session.order)
  const names = useStore(player.store, (state) => state.session.names)
  // It would tell which picture is which.
  useEffect(() => {
    if (!names) close()
  }, [names, close])
  const [now, setNow] = useState(player.gridBeat())
  useEffect(() => player.onGrid(setNow), [player])
  const rows = useMemo(() => {
    const { schedule, ideal, range } = lesson
    const feet = actingFeet(schedule.figure, ideal.carried)
    // Not beyond the last one's end: there the count goes on alone.
    const to = Math.max(...order.map((panel) => lesson.panels[panel]?.performance.curve.to ?? 0))
    return gridPoints(range.from, Math.min(range.to, to), schedule.grid).map((at) => {
      const called = calledAt(schedule, at)
      const begins = called !== null && Math.abs(called.called - at) < 1e-9
      return {
        at,
        count: countWords(lesson, at),
        step: begins ? `${called.written + 1}. ${actionWords(called.action, feet[called.index] ?? 'left')}` : '',
        stages: order.map((panel) => stageWords(lesson, panel, at)),
      }
    })
  }, [lesson, order])
  const short = useMemo(
    () => numbered(order.map((panel) => wayShort(lesson.panels[panel]?.way.kind ?? 'in time'))),
    [order, lesson],
  )
  return (
    <dialog className="notes table-dialog" ref={dialog} aria-label={showWords.tableHint}>
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
          {rows.map((row) => (
            <HalfBeat key={row.at} row={row} now={row.at === now} names={short} go={player.seek} />
          ))}
        </tbody>
      </table>
    </dialog>
  )
}

type Row = {
  readonly at: Beat
  readonly count: string
  readonly step: string
  readonly stages: readonly string[]
}

type RowProps = {
  readonly row: Row
  /** It is the half beat that is shown. */
  readonly now: boolean
  /** Of the pictures, for a screen too narrow for columns. */
  readonly names: readonly string[]
  readonly go: (at: Beat) => void
}

/** Rendered anew only when it becomes the one that is shown, or no longer is. */
const HalfBeat = memo(function HalfBeat({ row: { at, count, step, stages }, now, names, go }: RowProps) {
  const home = useRef<HTMLTableRowElement>(null)
  useEffect(() => {
    if (now) home.current?.scrollIntoView({ block: 'nearest' })
  }, [now])
  return (
    <tr aria-current={now ? 'step' : undefined} ref={home}>
      <th scope="row">
        <button type="button" aria-label={showWords.goTo(count)} onClick={() => go(at)}>
          {count}
        </button>
      </th>
      <td>{step}</td>
      {stages.map((stage, place) => (
        <td key={names[place]}>
          <b className="cell-name" aria-hidden="true">
            {names[place]}:{' '}
          </b>
          {stage}
        </td>
      ))}
    </tr>
  )
})
