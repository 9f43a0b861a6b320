import { labels } from '../words/labels.ts'

type Props = { readonly reason: unknown; readonly startAnew: () => void }

/** What is shown instead of the page when it could not go on. */
export function Failure({ reason, startAnew }: Props) {
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
        <button type="button" className="quiet-button" onClick={() => location.reload()}>
          {labels.reload}
        </button>
      </p>
    </main>
  )
}
