import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import { labels } from '../words/labels.ts'

/** What can be asked of the pictures as they stand; null: of one picture nothing. */
export function useQuestion(player: Player): string | null {
  const { panels, order } = useStore(player.store, (state) => state.session)
  return labels.ask(order.flatMap((panel) => panels[panel]?.way.kind ?? []))
}
