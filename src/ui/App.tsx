import { useId, useState } from 'react'
import type { Player } from '../player.ts'
import type { Stage } from '../stage/stage.ts'
import { labels } from '../words/labels.ts'
import { ConventionNow } from './ConventionNow.tsx'
import { CountNow } from './CountNow.tsx'
import { FigureBar } from './FigureBar.tsx'
import { Icon } from './Icon.tsx'
import { Panels } from './Panels.tsx'
import type { PracticePart } from './PracticeSheet.tsx'
import { parts } from './parts.ts'
import { Settings } from './Settings.tsx'
import { Status } from './Status.tsx'
import { StripView } from './StripView.tsx'
import { TeachingButtons } from './TeachingButtons.tsx'
import { Transport } from './Transport.tsx'
import { useAwake } from './useAwake.ts'
import { useGreeting } from './useGreeting.ts'
import { useKeys } from './useKeys.ts'
import { useMedia } from './useMedia.ts'
import { useOpening } from './useOpening.ts'
import { usePart } from './usePart.ts'
import { usePractice } from './usePractice.ts'
import { type SoundSource, useSound } from './useSound.ts'
import { useTeaching } from './useTeaching.ts'
import { useTheme } from './useTheme.ts'

type Props = {
  readonly player: Player
  /** Begun before React; it may fail, and all but the picture works without it. */
  readonly stage: Promise<Stage>
  /** The same, where it is there already. */
  readonly ready: Stage | null
  readonly source: SoundSource
}

/** Here a sheet takes the picture's room: a telephone. */
const NARROW = '(max-width: 39.99em)'

const lessonClass = (settingsOpen: boolean, sheetOpen: boolean): string =>
  ['lesson', ...(settingsOpen ? ['settings-open'] : []), ...(sheetOpen ? ['beside-sheet'] : [])].join(' ')

/** The page: picture, count, strip, and what sets them going. */
export function App({ player, stage, ready, source }: Props) {
  const theme = useTheme()
  const [characters, setCharacters] = useState(true)
  const [settingsOpen, setSettingsOpen] = useState(false)
  const settingsId = useId()
  const opening = useOpening(player)
  const { report, notLoaded } = opening
  const teaching = useTeaching()
  const show = usePart(parts.show, notLoaded)
  const table = usePart(parts.table, notLoaded)
  const keys = usePart(parts.keys, notLoaded)
  const notes = usePart(parts.notes, notLoaded)
  const marks = usePart(parts.marks, notLoaded)
  const faults = usePart(parts.faults, notLoaded)
  const [faultPanel, setFaultPanel] = useState(1)
  const [largePanel, setLargePanel] = useState(0)
  const measures = usePart(parts.measures, notLoaded)
  const slow = usePart(parts.slow, notLoaded)
  const sound = useSound(player, source, notLoaded)
  const soundSheet = usePart(parts.sound, notLoaded)
  const awake = useAwake(player)
  const { practice, along, want, Bar } = usePractice(player, notLoaded)
  const [practicePart, setPracticePart] = useState<PracticePart>('loop')
  const isNarrow = useMedia(NARROW)
  const practiceSheet = usePart(parts.practice, notLoaded)
  const sheets = [show, faults, soundSheet, practiceSheet]
  const practiceIsHere = practiceSheet.Shown !== null && practice !== null && along !== null
  const sheetIsHere = practiceIsHere || [show, faults, soundSheet].some(({ Shown }) => Shown !== null)
  /** Two sheets would lie on one another. */
  const alone = (sheet: { readonly close: () => void; readonly toggle: () => void }): void => {
    for (const other of sheets) if (other !== sheet) other.close()
    sheet.toggle()
  }
  /** The picture that is chosen for is seen, and on a narrow screen it is the large one. */
  const choosePanel = (panel: number): void => {
    setFaultPanel(panel)
    setLargePanel(panel)
    const { session } = player.store.getState()
    if (!session.order.includes(panel)) player.setOrder([...session.order, panel])
  }
  const chooseFaults = (panel: number): void => {
    choosePanel(panel)
    if (!faults.isOpen) alone(faults)
  }
  useGreeting(player, stage)
  useKeys(player, characters, {
    teach: teaching.toggle,
    explain: marks.toggle,
    keys: keys.toggle,
    faults: () => alone(faults),
  })
  return (
    <>
      <FigureBar
        player={player}
        opening={opening}
        show={{ isOpen: show.isOpen, toggle: () => alone(show) }}
        teach={teaching.toggle}
        explain={marks}
        sound={{
          state: sound.state,
          press: () => {
            if (sound.state === 'sounding') sound.silence()
            else {
              sound.wake()
              // The first time with what can be set; after that somebody has only talked to the class.
              const practises = practice?.store.getState().ladder != null || player.store.getState().along !== null
              if (sound.conductor === null && !practises && sheets.every(({ isOpen }) => !isOpen)) alone(soundSheet)
            }
          },
        }}
        openNotes={notes.toggle}
      />
      <main className={lessonClass(settingsOpen, sheetIsHere)}>
        <div className="lesson-view">
          <Panels
            player={player}
            stage={stage}
            ready={ready}
            dark={theme.dark}
            largePanel={largePanel}
            enlarge={setLargePanel}
            choose={chooseFaults}
            measure={(panel) => {
              setFaultPanel(panel)
              measures.toggle()
            }}
          >
            {marks.Shown === null ? null : <marks.Shown player={player} close={marks.close} />}
          </Panels>
          <div className="now">
            <CountNow player={player} />
            <ConventionNow player={player} />
          </div>
          <StripView player={player} explained={marks.isOpen} openKeys={keys.toggle} />
        </div>
        {practice === null || along === null || Bar === null || practiceSheet.isOpen ? null : (
          <Bar player={player} practice={practice} along={along} />
        )}
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
        <Settings
          player={player}
          id={settingsId}
          practise={() => {
            want()
            if (practice !== null && practice.store.getState().ladder !== null) setPracticePart('climb')
            alone(practiceSheet)
          }}
          sound={{ isOpen: soundSheet.isOpen, toggle: () => alone(soundSheet) }}
        />
        {teaching.on ? <TeachingButtons player={player} leave={teaching.toggle} /> : null}
        {show.Shown === null ? null : (
          <show.Shown
            player={player}
            theme={theme}
            close={show.close}
            openTable={table.toggle}
            openSlow={slow.toggle}
          />
        )}
        {soundSheet.Shown === null ? null : <soundSheet.Shown player={player} sound={sound} close={soundSheet.close} />}
        {practiceSheet.Shown === null || practice === null || along === null ? null : (
          <practiceSheet.Shown
            player={player}
            practice={practice}
            along={along}
            sound={sound}
            awake={awake}
            part={practicePart}
            showPart={setPracticePart}
            begun={() => {
              if (!isNarrow) return
              practiceSheet.close()
              setSettingsOpen(false)
            }}
            close={practiceSheet.close}
          />
        )}
        {faults.Shown === null ? null : (
          <faults.Shown
            player={player}
            panel={faultPanel}
            choosePanel={choosePanel}
            close={faults.close}
            openSlow={slow.toggle}
            openNumbers={measures.toggle}
          />
        )}
      </main>
      <Status player={player} />
      {measures.Shown === null ? null : <measures.Shown player={player} panel={faultPanel} close={measures.close} />}
      {slow.Shown === null ? null : <slow.Shown player={player} close={slow.close} />}
      {table.Shown === null ? null : <table.Shown player={player} close={table.close} />}
      {keys.Shown === null ? null : (
        <keys.Shown characters={characters} setCharacters={setCharacters} close={keys.close} />
      )}
      {notes.Shown === null ? null : (
        <notes.Shown
          player={player}
          close={notes.close}
          openKeys={() => {
            notes.close()
            keys.toggle()
          }}
        />
      )}
      {report === null ? null : (
        <report.Dialog key={report.count} opened={report.opened} closed={opening.closeReport} />
      )}
    </>
  )
}
