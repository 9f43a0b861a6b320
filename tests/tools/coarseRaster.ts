import type { Paint } from './colourTable.ts'

/**
 * A picture of one sample in the middle of each cell: every sample is a pixel of the full picture, so that counting
 * cells measures areas also of lines thinner than a cell.
 */
export type CoarseRaster = {
  readonly columns: number
  readonly rows: number
  readonly cells: Uint8Array
  /** @param points a closed polygon, x and y in turn, in pixels from the middle, y down; even-odd */
  fill(points: ArrayLike<number>, paint: Paint): void
  /** @param bands drawn one over the other, widest first: full width in pixels, and paint */
  stroke(points: ArrayLike<number>, closed: boolean, bands: readonly Band[]): void
}

export type Band = readonly [width: number, paint: Paint]

/** Side of a cell, in pixels. */
export const CELL = 8
export const CELL_AREA = CELL * CELL

/** @param width, height in pixels; what is left beyond whole cells is not seen */
export function coarseRaster(width: number, height: number): CoarseRaster {
  const [columns, rows] = [Math.floor(width / CELL), Math.floor(height / CELL)]
  const cells = new Uint8Array(columns * rows)
  // Where the sample of column or row 0 lies, from the middle.
  const [left, top] = [CELL / 2 - width / 2, CELL / 2 - height / 2]
  // Used by one stroke after the other.
  const distances = new Float64Array(cells.length).fill(Number.POSITIVE_INFINITY)
  const touched = new Int32Array(cells.length)
  let touches = 0
  const crossings: number[] = []

  const firstFrom = (value: number, origin: number) => Math.max(0, Math.ceil((value - origin) / CELL))
  const paintAt = (cell: number, paint: Paint): void => {
    cells[cell] = paint(cells[cell] as number)
  }

  const measure = (x0: number, y0: number, x1: number, y1: number, reach: number): void => {
    const dx = x1 - x0
    const dy = y1 - y0
    const length = dx * dx + dy * dy
    const lastColumn = Math.min(columns - 1, Math.floor((Math.max(x0, x1) + reach - left) / CELL))
    const lastRow = Math.min(rows - 1, Math.floor((Math.max(y0, y1) + reach - top) / CELL))
    for (let row = firstFrom(Math.min(y0, y1) - reach, top); row <= lastRow; row++) {
      for (let column = firstFrom(Math.min(x0, x1) - reach, left); column <= lastColumn; column++) {
        const px = left + column * CELL - x0
        const py = top + row * CELL - y0
        const t = length === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / length))
        const distance = (px - t * dx) ** 2 + (py - t * dy) ** 2
        const cell = row * columns + column
        if (distance > reach * reach || distance >= (distances[cell] as number)) continue
        if (distances[cell] === Number.POSITIVE_INFINITY) touched[touches++] = cell
        distances[cell] = distance
      }
    }
  }

  return {
    columns,
    rows,
    cells,
    fill(points, paint) {
      let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
      for (let i = 1; i < points.length; i += 2) {
        low = Math.min(low, points[i] as number)
        high = Math.max(high, points[i] as number)
      }
      const lastRow = Math.min(rows - 1, Math.floor((high - top) / CELL))
      for (let row = firstFrom(low, top); row <= lastRow; row++) {
        const y = top + row * CELL
        crossings.length = 0
        let x0 = points[points.length - 2] as number
        let y0 = points[points.length - 1] as number
        for (let i = 0; i < points.length; i += 2) {
          const x1 = points[i] as number
          const y1 = points[i + 1] as number
          if (y0 > y !== y1 > y) crossings.push(x0 + ((x1 - x0) * (y - y0)) / (y1 - y0))
          x0 = x1
          y0 = y1
        }
        if (crossings.length > 2 || (crossings[0] as number) > (crossings[1] as number)) crossings.sort((a, b) => a - b)
        for (let k = 0; k + 1 < crossings.length; k += 2) {
          const last = Math.min(columns - 1, Math.floor(((crossings[k + 1] as number) - left) / CELL))
          for (let column = firstFrom(crossings[k] as number, left); column <= last; column++) {
            paintAt(row * columns + column, paint)
          }
        }
      }
    },
    stroke(points, closed, bands) {
      const reach = (bands[0] as Band)[0] / 2
      touches = 0
      const end = points.length
      for (let i = closed ? 0 : 2; i < end; i += 2) {
        const before = i === 0 ? end - 2 : i - 2
        measure(
          points[before] as number,
          points[before + 1] as number,
          points[i] as number,
          points[i + 1] as number,
          reach,
        )
      }
      if (end === 2) measure(points[0] as number, points[1] as number, points[0] as number, points[1] as number, reach)
      for (let k = 0; k < touches; k++) {
        const cell = touched[k] as number
        const distance = Math.sqrt(distances[cell] as number)
        distances[cell] = Number.POSITIVE_INFINITY
        for (const [width, paint] of bands) if (distance <= width / 2) paintAt(cell, paint)
      }
    },
  }
}
