import { type MouseEvent, useCallback } from 'react'
import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import { labels } from '../words/labels.ts'
import { showWords } from '../words/showWords.ts'
import { Icon } from './Icon.tsx'
import { BEAT_SLIDER } from './keyPlace.ts'

/** After a press with the mouse the keys are the slider's again, so that Space plays and does not press the button anew. */
function giveKeysBack(event: MouseEvent): void {
  const { nativeEvent } = event
  if (nativeEvent instanceof PointerEvent && nativeEvent.pointerType === 'mouse') {
    document.getElementById(BEAT_SLIDER)?.focus({ preventScroll: true })
  }
}

/** The one large button, and the steps beside it. */
export function Transport({ player }: { readonly player: Player }) {
  const playing = useStore(player.store, (state) => state.playing)
  const loop = useStore(player.store, (state) => state.session.loop)
  const steps = useStore(player.store, (state) => state.session.steps)
  const part = useStore(player.store, (state) => state.session.part)
  const whole = steps === null && part === null
  const grid = useStore(player.store, (state) => state.lesson.schedule.grid)
  const press = useCallback(
    (deed: () => void) => (event: MouseEvent) => {
      deed()
      giveKeysBack(event)
    },
    [],
  )
  return (
    <section className="transport" aria-label={labels.transport}>
      <button type="button" className="play" onClick={press(player.toggle)}>
        <Icon name={playing ? 'pause' : 'play'} />
        {/* Room for the longer word, or the row would move under the finger. */}
        <span className="steady">
          {[labels.play, labels.pause].map((word) => (
            <span key={word} className="steady-room" aria-hidden="true">
              {word}
            </span>
          ))}
          <span>{playing ? labels.pause : labels.play}</span>
        </span>
      </button>
      <button type="button" className="step" aria-label={labels.stepBack(grid)} onClick={press(() => player.step(-1))}>
        <Icon name="back" />
        <span aria-hidden="true">{labels.stepSign(grid)}</span>
      </button>
      <button
        type="button"
        className="step"
        aria-label={labels.stepForward(grid)}
        onClick={press(() => player.step(1))}
      >
        <span aria-hidden="true">{labels.stepSign(grid)}</span>
        <Icon name="forward" />
      </button>
      <button
        type="button"
        className="toggle loop-toggle"
        aria-pressed={loop && whole}
        aria-label={labels.loop}
        title={labels.loop}
        onClick={press(() => player.setLoop(!whole || !loop))}
      >
        <Icon name="loop" />
        <span aria-hidden="true">{labels.loopShort}</span>
      </button>
      <button
        type="button"
        className="toggle loop-toggle"
        aria-pressed={steps !== null}
        aria-label={showWords.stepsHint}
        title={showWords.stepsHint}
        onClick={press(() => player.toggleSteps())}
      >
        <Icon name="loop" />
        <span aria-hidden="true">{showWords.steps}</span>
      </button>
    </section>
  )
}
