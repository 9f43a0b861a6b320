import { openWords } from '../words/openWords.ts'
import { Icon } from './Icon.tsx'

/** Something to be told that stops nobody. */
export type NoticeText = {
  readonly text: string
  /** Said, not shown: what is on the screen tells it already. */
  readonly quiet?: boolean
  /** To be selected and copied. */
  readonly address?: string
  readonly more?: { readonly label: string; readonly show: () => void }
}

type Props = { readonly notice: NoticeText | null; readonly dismiss: () => void }

/** A line under the figure's name. The output stands there always, so that what comes into it is read out. */
export function Notice({ notice, dismiss }: Props) {
  const shown = notice !== null && notice.quiet !== true
  return (
    <div className={shown ? 'notice' : 'for-ears'}>
      <output>
        <bdi>{notice?.text}</bdi>
      </output>
      {notice?.address === undefined ? null : (
        <input
          className="notice-address"
          type="text"
          readOnly
          value={notice.address}
          aria-label={openWords.link}
          onFocus={({ currentTarget }) => currentTarget.select()}
        />
      )}
      {notice?.more === undefined ? null : (
        <button type="button" className="quiet-button" onClick={notice.more.show}>
          {notice.more.label}
        </button>
      )}
      {shown ? (
        <button type="button" className="icon-button" aria-label={openWords.dismiss} onClick={dismiss}>
          <Icon name="dismiss" />
        </button>
      ) : null}
    </div>
  )
}
