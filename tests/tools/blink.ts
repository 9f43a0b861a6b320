import { PANEL_PITCH, PANELS_PAGE } from './coarseFilm.ts'
import type { Grid } from './flashArea.ts'
import { type FlashWatch, FRAME_RATE, watched } from './flashWatch.ts'
import type { Light } from './relativeLuminance.ts'

/**
 * Some cells of a page go between two colours `rate` times a second, for two seconds, half of the time each.
 * @param against cells that do so the other way round
 */
export function blink(
  rate: number,
  cells: readonly number[],
  colours: readonly [Light, Light],
  { columns, rows }: Grid = PANELS_PAGE,
  against: readonly number[] = [],
): FlashWatch {
  const frames = Array.from({ length: 2 * FRAME_RATE }, (_, k) => {
    const frame = new Uint8Array(columns * rows)
    const on = Math.floor((2 * k * rate) / FRAME_RATE + 1e-9) % 2 === 1
    for (const cell of on ? cells : against) frame[cell] = 1
    return frame
  })
  return watched(frames, (index) => colours[index] as Light)[0] as FlashWatch
}

/** The cells of a block at the upper edge of a page. @param left in cells */
export const block = (left: number, columns: number, rows: number, page: Grid = PANELS_PAGE): number[] =>
  Array.from({ length: columns * rows }, (_, k) => Math.floor(k / columns) * page.columns + left + (k % columns))

/** The same of one panel of the panels' page. */
export const panelBlock = (panel: number, columns: number, rows: number): number[] =>
  block(panel * PANEL_PITCH, columns, rows)
