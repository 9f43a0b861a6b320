import { type CSSProperties, useId } from 'react'
import { useStore } from 'zustand'
import { playedTempoRange } from '../dance/playedTempoRange.ts'
import { atSpeed, bySpeed, SPEED_STEP, speedOf } from '../dance/speed.ts'
import type { Player } from '../player.ts'
import { labels } from '../words/labels.ts'

/** Bars a minute. */
const STEP = 0.5
/** One tap away; 1 = the dance's usual tempo. */
const SPEEDS = [0.5, 0.6, 0.75, 1]

/** How fast: in bars a minute, as the trade says it, and what that is in beats and seconds. */
export function TempoControl({ player }: { readonly player: Player }) {
  const id = useId()
  const bars = useStore(player.store, (state) => state.session.barsPerMinute)
  const dance = useStore(player.store, (state) => state.lesson.dance)
  const range = playedTempoRange(dance)
  const words = labels.barsPerMinute(bars)
  const [min, max] = [Math.floor(range.from / STEP) * STEP, Math.ceil(range.to / STEP) * STEP]
  /** Where a tempo lies on the slider, 0 to 1. */
  const along = (tempo: number): number => (tempo - min) / (max - min)
  const isSet = (speed: number): boolean => Math.abs(speedOf(dance, bars) - speed) < 1e-9
  return (
    <>
      <div className="tempo">
        <div className="tempo-head">
          <label htmlFor={id}>{labels.tempo}</label>{' '}
          <b>{SPEEDS.some(isSet) ? words : labels.tempoAndSpeed(words, speedOf(dance, bars))}</b>
        </div>
        <div className="tempo-run">
          <Step player={player} by={-SPEED_STEP} />
          {/* Its ends are rounded outwards to whole steps, so that 100 % is one of them; the session holds the exact ends. */}
          <input
            id={id}
            type="range"
            min={min}
            max={max}
            step={STEP}
            value={bars}
            // What is danced, thicker on the track.
            style={{ '--danced-from': along(dance.tempo.from), '--danced-to': along(dance.tempo.to) } as CSSProperties}
            aria-valuetext={`${words}, ${labels.speed(speedOf(dance, bars))}`}
            onChange={(event) => player.setTempo(event.currentTarget.valueAsNumber)}
          />
          <Step player={player} by={SPEED_STEP} />
        </div>
        <div className="tempo-speeds">
          {SPEEDS.map((speed) => (
            <button
              key={speed}
              type="button"
              className="tempo-speed"
              aria-label={labels.speedSpoken(speed, dance)}
              aria-pressed={isSet(speed)}
              onClick={() => player.setTempo(atSpeed(dance, speed))}
            >
              {labels.speed(speed)}
            </button>
          ))}
        </div>
      </div>
      <p className="tempo-facts">{labels.tempoFacts(bars, dance)}</p>
    </>
  )
}

/** To the next whole ten per cent. */
function Step({ player, by }: { readonly player: Player; readonly by: number }) {
  const press = (): void => {
    const { session, lesson } = player.store.getState()
    player.setTempo(bySpeed(lesson.dance, session.barsPerMinute, by, SPEED_STEP))
  }
  return (
    <button
      type="button"
      className="tempo-speed"
      aria-label={labels.speedStep(by)}
      title={labels.speedStep(by)}
      onClick={press}
    >
      {by < 0 ? '−' : '+'}
    </button>
  )
}
