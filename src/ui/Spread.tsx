import { useMemo } from 'react'
import { useStore } from 'zustand'
import { beatsPerMinute } from '../dance/beatsPerMinute.ts'
import { playedTempoRange } from '../dance/playedTempoRange.ts'
import type { Player } from '../player.ts'
import { knockOnChart, type Slip, turningTempo } from '../transfer/knockOn.ts'
import { knockOnWords } from '../words/knockOnWords.ts'
import { labels } from '../words/labels.ts'
import { spreadWords } from '../words/spreadWords.ts'
import { TempoControl } from './TempoControl.tsx'

/** Tempi in the chart, from the slowest to the quickest that can be played. */
const ROWS = 8

/** How far one slip spreads: at the tempo at hand, in words, and at others, as a chart of steps and tempi. */
export function Spread({ player, slip }: { readonly player: Player; readonly slip: Slip }) {
  const { schedule, dance } = useStore(player.store, (state) => state.lesson.once)
  const bars = useStore(player.store, (state) => state.session.barsPerMinute)
  const shortest = useStore(player.store, (state) => state.session.shortest)
  const { at, by } = slip
  const tempi = useMemo(() => {
    const { from, to } = playedTempoRange(dance)
    return Array.from({ length: ROWS }, (_, row) => from + ((to - from) * row) / (ROWS - 1))
  }, [dance])
  const rows = useMemo(
    () =>
      knockOnChart(
        schedule,
        { at, by },
        shortest,
        tempi.map((tempo) => beatsPerMinute(dance, tempo)),
      ),
    [schedule, at, by, shortest, tempi, dance],
  )
  const turning = useMemo(() => {
    const { from, to } = playedTempoRange(dance)
    const inBeats = { from: beatsPerMinute(dance, from), to: beatsPerMinute(dance, to) }
    return turningTempo(schedule, { at, by }, shortest, inBeats)
  }, [schedule, at, by, shortest, dance])
  const now = knockOnChart(schedule, slip, shortest, [beatsPerMinute(dance, bars)])[0]
  const nearest = tempi.reduce(
    (best, tempo, row) => (Math.abs(tempo - bars) < Math.abs((tempi[best] ?? 0) - bars) ? row : best),
    0,
  )
  return (
    <div className="spread">
      <p>{now === undefined ? '' : knockOnWords.now(schedule, slip, now)}</p>
      <TempoControl player={player} />
      <p>{knockOnWords.turning(schedule, slip, turning)}</p>
      <p className="sheet-note">{spreadWords.caution}</p>
      <details>
        <summary>{spreadWords.chart}</summary>
        <div className="spread-chart">
          <table>
            <caption>{spreadWords.caption}</caption>
            <thead>
              <tr>
                <th scope="col">{spreadWords.tempo}</th>
                {schedule.actions.slice(at).map(({ index }) => (
                  <th scope="col" key={index}>
                    {index + 1}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map(({ late }, row) => {
                const tempo = tempi[row] ?? 0
                return (
                  <tr key={tempo} aria-current={row === nearest ? 'true' : undefined}>
                    <th scope="row">
                      <button
                        type="button"
                        onClick={() => player.setTempo(tempo)}
                        aria-label={labels.barsPerMinute(tempo)}
                      >
                        {spreadWords.bars(tempo)}
                      </button>
                    </th>
                    {late.map((beats, k) => (
                      // A step has one place in the chart.
                      // biome-ignore lint/suspicious/noArrayIndexKey: steps have no other name, and their order is fixed
                      <td key={k} data-late={beats > 0 ? 'yes' : 'no'}>
                        {spreadWords.late(beats)}
                      </td>
                    ))}
                  </tr>
                )
              })}
            </tbody>
          </table>
        </div>
      </details>
    </div>
  )
}
