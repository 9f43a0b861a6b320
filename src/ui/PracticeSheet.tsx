import type { Along } from '../along.ts'
import type { Player } from '../player.ts'
import type { Practice } from '../practice.ts'
import { labels } from '../words/labels.ts'
import { ladderWords } from '../words/ladderWords.ts'
import { soundWords } from '../words/soundWords.ts'
import { BuildUp } from './BuildUp.tsx'
import { LoopPart } from './LoopPart.tsx'
import { Sheet } from './Sheet.tsx'
import { TapTempo } from './TapTempo.tsx'
import type { Sound } from './useSound.ts'

type Props = {
  readonly player: Player
  readonly practice: Practice
  readonly along: Along
  readonly sound: Pick<Sound, 'state' | 'wake'>
  readonly awake: boolean
  readonly close: () => void
}

/** Practice: what is looped, building up from slow to full, and playing along with music that is tapped. */
export function PracticeSheet({ player, practice, along, sound, awake, close }: Props) {
  return (
    <Sheet title={ladderWords.practice} closeLabel={labels.close} close={close}>
      {sound.state === 'sounding' ? null : (
        <div className="practice-sound">
          <p className="sheet-note">{soundWords.unheard(sound.state)}</p>
          {sound.state === 'missing' ? null : (
            <button type="button" className="quiet-button" onClick={sound.wake}>
              {soundWords.switchOn}
            </button>
          )}
        </div>
      )}
      <LoopPart player={player} />
      <BuildUp player={player} practice={practice} />
      <TapTempo player={player} along={along} />
      <ul className="sheet-note practice-cautions">
        {ladderWords.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
        {awake ? null : <li>{ladderWords.asleep}</li>}
      </ul>
    </Sheet>
  )
}
