import { type Seconds, seconds } from '../units.ts'

type Props = {
  readonly word: string
  readonly hint?: string
  /** @param at seconds of the page's clock */
  readonly tap: (at: Seconds) => void
}

/** To be tapped on the beat: it counts as the finger or the key comes down, by the event's own time. */
export function TapButton({ word, hint, tap }: Props) {
  const tapAt = (timeStamp: number): void => tap(seconds(timeStamp / 1000))
  return (
    <button
      type="button"
      className="quiet-button practice-tap"
      title={hint}
      onPointerDown={({ timeStamp, button }) => button === 0 && tapAt(timeStamp)}
      onKeyDown={({ key, timeStamp, repeat }) => (key === ' ' || key === 'Enter') && !repeat && tapAt(timeStamp)}
    >
      {word}
    </button>
  )
}
