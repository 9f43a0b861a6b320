import type { Figure } from '../figure/figure.ts'
import { pageAt } from '../scene/pages.ts'
import { type PanelView, panelView } from '../scene/panelView.ts'
import { strip } from '../scene/strip.ts'
import { viewsOf } from '../scene/view.ts'
import { gridPoints } from '../timing/grid.ts'
import { conventionWords } from '../words/conventionWords.ts'
import { countNow } from '../words/countWords.ts'
import { stageWords } from '../words/stageWords.ts'
import { lessonOf } from './lesson.ts'
import type { Session } from './session.ts'

/** Of a panel, CSS px; any size will do. */
const SIZE = 400
/** Beats looked at, spread over the whole figure: enough for every kind of step, and no long figure keeps people waiting. */
const MOST_BEATS = 300

/**
 * Makes all that the page would show of a figure, away from the page.
 * @throws whatever the page would have thrown: the figure cannot be shown
 */
export function rehearse(session: Session, figure: Figure): void {
  const lesson = lessonOf(session, figure)
  const { range, schedule } = lesson
  const points = gridPoints(range.from, range.to, schedule.grid)
  const every = Math.ceil(points.length / MOST_BEATS)
  const beats = points.filter((_, k) => k % every === 0)
  strip(lesson)
  const views = viewsOf(lesson, SIZE, SIZE)
  const pages = views.map(({ page }) => page)
  lesson.panels.forEach((_, panel) => {
    const panels = views.map((view) => panelView(lesson, panel, view, session.names))
    for (const at of beats) {
      const { marker } = (panels[pageAt(pages, at)] as PanelView).frameAt(at)
      if (!Number.isFinite(marker.x + marker.y)) throw new RangeError('the weight has no place on the floor')
      stageWords(lesson, panel, at)
    }
  })
  for (const at of beats) {
    countNow(lesson, session.counting, at)
    conventionWords(lesson, at)
  }
}
