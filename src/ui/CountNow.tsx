import { useCallback, useRef, useState } from 'react'
import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import type { Beat } from '../units.ts'
import { countNow } from '../words/countWords.ts'
import { labels } from '../words/labels.ts'
import { useOnGrid } from './useOnGrid.ts'

/** The count, to be read across the room; dim where nothing is said aloud. */
export function CountNow({ player }: { readonly player: Player }) {
  const home = useRef<HTMLParagraphElement>(null)
  const lesson = useStore(player.store, (state) => state.lesson)
  const counting = useStore(player.store, (state) => state.session.counting)
  // React renders the count once, as it is then.
  const [first] = useState(() => countNow(lesson, counting, player.gridBeat()))
  const write = useCallback(
    (at: Beat) => {
      const element = home.current
      if (element === null) return
      const { text, called } = countNow(lesson, counting, at)
      if (element.textContent !== text) element.textContent = text
      if (element.classList.contains('count-called') !== called) element.classList.toggle('count-called', called)
    },
    [lesson, counting],
  )
  useOnGrid(player, write)
  return (
    <div className="count">
      <span className="for-ears">{labels.countNow}</span>
      <p className={first.called ? 'count-now count-called' : 'count-now'} ref={home}>
        {first.text}
      </p>
    </div>
  )
}
