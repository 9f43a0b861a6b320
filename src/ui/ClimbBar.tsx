import { useLayoutEffect, useRef } from 'react'
import { useStore } from 'zustand'
import type { Practice } from '../practice.ts'
import type { Ladder } from '../session/ladder.ts'
import { ladderWords } from '../words/ladderWords.ts'
import { Climb } from './Climb.tsx'
import { BEAT_SLIDER } from './keyPlace.ts'

/** On the way up while the sheet is closed: where one is, and what holds it, takes it back and sends it up. */
export function ClimbBar({ practice }: { readonly practice: Practice }) {
  const ladder = useStore(practice.store, (state) => state.ladder)
  return ladder === null ? null : <Bar practice={practice} ladder={ladder} />
}

function Bar({ practice, ladder }: { readonly practice: Practice; readonly ladder: Ladder }) {
  const home = useRef<HTMLElement>(null)
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
      <Climb practice={practice} ladder={ladder} />
    </section>
  )
}
