import { type ReactNode, useLayoutEffect, useRef } from 'react'
import { useStore } from 'zustand'
import type { Practice } from '../practice.ts'
import { labels } from '../words/labels.ts'
import { ladderWords } from '../words/ladderWords.ts'
import { Climb } from './Climb.tsx'
import { BEAT_SLIDER } from './keyPlace.ts'

/** On the way up while the sheet is closed: where one is, and what holds it, takes it back and sends it up. */
export function ClimbBar({ practice }: { readonly practice: Practice }) {
  const { ladder, ended } = useStore(practice.store)
  if (ladder === null && !ended) return null
  return <Bar>{ladder === null ? <Ended practice={practice} /> : <Climb practice={practice} ladder={ladder} />}</Bar>
}

/** Somebody has touched the tempo. It is said where it climbed, and nothing moves under the finger. */
function Ended({ practice }: { readonly practice: Practice }) {
  return (
    <>
      <p role="status">{ladderWords.ended}</p>
      <button type="button" className="quiet-button" onClick={() => practice.start()}>
        {ladderWords.climbOn}
      </button>
      <button type="button" className="quiet-button" onClick={practice.stop}>
        {labels.close}
      </button>
    </>
  )
}

function Bar({ children }: { readonly children: ReactNode }) {
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
      {children}
    </section>
  )
}
