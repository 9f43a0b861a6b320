import { beatAt, playing, standingClock } from '../../src/clock/clock.ts'
import { dances } from '../../src/dance/dances.ts'
import { secondsPerBeat } from '../../src/dance/secondsPerBeat.ts'
import type { Figure } from '../../src/figure/figure.ts'
import { pageAt } from '../../src/scene/pages.ts'
import { panelView } from '../../src/scene/panelView.ts'
import { type View, viewsOf } from '../../src/scene/view.ts'
import { type Lesson, lessonOf } from '../../src/session/lesson.ts'
import { newSession, type Session } from '../../src/session/session.ts'
import { beat, seconds } from '../../src/units.ts'
import { coarsePanel } from './coarsePanel.ts'
import { CELL } from './coarseRaster.ts'
import { type ColourTable, colourTable } from './colourTable.ts'
import type { Grid } from './flashArea.ts'
import { FRAME_RATE } from './flashWatch.ts'

/** Of a panel, in whole cells, pixels; a page of such panels has four times n cells. */
export type PanelSize = { readonly width: number; readonly height: number }

/** A panel at 1024 × 768 with three side by side, and the page's grid of cells: panels, and a gap between them. */
export const PANEL = { width: 320, height: 368 } as const
const GAP = 16
const pageOf = (panels: number, { width, height }: PanelSize): Grid => ({
  columns: (panels * (width + GAP) - GAP) / CELL,
  rows: height / CELL,
})
export const PANELS_PAGE = pageOf(3, PANEL)
/** One picture on all of a 1920 × 1080 screen, without the count and the strip, which take some of it. */
export const LARGE_PICTURE = { width: 1920, height: 1080 } as const
export const LARGE_PAGE = pageOf(1, LARGE_PICTURE)
/** Columns from one panel's left edge to the next one's. */
const pitchOf = ({ width }: PanelSize): number => (width + GAP) / CELL
export const PANEL_PITCH = pitchOf(PANEL)

/** What is seen while a figure is played over and over, as coarse pictures 1/60 s apart. */
export type CoarseFilm = {
  readonly lesson: Lesson
  readonly beatsPerSecond: number
  readonly colours: ColourTable
  /** Of all panels, and the gaps between them; of three panels it is PANELS_PAGE. */
  readonly page: Grid
  /** The cells of the page, row by row; the same array each time. */
  frames(): Iterable<Uint8Array>
}

/** Before the seconds that count: until then nothing is known of what was on the screen. */
const RUN_IN = 0.25
const LAST_SECOND = 1

/** One panel at a beat, whichever page is then turned up. */
function painterOf(lesson: Lesson, views: readonly View[], panel: number, names: boolean, colours: ColourTable) {
  const { width, height } = views[0] as View
  const columns = width / CELL
  const pages = views.map(({ page }) => page)
  const scenes = views.map((view) => {
    const scene = panelView(lesson, panel, view, names)
    const coarse = coarsePanel(scene, width, height, colours)
    // The panel's cells are the same array each time, so its rows are cut once.
    const cells = coarse.paint(scene.frameAt(lesson.range.from))
    const rows = Array.from({ length: height / CELL }, (_, row) => cells.subarray(row * columns, (row + 1) * columns))
    return { scene, coarse, rows }
  })
  return (t: number): readonly Uint8Array[] => {
    const { scene, coarse, rows } = scenes[pageAt(pages, t)] as (typeof scenes)[number]
    coarse.paint(scene.frameAt(t))
    return rows
  }
}

/**
 * A moment to begin with, a whole round with its seam, and the second after.
 * @param change what people have set
 * @param size of each panel
 */
export function coarseFilm(
  figure: Figure,
  barsPerMinute: number,
  change: (session: Session) => Session = (session) => session,
  size: PanelSize = PANEL,
): CoarseFilm {
  const session = { ...change(newSession(figure, beat(0))), barsPerMinute }
  const lesson = lessonOf(session, figure)
  const colours = colourTable()
  const views = viewsOf(lesson, size.width, size.height)
  const painters = session.order.map((panel) => painterOf(lesson, views, panel, session.names, colours))
  const beatLength = secondsPerBeat(dances[figure.dance], barsPerMinute)
  const clock = playing(standingClock(lesson.range, beatLength, lesson.round, seconds(0)), seconds(0))
  const count = Math.ceil((RUN_IN + lesson.round * beatLength + LAST_SECOND) * FRAME_RATE)
  const page = pageOf(session.order.length, size)
  const pitch = pitchOf(size)
  const shown = new Uint8Array(page.columns * page.rows)
  function* frames(): Generator<Uint8Array> {
    for (let k = 0; k < count; k++) {
      const t = beatAt(clock, seconds(k / FRAME_RATE))
      painters.forEach((paint, place) => {
        paint(t).forEach((cells, row) => {
          shown.set(cells, row * page.columns + place * pitch)
        })
      })
      yield shown
    }
  }
  return { lesson, beatsPerSecond: 1 / beatLength, colours, page, frames }
}
