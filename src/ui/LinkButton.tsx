import { useEffect, useRef } from 'react'
import { useStore } from 'zustand'
import type { LinkedFigure } from '../keep/link.ts'
import { linkedFigure, linkOf } from '../keep/linkOf.ts'
import type { Player } from '../player.ts'
import { openWords } from '../words/openWords.ts'
import { Icon } from './Icon.tsx'

type Props = {
  readonly player: Player
  /** The fragment made, null: too long for one. */
  readonly made: (fragment: string | null) => void
}

/** A link to what is on the screen. */
export function LinkButton({ player, made }: Props) {
  const figure = useStore(player.store, (state) => state.lesson.figure)
  const ready = useRef<LinkedFigure | null>(null)
  // Packed before anybody presses: browsers let a page copy only at once after a press.
  useEffect(() => {
    let gone = false
    ready.current = null
    if (figure.id === player.store.getState().session.figure) {
      void linkedFigure(player).then((linked) => {
        if (!gone) ready.current = linked
      })
    }
    return () => {
      gone = true
    }
  }, [player, figure])
  const press = async (): Promise<void> => {
    player.pause()
    const linked = ready.current
    made(linkOf(player, linked ?? (await linkedFigure(player))))
  }
  return (
    <button
      type="button"
      className="quiet-button bar-button bar-button-known"
      title={openWords.linkHint}
      aria-label={openWords.link}
      onClick={press}
    >
      <Icon name="link" />
      <span className="bar-button-word">{openWords.link}</span>
    </button>
  )
}
