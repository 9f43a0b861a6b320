import { useStore } from 'zustand'
import { dances } from '../dance/dances.ts'
import type { Figure } from '../figure/figure.ts'
import type { OwnFigure } from '../figure/ownFigure.ts'
import type { Player } from '../player.ts'
import type { SoundState } from '../sound/speaker.ts'
import { labels } from '../words/labels.ts'
import { openWords } from '../words/openWords.ts'
import { showWords } from '../words/showWords.ts'
import { soundWords } from '../words/soundWords.ts'
import { Choice } from './Choice.tsx'
import { Icon } from './Icon.tsx'
import { LinkButton } from './LinkButton.tsx'
import { Notice } from './Notice.tsx'
import { OpenButton } from './OpenButton.tsx'
import type { Opening } from './useOpening.ts'
import { useQuestion } from './useQuestion.ts'

type Props = {
  readonly player: Player
  readonly opening: Opening
  readonly show: Opener
  readonly teach: () => void
  readonly explain: Opener
  readonly sound: { readonly state: SoundState; readonly press: () => void }
  readonly openNotes: () => void
}

/** Something that is open or not. */
type Opener = { readonly isOpen: boolean; readonly toggle: () => void }

/** What the visitor has opened, and the demos by their dance, each dance where its first one stands. */
function menuOf(demos: readonly Figure[], own: readonly OwnFigure[]) {
  const option = (figure: Figure, group: string) => ({
    value: figure.id,
    text: labels.figureTitle(figure, dances[figure.dance]),
    group,
  })
  const order = [...new Set(demos.map(({ dance }) => dance))]
  return [
    ...own.map(({ figure }) => option(figure, openWords.groups.own)),
    ...order.flatMap((id) =>
      demos.filter(({ dance }) => dance === id).map((figure) => option(figure, dances[id].name)),
    ),
  ]
}

/** Which figure, what it is, and the few things that concern the whole page. */
export function FigureBar({ player, opening, show, teach, explain, sound, openNotes }: Props) {
  const { figure, written, dance } = useStore(player.store, (state) => state.lesson)
  const question = useQuestion(player)
  const own = useStore(player.store, (state) => state.own)
  const names = useStore(player.store, (state) => state.session.names)
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
        {names ? null : <b className="question">{question} </b>}
        {labels.figureFacts(dance, figure)}
        {figure === written ? (
          <bdi className="figure-about"> {labels.figureAbout(figure)}</bdi>
        ) : (
          <span> {showWords.opposite(written)}</span>
        )}
      </p>
      <OpenButton open={opening.openFiles} />
      <LinkButton player={player} made={opening.link} failed={opening.notLoaded} />
      {question === null && names ? null : (
        <button
          type="button"
          className="quiet-button who"
          onClick={() => (names ? player.hideNames() : player.reveal())}
        >
          {names ? question : labels.showNames}
        </button>
      )}
      <button
        type="button"
        className="quiet-button bar-button"
        title={showWords.showHint}
        aria-label={showWords.show}
        aria-expanded={show.isOpen}
        onClick={show.toggle}
      >
        <Icon name="show" />
        <span className="bar-button-word">{showWords.show}</span>
      </button>
      <button
        type="button"
        className="quiet-button bar-button"
        title={showWords.teachHint}
        aria-label={showWords.teach}
        onClick={teach}
      >
        <Icon name="teach" />
        <span className="bar-button-word">{showWords.teach}</span>
      </button>
      <button
        type="button"
        className="icon-button"
        aria-label={soundWords.button(sound.state)}
        title={soundWords.button(sound.state)}
        onClick={sound.press}
      >
        <Icon name={sound.state === 'sounding' ? 'sound' : 'silent'} />
      </button>
      <button
        type="button"
        className="icon-button"
        aria-label={showWords.explain}
        title={showWords.explain}
        aria-pressed={explain.isOpen}
        onClick={explain.toggle}
      >
        <Icon name="explain" />
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
