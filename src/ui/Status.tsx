import { useEffect, useRef } from 'react'
import type { Player } from '../player.ts'
import { countWords } from '../words/countWords.ts'

/** Says the count, one sentence, to those who cannot see it: after a pause or a step, never while playing. */
export function Status({ player }: { readonly player: Player }) {
  const home = useRef<HTMLOutputElement>(null)
  useEffect(() => {
    let waiting = false
    let was = player.store.getState().session.beat
    const speak = (): void => {
      waiting = false
      const { lesson, playing } = player.store.getState()
      if (home.current !== null && !playing) home.current.textContent = `${countWords(lesson, player.gridBeat())}.`
    }
    const stopGrid = player.onGrid((at) => {
      if (player.store.getState().playing || at === was) return
      was = at
      // A pause that a step brings along and the step itself are one sentence.
      if (!waiting) queueMicrotask(speak)
      waiting = true
    })
    let played = false
    const stopStore = player.store.subscribe(({ playing }) => {
      if (playing && !played) {
        was = Number.NaN as typeof was
        if (home.current !== null) home.current.textContent = ''
      }
      played = playing
    })
    return () => {
      stopGrid()
      stopStore()
    }
  }, [player])
  return <output className="for-ears" ref={home} />
}
