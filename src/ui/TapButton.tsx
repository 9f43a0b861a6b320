import { type PointerEvent, type Ref, useRef } from 'react'
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

/**
 * To be tapped on the beat: it counts as the finger or the key comes down, by the event's own time. A touch that the browser
 * takes for something else (a gesture of the system, the ball of the hand) is none: it counts only when the finger goes up
 * again, or the next one comes down.
 */
export function TapButton({ word, hint, tap, button: home }: Props) {
  const keyed = useRef(false)
  /** A touch that may still be taken back, and when it came, in milliseconds. */
  const touch = useRef<{ readonly id: number; readonly timeStamp: number } | null>(null)
  const tapAt = (timeStamp: number): void => tap(seconds(timeStamp / 1000))
  const count = (): void => {
    const { current } = touch
    touch.current = null
    if (current !== null) tapAt(current.timeStamp)
  }
  const down = ({ timeStamp, button, pointerId, pointerType }: PointerEvent): void => {
    if (button !== 0) return
    count()
    if (pointerType === 'touch' || pointerType === 'pen') touch.current = { id: pointerId, timeStamp }
    else tapAt(timeStamp)
  }
  return (
    <button
      type="button"
      className="quiet-button practice-tap"
      title={hint}
      ref={home}
      onPointerDown={down}
      onPointerUp={({ pointerId }) => touch.current?.id === pointerId && count()}
      onPointerCancel={({ pointerId }) => {
        if (touch.current?.id === pointerId) touch.current = null
      }}
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
