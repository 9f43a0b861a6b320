import { useStore } from 'zustand'
import type { Along } from '../along.ts'
import type { Player } from '../player.ts'
import type { Practice } from '../practice.ts'
import { newLadder, rungOf, shortestStep } from '../session/ladder.ts'
import { labels } from '../words/labels.ts'
import { ladderWords } from '../words/ladderWords.ts'
import { Sheet } from './Sheet.tsx'
import { TapTempo } from './TapTempo.tsx'

type Props = {
  readonly player: Player
  readonly practice: Practice
  readonly along: Along
  readonly awake: boolean
  readonly close: () => void
}

/** Practice: a tempo by tapping, and building up from slow to full. */
export function PracticeSheet({ player, practice, along, awake, close }: Props) {
  return (
    <Sheet title={ladderWords.title} closeLabel={labels.close} close={close}>
      <Climb player={player} practice={practice} />
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

function Climb({ player, practice }: { readonly player: Player; readonly practice: Practice }) {
  const ladder = useStore(practice.store, (state) => state.ladder)
  const { dance, schedule } = useStore(player.store, (state) => state.lesson)
  if (ladder === null) {
    const plan = newLadder(dance, { shortest: shortestStep(schedule) })
    const left = practice.left()
    return (
      <>
        <p>{ladderWords.intro}</p>
        <p>{ladderWords.plan(plan)}</p>
        <p className="sheet-note">{ladderWords.caution(plan.from)}</p>
        <button type="button" className="quiet-button practice-start" onClick={() => practice.start()}>
          {ladderWords.start}
        </button>
        {left === null || left.rung === 0 ? null : (
          <button type="button" className="quiet-button" onClick={() => practice.start({}, true)}>
            {ladderWords.fromStart}
          </button>
        )}
      </>
    )
  }
  const where = rungOf(ladder)
  return (
    <>
      <p role="status">{ladderWords.where(where)}</p>
      <progress max={where.of} value={where.number} aria-label={ladderWords.title} />
      <p className="sheet-note">{ladderWords.caution(where.speed)}</p>
      <div className="practice-buttons">
        <button type="button" className="toggle" title={ladderWords.backHint} onClick={practice.back}>
          {ladderWords.back}
        </button>
        <button
          type="button"
          className="toggle"
          aria-pressed={ladder.held}
          title={ladderWords.holdHint}
          onClick={() => practice.hold(!ladder.held)}
        >
          {ladderWords.hold}
        </button>
        <button type="button" className="toggle" title={ladderWords.upHint} onClick={practice.up}>
          {ladderWords.up}
        </button>
      </div>
      <button type="button" className="quiet-button" onClick={practice.stop}>
        {ladderWords.stop}
      </button>
    </>
  )
}
