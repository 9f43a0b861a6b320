import { useEffect, useRef } from 'react'
import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import { openWords } from '../words/openWords.ts'
import { Icon } from './Icon.tsx'

type Props = {
  readonly player: Player
  /** The fragment made, null: too long for one. */
  readonly made: (fragment: string | null) => void
  /** What makes it could not be fetched. */
  readonly failed: () => void
}

/** Milliseconds. */
const AFTER_THE_PICTURE = 500

/** What makes the fragment of whatever is on the screen then; null: too long for one. */
async function prepared(player: Player): Promise<() => string | null> {
  const { linkedFigure, linkOf } = await import('../keep/linkOf.ts')
  const linked = await linkedFigure(player)
  return () => linkOf(player, linked)
}

/** A link to what is on the screen. */
export function LinkButton({ player, made, failed }: Props) {
  const figure = useStore(player.store, (state) => state.lesson.figure)
  const ready = useRef<(() => string | null) | null>(null)
  // Packed before anybody presses: browsers let a page copy only at once after a press. Not before the first picture, which
  // needs none of it.
  useEffect(() => {
    let gone = false
    ready.current = null
    const prepare = async (): Promise<void> => {
      if (figure.id !== player.store.getState().session.figure) return
      const link = await prepared(player)
      if (!gone) ready.current = link
    }
    const later = setTimeout(() => void prepare().catch(() => {}), AFTER_THE_PICTURE)
    return () => {
      gone = true
      clearTimeout(later)
    }
  }, [player, figure])
  const press = async (): Promise<void> => {
    player.pause()
    const link = ready.current ?? (await prepared(player).catch(() => null))
    if (link === null) failed()
    else made(link())
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
