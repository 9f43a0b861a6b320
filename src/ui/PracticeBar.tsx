import type { Along } from '../along.ts'
import type { Player } from '../player.ts'
import type { Practice } from '../practice.ts'
import { AlongBar } from './AlongBar.tsx'
import { ClimbBar } from './ClimbBar.tsx'

export type PracticeBarProps = { readonly player: Player; readonly practice: Practice; readonly along: Along }

/** What goes on of practice while its sheet is closed. Whoever keeps to music does not climb: one of the two at most is seen. */
export function PracticeBar({ player, practice, along }: PracticeBarProps) {
  return (
    <>
      <ClimbBar player={player} practice={practice} along={along} />
      <AlongBar player={player} along={along} />
    </>
  )
}
