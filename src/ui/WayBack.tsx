import { useStore } from 'zustand'
import type { Along } from '../along.ts'
import { defaultTempo } from '../dance/defaultTempo.ts'
import { speedOf } from '../dance/speed.ts'
import type { Player } from '../player.ts'
import type { Practice } from '../practice.ts'
import { withSteps } from '../session/session.ts'
import { loopWords } from '../words/loopWords.ts'

type Props = { readonly player: Player; readonly practice: Practice; readonly along: Along }

/** From whatever is practised back to the whole figure at full tempo, in one press. */
export function WayBack({ player, practice, along }: Props) {
  const climbs = useStore(practice.store, ({ ladder }) => ladder !== null)
  const keeps = useStore(player.store, (state) => state.along !== null)
  const isWhole = useStore(
    player.store,
    ({ session }) => session.loop && session.steps === null && session.part === null,
  )
  const isFull = useStore(
    player.store,
    ({ session, lesson }) => Math.abs(speedOf(lesson.dance, session.barsPerMinute) - 1) < 1e-9,
  )
  const isThere = !climbs && !keeps && isWhole && isFull
  return (
    <button
      type="button"
      className="quiet-button"
      title={loopWords.wayBackHint}
      aria-disabled={isThere}
      onClick={() => {
        practice.stop()
        practice.acknowledge()
        if (keeps) along.stop()
        if (!isWhole) {
          player.change((session) => withSteps(session, null))
          player.setLoop(true)
        }
        player.setTempo(defaultTempo(player.store.getState().lesson.dance).barsPerMinute)
      }}
    >
      {loopWords.wayBack}
    </button>
  )
}
