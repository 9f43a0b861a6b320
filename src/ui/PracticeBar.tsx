import type { Along } from '../along.ts'
import type { Player } from '../player.ts'
import type { Practice } from '../practice.ts'
import { AlongBar } from './AlongBar.tsx'
import { ClimbBar } from './ClimbBar.tsx'

export type PracticeBarProps = { readonly player: Player; readonly practice: Practice; readonly along: Along }

/** What goes on of practice while its sheet is closed. Nobody climbs with music: one of the two is empty, or both. */
export function PracticeBar({ player, practice, along }: PracticeBarProps) {
  return (
    <>
      <ClimbBar practice={practice} />
      <AlongBar player={player} along={along} />
    </>
  )
}
