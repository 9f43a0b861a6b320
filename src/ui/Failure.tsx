import { type SavedText, saveText } from '../keep/saveText.ts'
import { labels } from '../words/labels.ts'

type Props = {
  readonly reason: unknown
  readonly startAnew: () => void
  /** The figure on the screen as the visitor brought it; null: one of ours. */
  readonly mine: SavedText | null
}

/** What is shown instead of the page when it could not go on. */
export function Failure({ reason, startAnew, mine }: Props) {
  return (
    <main className="failure" role="alert">
      <h1>{labels.failureTitle}</h1>
      <p>{labels.failureText}</p>
      <p>
        <code>{reason instanceof Error && reason.message !== '' ? reason.message : labels.failureUnknown}</code>
      </p>
      <p className="failure-ways">
        <button type="button" className="play" onClick={startAnew}>
          {labels.startWithout}
        </button>
        {mine === null ? null : (
          <button type="button" className="quiet-button" onClick={() => saveText(mine)}>
            {labels.saveMine}
          </button>
        )}
        <button type="button" className="quiet-button" onClick={() => location.reload()}>
          {labels.reload}
        </button>
      </p>
    </main>
  )
}
