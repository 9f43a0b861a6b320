import { useStore } from 'zustand'
import type { Along } from '../along.ts'
import type { Player } from '../player.ts'
import { tapWords } from '../words/tapWords.ts'
import { SettledStatus } from './SettledStatus.tsx'
import { useKeysBack } from './useKeysBack.ts'

type Props = { readonly player: Player; readonly along: Along }

/** While it keeps to music and the sheet is closed: that it does, what puts it right, and the end of it. */
export function AlongBar({ player, along }: Props) {
  const isAlong = useStore(player.store, (state) => state.along !== null)
  return isAlong ? <Bar along={along} /> : null
}

function Bar({ along }: { readonly along: Along }) {
  const home = useKeysBack()
  const nudge = useStore(along.store, (state) => state.taps.nudge)
  return (
    <section className="climb-bar" aria-label={tapWords.along} ref={home}>
      <SettledStatus text={[tapWords.withMusic, tapWords.nudged(nudge)].filter((part) => part !== '').join(' ')} />
      <div className="practice-buttons">
        <button type="button" className="toggle" onClick={() => along.nudge(-1)}>
          {tapWords.earlierShort}
        </button>
        <button type="button" className="toggle" onClick={() => along.nudge(1)}>
          {tapWords.laterShort}
        </button>
        <button type="button" className="toggle" onClick={along.stop}>
          {tapWords.leave}
        </button>
      </div>
    </section>
  )
}
