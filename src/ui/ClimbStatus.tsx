import { useStore } from 'zustand'
import type { Practice } from '../practice.ts'
import { rungOf } from '../session/ladder.ts'
import { ladderWords } from '../words/ladderWords.ts'

/** Where one is on the way up, or why nobody climbs any more; it stands there before it says something, so that it is read. */
export function ClimbStatus({ practice }: { readonly practice: Practice }) {
  const { ladder, ended } = useStore(practice.store)
  const why = ended === null ? '' : ladderWords.ended[ended]
  return <p role="status">{ladder === null ? why : ladderWords.where(rungOf(ladder))}</p>
}
