import { useLayoutEffect, useRef } from 'react'
import { useStore } from 'zustand'
import type { Practice } from '../practice.ts'
import { labels } from '../words/labels.ts'
import { ladderWords } from '../words/ladderWords.ts'
import { Climb } from './Climb.tsx'
import { ClimbStatus } from './ClimbStatus.tsx'
import { GETS_KEYS, InPlace } from './InPlace.tsx'
import { BEAT_SLIDER } from './keyPlace.ts'

type Props = { readonly practice: Practice }

/** On the way up while the sheet is closed: where one is, and what holds it, takes it back and sends it up. */
export function ClimbBar({ practice }: Props) {
  const isHere = useStore(practice.store, ({ ladder, ended }) => ladder !== null || ended !== null)
  return isHere ? <Bar practice={practice} /> : null
}

function Bar({ practice }: Props) {
  const ladder = useStore(practice.store, (state) => state.ladder)
  const home = useRef<HTMLElement>(null)
  const hadKeys = useRef(false)
  // When it goes away with the keyboard in it, the beat's slider has the keys, as after the other buttons of the page.
  useLayoutEffect(() => {
    const element = home.current
    return () => {
      if (element?.contains(document.activeElement)) {
        document.getElementById(BEAT_SLIDER)?.focus({ preventScroll: true })
      }
    }
  }, [])
  return (
    <section className="climb-bar" aria-label={ladderWords.title} ref={home}>
      <ClimbStatus practice={practice} />
      {ladder === null ? (
        <InPlace key="ended" hadKeys={hadKeys}>
          <Ended practice={practice} />
        </InPlace>
      ) : (
        <InPlace key="climb" hadKeys={hadKeys}>
          <Climb practice={practice} ladder={ladder} />
        </InPlace>
      )}
    </section>
  )
}

/** Somebody has touched the tempo. It is said where it climbed, and nothing moves under the finger. */
function Ended({ practice }: Props) {
  return (
    <div className="climb-ended">
      <button type="button" className="quiet-button" onClick={() => practice.start()} {...GETS_KEYS}>
        {ladderWords.climbOn}
      </button>
      <button type="button" className="quiet-button" onClick={practice.stop}>
        {labels.close}
      </button>
    </div>
  )
}
