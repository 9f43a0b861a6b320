import { type Ref, useRef } from 'react'
import { type Seconds, seconds } from '../units.ts'

type Props = {
  readonly word: string
  readonly hint?: string
  /** @param at seconds of the page's clock */
  readonly tap: (at: Seconds) => void
  readonly button?: Ref<HTMLButtonElement>
}

/** A press without a finger or a key: speech, or what presses for somebody. It has no time but its own. */
const NOBODY = 0

/** To be tapped on the beat: it counts as the finger or the key comes down, by the event's own time. */
export function TapButton({ word, hint, tap, button: home }: Props) {
  const keyed = useRef(false)
  const tapAt = (timeStamp: number): void => tap(seconds(timeStamp / 1000))
  return (
    <button
      type="button"
      className="quiet-button practice-tap"
      title={hint}
      ref={home}
      onPointerDown={({ timeStamp, button }) => button === 0 && tapAt(timeStamp)}
      onClick={({ detail, timeStamp }) => {
        if (detail === NOBODY && !keyed.current) tapAt(timeStamp)
        keyed.current = false
      }}
      onKeyDown={({ key, timeStamp, repeat }) => {
        if (key !== ' ' && key !== 'Enter') return
        // The browser makes a click of it as well.
        keyed.current = true
        if (!repeat) tapAt(timeStamp)
      }}
    >
      {word}
    </button>
  )
}
