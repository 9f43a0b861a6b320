import './slow.css'
import { useMemo } from 'react'
import { useStore } from 'zustand'
import { secondsPerBeat } from '../dance/secondsPerBeat.ts'
import type { Player } from '../player.ts'
import { dynamicsStrips } from '../scene/dynamicsStrips.ts'
import { slowTwoWays } from '../scene/slowTwoWays.ts'
import { labels } from '../words/labels.ts'
import { slowWords } from '../words/slowWords.ts'
import { DynamicsStrip } from './DynamicsStrip.tsx'
import { along } from './linePlaces.ts'
import { floorOf, StepPicture } from './StepPicture.tsx'
import { useModal } from './useModal.ts'

type Props = { readonly player: Player; readonly close: () => void }

/** A slow filled in two ways, and three dynamics with one timing: in the dance and at the tempo at hand. */
export function SlowDialog({ player, close }: Props) {
  const dialog = useModal(close)
  const barsPerMinute = useStore(player.store, (state) => state.session.barsPerMinute)
  const dance = useStore(player.store, (state) => state.lesson.dance)
  const convention = useStore(player.store, (state) => state.lesson.figure.convention)
  const perBeat = secondsPerBeat(dance, barsPerMinute)
  const slow = useMemo(() => slowTwoWays(dance, convention, perBeat), [dance, convention, perBeat])
  const floor = useMemo(() => floorOf(slow.steps), [slow])
  return (
    <dialog className="notes slow-dialog" ref={dialog} aria-label={slowWords.title}>
      <button type="button" className="quiet-button notes-close" onClick={close}>
        {labels.close}
      </button>
      <h2>{slowWords.title}</h2>
      <p>{slowWords.intro(slow)}</p>
      <p>{slowWords.where(slow, dance, barsPerMinute)}</p>
      <div className="slow-parts">
        <div>
          <div className="slow-steps">
            {slow.steps.map((step) => (
              <figure key={step.name}>
                <StepPicture step={step} floor={floor} />
                <figcaption>
                  <b>{slowWords.name(step)}</b>
                  <span>{slowWords.sized(step)}</span>
                  <span>{slowWords.speed(step)}</span>
                  <span>{slowWords.ofQuick(step)}</span>
                  <span>{slowWords.still(step)}</span>
                </figcaption>
              </figure>
            ))}
          </div>
          <p className="slow-quiet">{slowWords.marks}</p>
          <p>{slowWords.caution}</p>
        </div>
        <DynamicsPart player={player} />
      </div>
    </dialog>
  )
}

/** Three dynamics, one below the other on one axis of beats. */
function DynamicsPart({ player }: { readonly player: Player }) {
  const dance = useStore(player.store, (state) => state.lesson.dance)
  const convention = useStore(player.store, (state) => state.lesson.figure.convention)
  const strips = useMemo(() => dynamicsStrips(dance, convention), [dance, convention])
  const [even] = strips.lines
  return (
    <div>
      <h2>{slowWords.dynamics}</h2>
      <p>{slowWords.dynamicsIntro}</p>
      {/* Music runs from left to right in every language. */}
      <div className="dynamics" dir="ltr">
        {strips.lines.map((line) => (
          <figure key={line.kind}>
            <figcaption>{slowWords.dynamicsName(line.kind)}</figcaption>
            {even === undefined ? null : <DynamicsStrip strips={strips} line={line} even={even} />}
          </figure>
        ))}
        <div className="dynamics-counts" aria-hidden="true">
          {strips.counts.map(({ text, at }) => (
            <span key={at} style={{ left: `${along(strips, at)}%` }}>
              {text}
            </span>
          ))}
        </div>
      </div>
      <p className="slow-quiet">{slowWords.dynamicsMarks}</p>
    </div>
  )
}
