import { useStore } from 'zustand'
import type { Figure } from '../figure/figure.ts'
import type { OwnFigure } from '../figure/ownFigure.ts'
import type { Player } from '../player.ts'
import { labels } from '../words/labels.ts'
import { openWords } from '../words/openWords.ts'
import { Choice } from './Choice.tsx'
import { Icon } from './Icon.tsx'
import { LinkButton } from './LinkButton.tsx'
import { Notice } from './Notice.tsx'
import { OpenButton } from './OpenButton.tsx'
import type { Opening } from './useOpening.ts'
import type { ThemeChoice } from './useTheme.ts'

type Props = {
  readonly player: Player
  readonly theme: { readonly choice: ThemeChoice; readonly next: () => void }
  readonly opening: Opening
  readonly openNotes: () => void
}

/** Demos alone need no group. */
function menuOf(demos: readonly Figure[], own: readonly OwnFigure[]) {
  const options = (figures: readonly Figure[], group: string) =>
    figures.map((figure) => ({
      value: figure.id,
      text: labels.figureTitle(figure),
      ...(own.length > 0 ? { group } : {}),
    }))
  return [
    ...options(demos, openWords.groups.demos),
    ...options(
      own.map(({ figure }) => figure),
      openWords.groups.own,
    ),
  ]
}

/** Which figure, what it is, and the few things that concern the whole page. */
export function FigureBar({ player, theme, opening, openNotes }: Props) {
  const { figure, dance } = useStore(player.store, (state) => state.lesson)
  const own = useStore(player.store, (state) => state.own)
  const names = useStore(player.store, (state) => state.session.names)
  const themeLabel = labels.themeNow(labels.themes[theme.choice])
  return (
    <header className="figure-bar">
      <h1>{labels.program}</h1>
      <Choice
        className="figure-choice"
        label={labels.figure}
        value={figure.id}
        options={menuOf(player.figures, own)}
        choose={player.choose}
      />
      <p className="figure-facts">
        {labels.figureFacts(dance, figure)}
        {figure.about === '' ? null : <bdi className="figure-about"> {labels.figureAbout(figure)}</bdi>}
      </p>
      <OpenButton open={opening.openFiles} />
      <LinkButton player={player} made={opening.link} />
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
      <Notice notice={opening.notice} dismiss={opening.dismiss} />
    </header>
  )
}
