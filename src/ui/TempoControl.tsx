import { useId } from 'react'
import { useStore } from 'zustand'
import { defaultTempo } from '../dance/defaultTempo.ts'
import { playedTempoRange } from '../dance/playedTempoRange.ts'
import type { Player } from '../player.ts'
import { labels } from '../words/labels.ts'

/** Bars a minute. */
const STEP = 0.5

/** How fast: in bars a minute, as the trade says it, and what that is in beats and seconds. */
export function TempoControl({ player }: { readonly player: Player }) {
  const id = useId()
  const bars = useStore(player.store, (state) => state.session.barsPerMinute)
  const dance = useStore(player.store, (state) => state.lesson.dance)
  const range = playedTempoRange(dance)
  const words = labels.barsPerMinute(bars)
  return (
    <>
      <div className="tempo">
        <div className="tempo-head">
          <label htmlFor={id}>{labels.tempo}</label> <b>{words}</b>
        </div>
        {/* Its ends are rounded outwards to whole steps, so that 100 % is one of them; the session holds the exact ends. */}
        <input
          id={id}
          type="range"
          min={Math.floor(range.from / STEP) * STEP}
          max={Math.ceil(range.to / STEP) * STEP}
          step={STEP}
          value={bars}
          aria-valuetext={`${words}, ${labels.percent(bars, dance)}`}
          onChange={(event) => player.setTempo(event.currentTarget.valueAsNumber)}
        />
        <button
          type="button"
          className="tempo-usual"
          aria-label={labels.usualTempoSpoken(dance)}
          onClick={() => player.setTempo(defaultTempo(dance).barsPerMinute)}
        >
          {labels.usualTempo}
        </button>
      </div>
      <p className="tempo-facts">{labels.tempoFacts(bars, dance)}</p>
    </>
  )
}
