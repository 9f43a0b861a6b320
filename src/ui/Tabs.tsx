import { type KeyboardEvent, type ReactNode, useId, useRef } from 'react'

/** One of several things of which one is seen at a time. */
export type Tab<Key extends string> = { readonly key: Key; readonly title: string; readonly content: ReactNode }

type Props<Key extends string> = {
  readonly label: string
  readonly tabs: readonly Tab<Key>[]
  readonly shown: Key
  readonly show: (key: Key) => void
}

const MOVES: Readonly<Record<string, (at: number, count: number) => number>> = {
  ArrowRight: (at, count) => (at + 1) % count,
  ArrowLeft: (at, count) => (at + count - 1) % count,
  Home: () => 0,
  End: (_, count) => count - 1,
}

/**
 * Tabs by the pattern of the ARIA Authoring Practices (w3.org/WAI/ARIA/apg/patterns/tabs): one stop for the keyboard, arrows
 * between them. What is not seen stays as it is.
 */
export function Tabs<Key extends string>({ label, tabs, shown, show }: Props<Key>) {
  const id = useId()
  const home = useRef<HTMLDivElement>(null)
  const press = (event: KeyboardEvent): void => {
    // Alt and an arrow go back in the browser.
    if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return
    const move = MOVES[event.key]
    const next =
      move === undefined
        ? undefined
        : tabs[
            move(
              tabs.findIndex(({ key }) => key === shown),
              tabs.length,
            )
          ]
    if (next === undefined) return
    event.preventDefault()
    event.stopPropagation()
    show(next.key)
    home.current?.querySelector<HTMLElement>(`[data-tab="${next.key}"]`)?.focus()
  }
  return (
    <>
      <div className="tabs" role="tablist" aria-label={label} ref={home}>
        {tabs.map(({ key, title }) => (
          <button
            key={key}
            type="button"
            className="toggle"
            role="tab"
            id={`${id}-${key}`}
            data-tab={key}
            aria-selected={key === shown}
            aria-controls={`${id}-${key}-panel`}
            tabIndex={key === shown ? 0 : -1}
            onClick={() => show(key)}
            onKeyDown={press}
          >
            {title}
          </button>
        ))}
      </div>
      {tabs.map(({ key, content }) => (
        <div
          key={key}
          className="tab-panel"
          role="tabpanel"
          id={`${id}-${key}-panel`}
          aria-labelledby={`${id}-${key}`}
          hidden={key !== shown}
        >
          {content}
        </div>
      ))}
    </>
  )
}
