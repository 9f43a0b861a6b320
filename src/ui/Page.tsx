import { StrictMode } from 'react'
import type { SavedText } from '../keep/saveText.ts'
import type { Player } from '../player.ts'
import type { Stage } from '../stage/stage.ts'
import { App } from './App.tsx'
import { ErrorBoundary } from './ErrorBoundary.tsx'
import type { SoundSource } from './useSound.ts'

export type PageProps = {
  readonly player: Player
  readonly stage: Promise<Stage>
  /** The same, where it is there already. */
  readonly ready: Stage | null
  readonly source: SoundSource
  /** Puts the program back to something that is known to work. */
  readonly startAnew: () => void
  /** The visitor's own figure that is on the screen, if it is one. */
  readonly mine: () => SavedText | null
}

/** All that React makes; at build time, as markup, and in the browser. */
export function Page({ startAnew, mine, ...program }: PageProps) {
  return (
    <StrictMode>
      <ErrorBoundary startAnew={startAnew} mine={mine}>
        <App {...program} />
      </ErrorBoundary>
    </StrictMode>
  )
}
