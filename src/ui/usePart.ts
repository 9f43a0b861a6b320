import { type ComponentType, useCallback, useState } from 'react'

/** A part of the page that comes when it is first asked for. */
export type Part<Props> = {
  /** null: not asked for, or not here yet. */
  readonly Shown: ComponentType<Props> | null
  readonly isOpen: boolean
  readonly toggle: () => void
  readonly close: () => void
}

/**
 * @param load must stay the same function
 * @param failed told when it cannot be loaded: the page is offline and had not fetched it yet; must stay the same function
 */
export function usePart<Props>(load: () => Promise<ComponentType<Props>>, failed: () => void): Part<Props> {
  const [loaded, setLoaded] = useState<{ readonly Loaded: ComponentType<Props> } | null>(null)
  const [isOpen, setOpen] = useState(false)
  const toggle = useCallback(() => {
    setOpen((open) => !open)
    load().then(
      (Loaded) => setLoaded((former) => former ?? { Loaded }),
      () => {
        setOpen(false)
        failed()
      },
    )
  }, [load, failed])
  const close = useCallback(() => setOpen(false), [])
  return { Shown: isOpen ? (loaded?.Loaded ?? null) : null, isOpen, toggle, close }
}
