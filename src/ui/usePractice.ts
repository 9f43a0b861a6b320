import { type ComponentType, useCallback, useEffect, useRef, useState } from 'react'
import type { Along } from '../along.ts'
import type { Player } from '../player.ts'
import type { Practice } from '../practice.ts'
import type { PracticeBarProps } from './PracticeBar.tsx'

/** null: the browser forbids it. */
function shelf(): Storage | null {
  try {
    return localStorage
  } catch {
    return null
  }
}

/**
 * What climbs from slow to full tempo, and what keeps to music; they come when they are first asked for, and go on when their sheet is closed.
 * @param failed told when they cannot be fetched; must stay the same function
 */
export function usePractice(
  player: Player,
  failed: () => void,
): {
  readonly practice: Practice | null
  readonly along: Along | null
  readonly want: () => void
  /** What is seen of it while its sheet is closed. */
  readonly Bar: ComponentType<PracticeBarProps> | null
} {
  const [practice, setPractice] = useState<Practice | null>(null)
  const [along, setAlong] = useState<Along | null>(null)
  const [bar, setBar] = useState<{ readonly Bar: ComponentType<PracticeBarProps> } | null>(null)
  const asked = useRef(false)
  const gone = useRef(false)
  useEffect(() => {
    gone.current = false
    return () => {
      gone.current = true
    }
  }, [])
  const want = useCallback(() => {
    if (asked.current) return
    asked.current = true
    Promise.all([
      import('../practice.ts'),
      import('../keep/keptLadders.ts'),
      import('../along.ts'),
      import('./PracticeBar.tsx'),
    ]).then(
      ([{ createPractice }, { keptLadders }, { createAlong }, { PracticeBar }]) => {
        if (gone.current) return
        setPractice(createPractice(player, keptLadders(shelf())))
        setAlong(createAlong(player))
        setBar({ Bar: PracticeBar })
      },
      () => {
        asked.current = false
        failed()
      },
    )
  }, [player, failed])
  useEffect(() => () => practice?.close(), [practice])
  useEffect(() => () => along?.close(), [along])
  return { practice, along, want, Bar: bar?.Bar ?? null }
}
