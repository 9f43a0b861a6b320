import type { Player } from '../player.ts'
import type { Beat } from '../units.ts'
import { LiveText } from './LiveText.tsx'

type Props = {
  readonly player: Player
  readonly read: (at: Beat) => string
  /** Every beat that can be shown. */
  readonly beats: readonly Beat[]
  /** Nothing is shown, but the room is kept. */
  readonly hidden?: boolean
}

/** Enough of the longest to be sure of the tallest, whatever the letters' widths. */
const KEPT = 4

/**
 * A text that follows the beat in room enough for the longest it will be, so that the picture above it never moves while
 * it changes.
 */
export function SteadyText({ player, read, beats, hidden = false }: Props) {
  const longest = [...new Set(beats.map(read))].sort((a, b) => b.length - a.length).slice(0, KEPT)
  return (
    <span className="steady">
      {longest.map((text) => (
        <span key={text} className="steady-room" aria-hidden="true">
          {text}
        </span>
      ))}
      {hidden ? null : <LiveText player={player} read={read} />}
    </span>
  )
}
