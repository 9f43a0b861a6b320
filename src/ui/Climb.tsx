import type { Practice } from '../practice.ts'
import { type Ladder, rungOf } from '../session/ladder.ts'
import { ladderWords } from '../words/ladderWords.ts'
import { GETS_KEYS } from './InPlace.tsx'

/** Where one is on the way up. */
export function Climb({ practice, ladder }: { readonly practice: Practice; readonly ladder: Ladder }) {
  const where = rungOf(ladder)
  return (
    <>
      <p role="status">{ladderWords.where(where)}</p>
      <progress max={where.of} value={where.number} aria-label={ladderWords.title} />
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
          {...GETS_KEYS}
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
