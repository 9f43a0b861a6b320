import { useLayoutEffect } from 'react'
import type { Player } from '../player.ts'
import type { Beat } from '../units.ts'

/**
 * Calls `write` now and at every grid point that is passed or sought, past React: what changes with the beat is written
 * into the page by hand, so that nothing is rendered while the figure plays.
 * @param write must stay the same from one rendering to the next unless it is to be called anew
 */
export function useOnGrid(player: Player, write: (at: Beat) => void): void {
  useLayoutEffect(() => {
    write(player.gridBeat())
    return player.onGrid(write)
  }, [player, write])
}
