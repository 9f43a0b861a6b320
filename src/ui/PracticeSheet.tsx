import type { Along } from '../along.ts'
import type { Player } from '../player.ts'
import type { Practice } from '../practice.ts'
import { labels } from '../words/labels.ts'
import { ladderWords } from '../words/ladderWords.ts'
import { loopWords } from '../words/loopWords.ts'
import { soundWords } from '../words/soundWords.ts'
import { tapWords } from '../words/tapWords.ts'
import { BuildUp } from './BuildUp.tsx'
import { LoopPart } from './LoopPart.tsx'
import { Sheet } from './Sheet.tsx'
import { Tabs } from './Tabs.tsx'
import { TapTempo } from './TapTempo.tsx'
import type { Sound } from './useSound.ts'
import { WayBack } from './WayBack.tsx'

/** What is practised: one of the sheet's tabs. */
export type PracticePart = 'loop' | 'climb' | 'music'

type Props = {
  readonly player: Player
  readonly practice: Practice
  readonly along: Along
  readonly sound: Sound
  readonly awake: boolean
  readonly part: PracticePart
  readonly showPart: (part: PracticePart) => void
  /** Told when it climbs, which wants to be looked at. */
  readonly begun: () => void
  readonly close: () => void
}

/** Practice: what is looped, building up from slow to full, and playing along with music that is tapped. */
export function PracticeSheet({ player, practice, along, sound, awake, part, showPart, begun, close }: Props) {
  const sounds = sound.state === 'sounding'
  return (
    <Sheet title={ladderWords.practice} closeLabel={labels.close} close={close}>
      <div className="practice-sound">
        <p className={sound.state === 'missing' ? 'sheet-note' : 'for-ears'} role="status">
          {soundWords.state(sound.state)}
        </p>
        {sound.state === 'missing' ? null : (
          <button type="button" className="quiet-button" onClick={sounds ? sound.silence : sound.wake}>
            {soundWords.switch(sounds)}
          </button>
        )}
        <WayBack player={player} practice={practice} along={along} />
      </div>
      <Tabs
        label={ladderWords.practice}
        shown={part}
        show={showPart}
        tabs={[
          { key: 'loop', title: loopWords.title, content: <LoopPart player={player} /> },
          {
            key: 'climb',
            title: ladderWords.tab,
            content: <BuildUp player={player} practice={practice} begun={begun} />,
          },
          { key: 'music', title: tapWords.tab, content: <TapTempo player={player} along={along} /> },
        ]}
      />
      <details className="sheet-note practice-cautions">
        <summary>{ladderWords.cautionsInShort}</summary>
        <ul>
          {ladderWords.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </details>
      {awake ? null : <p className="sheet-note">{ladderWords.asleep}</p>}
    </Sheet>
  )
}
