import { useCallback, useRef, useState } from 'react'
import type { Player } from '../player.ts'
import type { Beat } from '../units.ts'
import { useOnGrid } from './useOnGrid.ts'

type Props = {
  readonly player: Player
  /** The text at a grid point; must stay the same function until the text is to be another. */
  readonly read: (at: Beat) => string
}

/** A text that follows the beat. React renders it once, as it is then. */
export function LiveText({ player, read }: Props) {
  const [first] = useState(() => read(player.gridBeat()))
  const home = useRef<HTMLSpanElement>(null)
  const write = useCallback(
    (at: Beat) => {
      const text = read(at)
      if (home.current !== null && home.current.textContent !== text) home.current.textContent = text
    },
    [read],
  )
  useOnGrid(player, write)
  // What was built may not know it yet: how many pages there are depends on the screen.
  return (
    <span ref={home} suppressHydrationWarning={true}>
      {first}
    </span>
  )
}
