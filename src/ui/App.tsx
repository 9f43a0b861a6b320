import './base.css'
import './bar.css'
import './panels.css'
import './strip.css'
import './controls.css'
import './open.css'
import { useId, useRef, useState } from 'react'
import type { Player } from '../player.ts'
import type { Stage } from '../stage/stage.ts'
import { labels } from '../words/labels.ts'
import { ConventionNow } from './ConventionNow.tsx'
import { CountNow } from './CountNow.tsx'
import { FigureBar } from './FigureBar.tsx'
import { Icon } from './Icon.tsx'
import { Notes } from './Notes.tsx'
import { Panels } from './Panels.tsx'
import { Settings } from './Settings.tsx'
import { Status } from './Status.tsx'
import { StripView } from './StripView.tsx'
import { Transport } from './Transport.tsx'
import { useKeys } from './useKeys.ts'
import { useOpening } from './useOpening.ts'
import { useTheme } from './useTheme.ts'

type Props = {
  readonly player: Player
  /** Begun before React; it may fail, and all but the picture works without it. */
  readonly stage: Promise<Stage>
}

/** The page: picture, count, strip, and what sets them going. */
export function App({ player, stage }: Props) {
  const theme = useTheme()
  const [letters, setLetters] = useState(true)
  const [settingsOpen, setSettingsOpen] = useState(false)
  const settingsId = useId()
  const notes = useRef<HTMLDialogElement>(null)
  useKeys(player, letters)
  const opening = useOpening(player)
  const { report } = opening
  return (
    <>
      <FigureBar player={player} theme={theme} opening={opening} openNotes={() => notes.current?.showModal()} />
      <main className={settingsOpen ? 'lesson settings-open' : 'lesson'}>
        <div className="lesson-view">
          <Panels player={player} stage={stage} dark={theme.dark} />
          <div className="now">
            <CountNow player={player} />
            <ConventionNow player={player} />
          </div>
          <StripView player={player} />
        </div>
        <div className="controls">
          <Transport player={player} />
          <button
            type="button"
            className="toggle settings-toggle"
            aria-expanded={settingsOpen}
            aria-controls={settingsId}
            aria-label={labels.settings}
            onClick={() => setSettingsOpen((open) => !open)}
          >
            <Icon name="settings" />
          </button>
        </div>
        <Settings player={player} id={settingsId} />
      </main>
      <Status player={player} />
      <Notes player={player} dialog={notes} letters={letters} setLetters={setLetters} />
      {report === null ? null : (
        <report.Dialog key={report.count} opened={report.opened} closed={opening.closeReport} />
      )}
    </>
  )
}
