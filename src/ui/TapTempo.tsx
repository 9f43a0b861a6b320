import { useStore } from 'zustand'
import type { Along, Times } from '../along.ts'
import type { Player } from '../player.ts'
import { keepsBars } from '../session/musicFit.ts'
import { tapWords } from '../words/tapWords.ts'
import { SettledStatus } from './SettledStatus.tsx'
import { TapButton } from './TapButton.tsx'

type Props = { readonly player: Player; readonly along: Along }

/** A tempo by tapping the beat of real music, and playing along with it. */
export function TapTempo({ player, along }: Props) {
  const lesson = useStore(player.store, (state) => state.lesson)
  const playing = useStore(player.store, (state) => state.playing)
  const isAlong = useStore(player.store, (state) => state.along !== null)
  const { taps, beat } = useStore(along.store)
  const said = beat === null ? tapWords.waiting(taps.times.length) : tapWords.tempo(beat, lesson.dance)
  return (
    <fieldset className="sheet-group practice-group">
      <legend>{tapWords.title}</legend>
      <p className="sheet-note">{tapWords.intro}</p>
      <TapButton word={tapWords.tap} hint={tapWords.tapHint} tap={along.tap} />
      <SettledStatus text={said} />
      <ReadAs along={along} player={player} />
      <button
        type="button"
        className="toggle"
        aria-pressed={isAlong}
        aria-disabled={!isAlong && !along.canStart()}
        title={tapWords.alongHint}
        onClick={isAlong ? along.stop : along.start}
      >
        {tapWords.along}
      </button>
      <p className="sheet-note" role="status">
        {tapWords.isAlong(isAlong, playing, keepsBars(lesson))}
      </p>
      {isAlong ? <Nudge along={along} /> : null}
    </fieldset>
  )
}

/** Every other beat was tapped, or every half. */
function ReadAs({ along, player }: Props) {
  const dance = useStore(player.store, (state) => state.lesson.dance)
  const { times, tapped } = useStore(along.store)
  const offer = tapped === null ? '' : tapWords.perhaps(tapped, dance)
  if (offer === '' && times === 1) return null
  const other: Times = times !== 1 ? times : offer === tapWords.perhapsTwice ? 2 : 0.5
  return (
    <div className="tap-read">
      {offer === '' ? null : <p className="sheet-note">{offer}</p>}
      <button
        type="button"
        className="toggle"
        aria-pressed={times !== 1}
        onClick={() => along.read(times === 1 ? other : 1)}
      >
        {other === 2 ? tapWords.twice : tapWords.half}
      </button>
    </div>
  )
}

function Nudge({ along }: { readonly along: Along }) {
  const nudge = useStore(along.store, (state) => state.taps.nudge)
  return (
    <>
      <p className="sheet-note">{tapWords.nudgeHint}</p>
      <div className="tap-nudge">
        <button type="button" className="toggle" onClick={() => along.nudge(-1)}>
          {tapWords.earlier}
        </button>
        <button type="button" className="toggle" onClick={() => along.nudge(1)}>
          {tapWords.later}
        </button>
      </div>
      <SettledStatus text={tapWords.nudged(nudge)} />
      <p className="sheet-note">{tapWords.early}</p>
    </>
  )
}
