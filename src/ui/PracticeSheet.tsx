import { useRef, useState } from 'react'
import { useStore } from 'zustand'
import { noTaps, tapped, tapTempo } from '../clock/tapTempo.ts'
import type { Player } from '../player.ts'
import type { Practice } from '../practice.ts'
import { seconds } from '../units.ts'
import { labels } from '../words/labels.ts'
import { ladderWords } from '../words/ladderWords.ts'
import { tapWords } from '../words/tapWords.ts'
import { BuildUp } from './BuildUp.tsx'
import { LoopPart } from './LoopPart.tsx'
import { Sheet } from './Sheet.tsx'

type Props = {
  readonly player: Player
  readonly practice: Practice
  readonly awake: boolean
  readonly close: () => void
}

/** Practice: what is looped, building up from slow to full, and a tempo by tapping. */
export function PracticeSheet({ player, practice, awake, close }: Props) {
  return (
    <Sheet title={ladderWords.practice} closeLabel={labels.close} close={close}>
      <LoopPart player={player} />
      <BuildUp player={player} practice={practice} />
      <TapTempo player={player} />
      <ul className="sheet-note practice-cautions">
        {ladderWords.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
        {awake ? null : <li>{ladderWords.asleep}</li>}
      </ul>
    </Sheet>
  )
}

function TapTempo({ player }: { readonly player: Player }) {
  const dance = useStore(player.store, (state) => state.lesson.dance)
  const latest = useRef(noTaps)
  const [taps, setTaps] = useState(noTaps)
  const found = tapTempo(taps)
  const tap = (timeStamp: number): void => {
    // Two taps may come before the page is written anew.
    const next = tapped(latest.current, seconds(timeStamp / 1000))
    latest.current = next
    setTaps(next)
    const tempo = tapTempo(next)
    if (tempo !== null) player.setTempo(tempo.beatsPerMinute / dance.beatsPerBar)
  }
  return (
    <fieldset className="sheet-group">
      <legend>{tapWords.intro}</legend>
      {/* As the finger comes down: that is the beat. */}
      <button
        type="button"
        className="quiet-button practice-tap"
        title={tapWords.tapHint}
        onPointerDown={({ timeStamp }) => tap(timeStamp)}
        onKeyDown={({ key, timeStamp, repeat }) => (key === ' ' || key === 'Enter') && !repeat && tap(timeStamp)}
      >
        {tapWords.tap}
      </button>
      <p role="status">{found === null ? tapWords.waiting(taps.times.length) : tapWords.tempo(found, dance)}</p>
    </fieldset>
  )
}
