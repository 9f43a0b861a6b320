import { useStore } from 'zustand'
import type { Practice } from '../practice.ts'
import { ladderWords } from '../words/ladderWords.ts'
import { Climb } from './Climb.tsx'

/** On the way up while the sheet is closed: where one is, and what holds it, takes it back and sends it up. */
export function ClimbBar({ practice }: { readonly practice: Practice }) {
  const ladder = useStore(practice.store, (state) => state.ladder)
  if (ladder === null) return null
  return (
    <section className="climb-bar" aria-label={ladderWords.title}>
      <Climb practice={practice} ladder={ladder} />
    </section>
  )
}
