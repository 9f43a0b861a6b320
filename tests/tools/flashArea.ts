import { CELL, CELL_AREA } from './coarseRaster.ts'
import { type Change, type Changes, changeOf, FRAME_RATE, frameOf, isUp } from './flashWatch.ts'

/** Ten degrees of a 1024 × 768 screen, in pixels (WCAG 2.2, note to the flash thresholds). */
const FIELD = { width: 341, height: 256 } as const

/** What may flash at once within ten degrees: a quarter of the field, in square pixels. */
export const FLASH_AREA = 0.25 * FIELD.width * FIELD.height

/**
 * So many opposing changes within a second are more than three flashes, the last one begun; so counts the test material of
 * github.com/jbjord/pse-test-media ("7 or more alternating transitions").
 */
const TOO_MANY = 7

/** Changes this near in time, in pictures, are one change of the whole: 50 ms, more than a picture of broadcast video. */
const AT_ONCE = 3

/** The most flashes that any cell has in any second, one that has begun counted whole. */
export function mostFlashes(changes: Changes): number {
  let most = 0
  for (const times of changes) {
    if (times === undefined) continue
    let first = 0
    for (let k = 0; k < times.length; k++) {
      while (frameOf(times[k] as Change) - frameOf(times[first] as Change) >= FRAME_RATE) first++
      most = Math.max(most, Math.ceil((k - first + 1) / 2))
    }
  }
  return most
}

/** A cell that has more than three flashes in each of the seconds that begin with the pictures `from` … `to`. */
type Run = { readonly cell: number; readonly from: number; readonly to: number }

function runsOf(changes: Changes): Run[] {
  const runs: Run[] = []
  changes.forEach((times, cell) => {
    if (times === undefined) return
    let counted = -1
    for (let k = TOO_MANY - 1; k < times.length; k++) {
      const to = frameOf(times[k - TOO_MANY + 1] as Change)
      const from = Math.max(0, frameOf(times[k] as Change) - FRAME_RATE + 1, counted + 1)
      if (from > to) continue
      counted = to
      runs.push({ cell, from, to })
    }
  })
  return runs
}

/** Cells in rows, the first row at the top. */
export type Grid = { readonly columns: number; readonly rows: number }

/** Square pixels of cells with more than three flashes in one second, and the picture with which it begins. */
export type WorstSecond = { readonly area: number; readonly frame: number }

/** The largest flashing area of a page, however far apart its cells are. */
export const worstSecond = (changes: Changes, { columns, rows }: Grid): WorstSecond =>
  worst(changes, new Uint8Array(columns * rows), 0, (_, total) => total)

/**
 * The largest flashing area within ten degrees, wherever the eye rests.
 * @param always 1 for cells that count as flashing in every second
 * @param least square pixels: where the whole page never has more, the answer is 0
 */
export function worstField(changes: Changes, page: Grid, always: Uint8Array, least = 0): WorstSecond {
  const wide = Math.min(page.columns, Math.ceil(FIELD.width / CELL))
  const high = Math.min(page.rows, Math.ceil(FIELD.height / CELL))
  return worst(changes, always, least / CELL_AREA, (map) => mostWithin(map, page, wide, high))
}

function worst(
  changes: Changes,
  always: Uint8Array,
  least: number,
  cellsOf: (map: Uint8Array, total: number) => number,
): WorstSecond {
  const runs = runsOf(changes)
  const before = always.reduce((sum, one) => sum + one, 0)
  if (before + mostTogether(runs) <= least) return { area: 0, frame: 0 }
  const map = always.slice()
  let total = before
  let [cells, frame] = [cellsOf(map, total), 0]
  const begin = byFrame(runs, ({ from }) => from)
  const end = byFrame(runs, ({ to }) => to + 1)
  const mark = (runsNow: readonly Run[] | undefined, as: 0 | 1): void => {
    for (const { cell } of runsNow ?? []) {
      if (always[cell] === 1) continue
      map[cell] = as
      total += as === 1 ? 1 : -1
    }
  }
  for (let now = 0; now < begin.length; now++) {
    mark(end[now], 0)
    mark(begin[now], 1)
    if (begin[now] === undefined || total <= Math.max(cells, least)) continue
    const found = cellsOf(map, total)
    if (found > cells) [cells, frame] = [found, now]
  }
  return { area: cells * CELL_AREA, frame }
}

function byFrame(runs: readonly Run[], frameOfRun: (run: Run) => number): (Run[] | undefined)[] {
  const frames: (Run[] | undefined)[] = []
  for (const run of runs) {
    const at = frameOfRun(run)
    const known = frames[at]
    if (known === undefined) frames[at] = [run]
    else known.push(run)
  }
  return frames
}

/** How many cells flash in one second, wherever they are. */
function mostTogether(runs: readonly Run[]): number {
  const begins = new Int32Array(runs.reduce((last, { to }) => Math.max(last, to), 0) + 2)
  for (const { from, to } of runs) {
    begins[from] = (begins[from] as number) + 1
    begins[to + 1] = (begins[to + 1] as number) - 1
  }
  let [now, most] = [0, 0]
  for (const change of begins) {
    now += change
    most = Math.max(most, now)
  }
  return most
}

/** What a map's cells in each rectangle of the given size come to, by sums over all that lies above and to the left. */
function eachWithin(
  map: ArrayLike<number>,
  { columns, rows }: Grid,
  wide: number,
  high: number,
  see: (within: number, place: number) => void,
): void {
  const sums = new Int32Array((columns + 1) * (rows + 1))
  const at = (row: number, column: number): number => sums[row * (columns + 1) + column] as number
  let place = 0
  for (let row = 1; row <= rows; row++) {
    let line = 0
    for (let column = 1; column <= columns; column++) {
      line += map[(row - 1) * columns + column - 1] as number
      sums[row * (columns + 1) + column] = at(row - 1, column) + line
      if (row < high || column < wide) continue
      see(at(row, column) - at(row - high, column) - at(row, column - wide) + at(row - high, column - wide), place++)
    }
  }
}

/** The most marked cells in any rectangle of the given size. */
function mostWithin(map: Uint8Array, page: Grid, wide: number, high: number): number {
  let most = 0
  eachWithin(map, page, wide, high, (within) => {
    most = Math.max(most, within)
  })
  return most
}

/** Adds a change to those of a whole, if it is large enough and turns the other way than the last. */
function noteLarge(large: Change[], frame: number, turned: number, area: number): void {
  const before = large.at(-1)
  if (Math.abs(turned) <= area || (before !== undefined && isUp(before) === turned > 0)) return
  large.push(changeOf(frame, turned > 0))
}

/**
 * How often in the worst second the whole page flashes as one: within 50 ms so much more of it turns one way than the
 * other, and then back. However far apart the parts are, they count together; what only moves darkens as much as it lightens.
 * @param area square pixels that must turn together
 */
export function flashesAsOne(changes: Changes, frames: number, area: number): number {
  // Sums up to and with each picture, after AT_ONCE zeros.
  const turns = new Float64Array(frames)
  for (const times of changes) {
    for (const change of times ?? []) {
      const frame = frameOf(change)
      turns[frame] = (turns[frame] as number) + (isUp(change) ? CELL_AREA : -CELL_AREA)
    }
  }
  const brightened = new Float64Array(frames + AT_ONCE)
  turns.forEach((turned, frame) => {
    brightened[frame + AT_ONCE] = (brightened[frame + AT_ONCE - 1] as number) + turned
  })
  const large: Change[] = []
  for (let frame = 0; frame < frames; frame++) {
    noteLarge(large, frame, (brightened[frame + AT_ONCE] as number) - (brightened[frame] as number), area)
  }
  return mostFlashes([large])
}

/** Ten degrees are laid over a page at every fourth cell each way. */
const BLOCK = 4

/**
 * The same of ten degrees, wherever the eye rests: parts of a page that turn opposite ways do not make up for each other
 * unless they lie so near.
 * @param area square pixels that must turn together
 */
export function fieldFlashesAsOne(changes: Changes, frames: number, page: Grid, area: number): number {
  const blocks = { columns: Math.ceil(page.columns / BLOCK), rows: Math.ceil(page.rows / BLOCK) }
  const wide = Math.min(blocks.columns, Math.ceil(FIELD.width / (BLOCK * CELL)))
  const high = Math.min(blocks.rows, Math.ceil(FIELD.height / (BLOCK * CELL)))
  const turns = Array.from({ length: frames }, () => new Int32Array(blocks.columns * blocks.rows))
  changes.forEach((times, cell) => {
    const row = Math.floor(cell / page.columns / BLOCK)
    const block = row * blocks.columns + Math.floor((cell % page.columns) / BLOCK)
    for (const change of times ?? []) {
      const turned = turns[frameOf(change)] as Int32Array
      turned[block] = (turned[block] as number) + (isUp(change) ? 1 : -1)
    }
  })
  const now = new Int32Array(blocks.columns * blocks.rows)
  const add = (turned: Int32Array | undefined, sign: 1 | -1): void =>
    turned?.forEach((by, block) => {
      now[block] = (now[block] as number) + sign * by
    })
  const large: Change[][] = []
  turns.forEach((turned, frame) => {
    add(turned, 1)
    add(turns[frame - AT_ONCE], -1)
    eachWithin(now, blocks, wide, high, (within, place) => {
      large[place] ??= []
      noteLarge(large[place], frame, within * CELL_AREA, area)
    })
  })
  return mostFlashes(large)
}
