import { useRef } from 'react'
import { useStore } from 'zustand'
import type { Along } from '../along.ts'
import type { Player } from '../player.ts'
import type { Practice } from '../practice.ts'
import { labels } from '../words/labels.ts'
import { ladderWords } from '../words/ladderWords.ts'
import { Climb } from './Climb.tsx'
import { ClimbStatus } from './ClimbStatus.tsx'
import { GETS_KEYS, InPlace } from './InPlace.tsx'
import { useKeysBack } from './useKeysBack.ts'
import { WayBack } from './WayBack.tsx'

type Props = { readonly player: Player; readonly practice: Practice; readonly along: Along }

/** On the way up while the sheet is closed: where one is, and what holds it, takes it back and sends it up. */
export function ClimbBar(props: Props) {
  const isHere = useStore(props.practice.store, ({ ladder, ended }) => ladder !== null || ended !== null)
  return isHere ? <Bar {...props} /> : null
}

function Bar({ player, practice, along }: Props) {
  const ladder = useStore(practice.store, (state) => state.ladder)
  const home = useKeysBack()
  const hadKeys = useRef(false)
  return (
    <section className="climb-bar" aria-label={ladderWords.title} ref={home}>
      <ClimbStatus practice={practice} />
      {ladder === null ? (
        <InPlace key="ended" hadKeys={hadKeys}>
          <Ended player={player} practice={practice} along={along} />
        </InPlace>
      ) : (
        <InPlace key="climb" hadKeys={hadKeys}>
          <Climb practice={practice} ladder={ladder} />
        </InPlace>
      )}
    </section>
  )
}

/** It has ended, which is said where it climbed; and what may come next. */
function Ended({ player, practice, along }: Props) {
  return (
    <div className="climb-ended">
      <button type="button" className="quiet-button" onClick={() => practice.start()} {...GETS_KEYS}>
        {ladderWords.climbOn}
      </button>
      <WayBack player={player} practice={practice} along={along} />
      <button type="button" className="quiet-button" onClick={practice.acknowledge}>
        {labels.close}
      </button>
    </div>
  )
}
