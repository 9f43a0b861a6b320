import { useCallback, useMemo } from 'react'
import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import { gridPoints } from '../timing/grid.ts'
import type { Beat } from '../units.ts'
import { conventionWords } from '../words/conventionWords.ts'
import { labels } from '../words/labels.ts'
import { SteadyText } from './SteadyText.tsx'

/** Where the weight is on this count, in the trade's words, and where that comes from. */
export function ConventionNow({ player }: { readonly player: Player }) {
  const lesson = useStore(player.store, (state) => state.lesson)
  const { range, schedule } = lesson
  const beats = useMemo(() => gridPoints(range.from, range.to, schedule.grid), [range, schedule])
  const action = useCallback((at: Beat) => conventionWords(lesson, at).action, [lesson])
  const source = useCallback((at: Beat) => conventionWords(lesson, at).source, [lesson])
  return (
    <section className="convention" aria-label={labels.conventionNow}>
      <p className="convention-action">
        <SteadyText player={player} read={action} beats={beats} />
      </p>
      <p className="convention-source">
        <SteadyText player={player} read={source} beats={beats} />
      </p>
    </section>
  )
}
