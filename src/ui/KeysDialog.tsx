import { keyName, keyWords } from '../words/keyWords.ts'
import { labels } from '../words/labels.ts'
import { showWords } from '../words/showWords.ts'
import { keys } from './keys.ts'
import { useModal } from './useModal.ts'

type Props = {
  readonly characters: boolean
  readonly setCharacters: (on: boolean) => void
  readonly close: () => void
}

/** Every key, out of the table that drives them. Keys of one deed stand together. */
export function KeysDialog({ characters, setCharacters, close }: Props) {
  const dialog = useModal(close)
  const said = groups()
  return (
    <dialog className="notes" ref={dialog} aria-label={showWords.keys}>
      <button type="button" className="quiet-button notes-close" onClick={close}>
        {labels.close}
      </button>
      <h2>{showWords.keys}</h2>
      <p>{showWords.keysIntro}</p>
      <dl className="key-list">
        {said.map(([deed, names]) => (
          <div key={deed}>
            <dt>
              {names.map((name) => (
                <kbd key={name}>{name}</kbd>
              ))}
            </dt>
            <dd>{deed}</dd>
          </div>
        ))}
      </dl>
      <label className="switch">
        <input type="checkbox" checked={characters} onChange={(event) => setCharacters(event.currentTarget.checked)} />
        {showWords.singleKeys}
      </label>
    </dialog>
  )
}

/** What is done, and the keys that do it. */
function groups(): [deed: string, names: string[]][] {
  const found = new Map<string, string[]>()
  for (const { key, shift, deed, places } of keys) {
    const words = keyWords(deed, places.length === 1)
    found.set(words, [...(found.get(words) ?? []), keyName(key, shift)])
  }
  return [...found]
}
