import type { Practice } from '../practice.ts'
import { type Ladder, rungOf } from '../session/ladder.ts'
import { ladderWords } from '../words/ladderWords.ts'
import { GETS_KEYS } from './InPlace.tsx'

/** What holds it on the way up, takes it back and sends it up. */
export function Climb({ practice, ladder }: { readonly practice: Practice; readonly ladder: Ladder }) {
  const where = rungOf(ladder)
  return (
    <>
      <progress max={where.of} value={where.number} aria-label={ladderWords.title} />
      <div className="practice-buttons">
        <button type="button" className="toggle" title={ladderWords.backHint} onClick={practice.back}>
          {ladderWords.back}
        </button>
        <button
          type="button"
          className="toggle"
          title={ladder.held ? ladderWords.letGoHint : ladderWords.holdHint}
          onClick={() => practice.hold(!ladder.held)}
          {...GETS_KEYS}
        >
          {ladder.held ? ladderWords.letGo : ladderWords.hold}
        </button>
        {where.isThrough ? (
          <button type="button" className="toggle" title={ladderWords.fromStart} onClick={practice.again}>
            {ladderWords.again}
          </button>
        ) : (
          <button
            type="button"
            className="toggle"
            title={ladderWords.upHint}
            aria-disabled={where.number === where.of}
            onClick={practice.up}
          >
            {ladderWords.up}
          </button>
        )}
      </div>
      <button type="button" className="quiet-button" onClick={practice.stop}>
        {ladderWords.stop}
      </button>
    </>
  )
}
