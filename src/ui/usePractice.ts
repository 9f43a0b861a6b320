import { useCallback, useEffect, useRef, useState } from 'react'
import type { Player } from '../player.ts'
import type { Practice } from '../practice.ts'

/** null: the browser forbids it. */
function shelf(): Storage | null {
  try {
    return localStorage
  } catch {
    return null
  }
}

/**
 * What climbs from slow to full tempo; it comes when it is first asked for, and goes on when its sheet is closed.
 * @param failed told when it cannot be fetched; must stay the same function
 */
export function usePractice(
  player: Player,
  failed: () => void,
): { readonly practice: Practice | null; readonly want: () => void } {
  const [practice, setPractice] = useState<Practice | null>(null)
  const asked = useRef(false)
  const want = useCallback(() => {
    if (asked.current) return
    asked.current = true
    Promise.all([import('../practice.ts'), import('../keep/keptLadders.ts')]).then(
      ([{ createPractice }, { keptLadders }]) => setPractice(createPractice(player, keptLadders(shelf()))),
      () => {
        asked.current = false
        failed()
      },
    )
  }, [player, failed])
  useEffect(() => () => practice?.close(), [practice])
  return { practice, want }
}
