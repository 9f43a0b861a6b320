import { useStore } from 'zustand'
import type { Player } from '../player.ts'
import { labels } from '../words/labels.ts'
import { Choice } from './Choice.tsx'
import { Icon } from './Icon.tsx'
import type { ThemeChoice } from './useTheme.ts'

type Props = {
  readonly player: Player
  readonly theme: { readonly choice: ThemeChoice; readonly next: () => void }
  readonly openNotes: () => void
}

/** Which figure, what it is, and the few things that concern the whole page. */
export function FigureBar({ player, theme, openNotes }: Props) {
  const { figure, dance } = useStore(player.store, (state) => state.lesson)
  const names = useStore(player.store, (state) => state.session.names)
  const themeLabel = labels.themeNow(labels.themes[theme.choice])
  return (
    <header className="figure-bar">
      <h1>{labels.program}</h1>
      <Choice
        className="figure-choice"
        label={labels.figure}
        value={figure.id}
        options={player.figures.map(({ id, title }) => ({ value: id, text: title }))}
        choose={player.choose}
      />
      <p className="figure-facts">
        {labels.figureFacts(dance, figure)}
        {figure.about === '' ? null : <span className="figure-about"> {figure.about}</span>}
      </p>
      <button type="button" className="quiet-button who" onClick={() => (names ? player.hideNames() : player.reveal())}>
        {names ? labels.askWhoIsLate : labels.showNames}
      </button>
      <button type="button" className="icon-button" aria-label={themeLabel} title={themeLabel} onClick={theme.next}>
        <Icon name={theme.choice} />
      </button>
      <button
        type="button"
        className="icon-button"
        aria-label={labels.notes}
        title={labels.notes}
        aria-haspopup="dialog"
        onClick={openNotes}
      >
        <Icon name="notes" />
      </button>
    </header>
  )
}
