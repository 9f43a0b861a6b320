import { gridPoints } from '../../src/timing/grid.ts'
import { countNow } from '../../src/words/countWords.ts'
import { type CoarseFilm, PANELS_PAGE } from './coarseFilm.ts'
import { CELL } from './coarseRaster.ts'
import type { Grid } from './flashArea.ts'

// The large count lies under the first panel's left end, below at least one line of the panel's words: 1.3 rem of text and
// gaps of 0.4 and 0.75 rem make 39 px. Its size is 6 rem, or 17 % of 768 px = 131 px in the teaching view; of that a figure
// or letter takes at most 0.8 each way (text faces, from memory).
const WORDS = 32 / CELL
/** Side of one character's box, in cells. */
export const COUNT = 112 / CELL
/** The panels' page, and the count under it. */
export const PAGE: Grid = { columns: PANELS_PAGE.columns, rows: PANELS_PAGE.rows + WORDS + COUNT }
/** No cell of it. */
export const NOTHING = new Uint8Array(PAGE.columns * PAGE.rows)

/** How many flashes a second the count makes: it changes between ink and grey, or its text, at every grid point. */
const countRate = ({ beatsPerSecond, lesson }: CoarseFilm): number => beatsPerSecond / lesson.schedule.grid / 2

/** The most characters that the large count shows, counted in any way. */
function countLength({ lesson }: CoarseFilm): number {
  const ways = ['slows and quicks', 'bars and beats', 'half beats'] as const
  const points = gridPoints(lesson.range.from, lesson.range.to, lesson.schedule.grid)
  return Math.max(...ways.flatMap((way) => points.map((t) => countNow(lesson, way, t).text.length)))
}

/** The count's whole box as flashing in every second, where it changes often enough for more than three flashes in one. */
export function countCells(film: CoarseFilm): Uint8Array {
  const cells = NOTHING.slice()
  if (countRate(film) <= 3) return cells
  for (let row = PAGE.rows - COUNT; row < PAGE.rows; row++) {
    cells.fill(1, row * PAGE.columns, row * PAGE.columns + COUNT * countLength(film))
  }
  return cells
}
