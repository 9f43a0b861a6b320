import { useCallback, useId, useMemo } from 'react'
import type { Player } from '../player.ts'
import { tones } from '../scene/tones.ts'
import type { Lesson } from '../session/lesson.ts'
import { gridPoints } from '../timing/grid.ts'
import type { Beat } from '../units.ts'
import { labels } from '../words/labels.ts'
import { measureWords } from '../words/measureWords.ts'
import { performanceWords } from '../words/performanceWords.ts'
import { showWords } from '../words/showWords.ts'
import { stageWords } from '../words/stageWords.ts'
import { Icon } from './Icon.tsx'
import { LiveText } from './LiveText.tsx'
import { PICTURE_CLASS } from './measurePictures.ts'
import { PanelTitle } from './PanelTitle.tsx'
import { panelName } from './panelName.ts'
import { SteadyText } from './SteadyText.tsx'

type Props = {
  readonly player: Player
  readonly lesson: Lesson
  /** Index into the lesson's panels. */
  readonly panel: number
  /** 0 = the leftmost. */
  readonly place: number
  readonly names: boolean
  /** Its number stands beside its name. */
  readonly asked: boolean
  /** On a narrow screen one panel is large. */
  readonly large: boolean
  readonly enlarge: (panel: number) => void
  readonly choose: (panel: number) => void
  /** Asks for the numbers of a performance. */
  readonly measure: (panel: number) => void
}

/** One performance: its name above, its words below, and between them the place that the canvas draws into. */
export function Panel({ player, lesson, panel, place, names, asked, large, enlarge, choose, measure }: Props) {
  const titleId = useId()
  const way = lesson.panels[panel]?.way
  const toned = tones(lesson.panels.map((one) => one.way.kind))
  const { range, schedule } = lesson
  const beats = useMemo(() => gridPoints(range.from, range.to, schedule.grid), [range, schedule])
  const read = useCallback((at: Beat) => stageWords(lesson, panel, at), [lesson, panel])
  const pageNow = useCallback(() => {
    const page = player.pictureNow()[place]?.picture.page
    return page === undefined ? '' : showWords.page(page)
  }, [player, place])
  const name = panelName(lesson, panel, place, names)
  return (
    <section className={large ? 'panel panel-large' : 'panel'} aria-labelledby={titleId}>
      <h2 className="panel-head" id={titleId}>
        <span className="panel-title">
          {names && way !== undefined ? (
            <>
              {asked ? <b>{labels.unnamedPanel(place)}</b> : null}
              <button type="button" className="panel-choose" title={labels.chooseWay} onClick={() => choose(panel)}>
                <PanelTitle tone={toned[panel] ?? 'in time'} name={name} />
                <Icon name="down" />
              </button>
            </>
          ) : (
            <>
              <b aria-hidden="true">{labels.unnamedPanel(place)}</b>
              <span className="for-ears">{name}</span>
            </>
          )}
        </span>
        {/* All names' room is kept, also while they are off, so that no picture moves when they change. */}
        {lesson.panels.map(({ id }, index) => (
          <span key={id} className="panel-title panel-title-room" aria-hidden="true">
            <PanelTitle tone={toned[index] ?? 'in time'} name={panelName(lesson, index, place, true)} />
          </span>
        ))}
      </h2>
      <div className={PICTURE_CLASS}>
        <button type="button" className="enlarge" aria-label={labels.enlarge(name)} onClick={() => enlarge(panel)} />
        {lesson.seen === 'mirror' ? <span className="picture-note">{showWords.mirrored}</span> : null}
        <span className="picture-note picture-page">
          <LiveText player={player} read={pageNow} />
        </span>
        {/* A press on the picture plays; the keyboard and screen readers have the button for it. */}
        <button type="button" className="press" tabIndex={-1} aria-hidden="true" onClick={player.toggle} />
      </div>
      <div className="panel-words">
        <p className="panel-now">
          <SteadyText player={player} read={read} beats={beats} hidden={!names} />
        </p>
        {names && way !== undefined && way.kind !== 'in time' ? (
          <button type="button" className="panel-sum" title={measureWords.open} onClick={() => measure(panel)}>
            {performanceWords(lesson.once, panel)}
          </button>
        ) : null}
      </div>
    </section>
  )
}
