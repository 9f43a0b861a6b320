import { describe, expect, test } from 'vitest'
import type { DanceId } from '../../src/dance/dance.ts'
import { danceList, dances } from '../../src/dance/dances.ts'
import { playedTempoRange } from '../../src/dance/playedTempoRange.ts'
import type { Direction, Figure } from '../../src/figure/figure.ts'
import { footprintOutline } from '../../src/scene/footprint.ts'
import { palettes, type Theme } from '../../src/scene/palette.ts'
import { type Session, withNamesOff, withTiming } from '../../src/session/session.ts'
import { gridPoints } from '../../src/timing/grid.ts'
import { countNow } from '../../src/words/countWords.ts'
import { type CoarseFilm, coarseFilm, PANEL, PANEL_PITCH, PANELS_PAGE } from '../tools/coarseFilm.ts'
import { CELL, CELL_AREA } from '../tools/coarseRaster.ts'
import { demos } from '../tools/demos.ts'
import { exampleFigure } from '../tools/exampleFigure.ts'
import { FLASH_AREA, flashesAsOne, mostFlashes, worstField, worstSecond } from '../tools/flashArea.ts'
import { type FlashWatch, FRAME_RATE, flashWatch, isRedChange } from '../tools/flashWatch.ts'
import { bytesOf, type Light, lightOf } from '../tools/relativeLuminance.ts'

const THEMES: readonly Theme[] = ['light', 'dark']
const lightOfHex = (hex: string): Light => lightOf(bytesOf(hex))

// The large count lies under the first panel's left end, below at least one line of the panel's words: 1.3 rem of text and
// gaps of 0.4 and 0.75 rem make 39 px. Its size is 6 rem, or 17 % of 768 px = 131 px in the teaching view; of that a figure
// or letter takes at most 0.8 each way (text faces, from memory).
const WORDS = 32 / CELL
const COUNT = 112 / CELL
const PAGE = { columns: PANELS_PAGE.columns, rows: PANELS_PAGE.rows + WORDS + COUNT }
const NOTHING = new Uint8Array(PAGE.columns * PAGE.rows)

/** How many flashes a second the count makes: it changes between ink and grey, or its text, at every grid point. */
const countRate = ({ beatsPerSecond, lesson }: CoarseFilm): number => beatsPerSecond / lesson.schedule.grid / 2

/** The most characters that the large count shows, counted in any way. */
function countLength({ lesson }: CoarseFilm): number {
  const ways = ['slows and quicks', 'bars and beats', 'half beats'] as const
  const points = gridPoints(lesson.range.from, lesson.range.to, lesson.schedule.grid)
  return Math.max(...ways.flatMap((way) => points.map((t) => countNow(lesson, way, t).text.length)))
}

/** The count's whole box as flashing in every second, where it changes often enough for more than three flashes in one. */
function countCells(film: CoarseFilm): Uint8Array {
  const cells = NOTHING.slice()
  if (countRate(film) <= 3) return cells
  for (let row = PAGE.rows - COUNT; row < PAGE.rows; row++) {
    cells.fill(1, row * PAGE.columns, row * PAGE.columns + COUNT * countLength(film))
  }
  return cells
}

/** One watch a list of colours: all see the same pictures. */
function watched(frames: Iterable<Uint8Array>, ...lights: readonly ((index: number) => Light)[]): FlashWatch[] {
  const watches = lights.map(flashWatch)
  for (const frame of frames) for (const watch of watches) watch.see(frame)
  return watches
}

/** Some cells of the panels' page go between two colours `rate` times a second, for two seconds, half of the time each. */
function blink(rate: number, cells: readonly number[], colours: readonly [Light, Light]): FlashWatch {
  const frames = Array.from({ length: 2 * FRAME_RATE }, (_, k) => {
    const frame = new Uint8Array(PANELS_PAGE.columns * PANELS_PAGE.rows)
    const on = Math.floor((2 * k * rate) / FRAME_RATE + 1e-9) % 2 === 1
    if (on) for (const cell of cells) frame[cell] = 1
    return frame
  })
  return watched(frames, (index) => colours[index] as Light)[0] as FlashWatch
}

/** The cells of a block of one panel, from its upper left corner. */
function block(panel: number, columns: number, rows: number): number[] {
  const left = panel * PANEL_PITCH
  return Array.from({ length: columns * rows }, (_, k) => {
    return Math.floor(k / columns) * PANELS_PAGE.columns + left + (k % columns)
  })
}
const WHOLE = [PANEL.width / CELL, PANEL.height / CELL] as const
const BLACK_WHITE = [lightOfHex('#000000'), lightOfHex('#FFFFFF')] as const
const grey = (luminance: number): Light => [luminance, luminance, luminance]

describe('FLASH_AREA', () => {
  test('a quarter of 341 × 256 px, and a quarter of a cone of ten degrees is 0.006 sr (WCAG 2.2, 2.3.1)', () => {
    expect(FLASH_AREA).toBe(21824)
    const cone = 2 * Math.PI * (1 - Math.cos((5 * Math.PI) / 180))
    expect(cone).toBeCloseTo(0.023909417, 9)
    expect((0.25 * cone).toFixed(3)).toBe('0.006')
  })
})

describe('the detector', () => {
  // Worked by hand: flashes a second, and one that has begun counts.
  test.each([
    [84, 2, 3],
    [90, 2, 3],
    [112, 2, 4],
    [120, 2, 4],
    [128, 3, 5],
    [174, 3, 6],
    [180, 3, 6],
    [184, 4, 7],
    [192, 4, 7],
    [200, 4, 7],
    [208, 4, 7],
  ])(
    'at %d beats a minute: %d flashes in the worst second with one a beat, %d with one a half beat',
    (bpm, one, two) => {
      expect(mostFlashes(blink(bpm / 60, [0], BLACK_WHITE).general)).toBe(one)
      expect(mostFlashes(blink(bpm / 30, [0], BLACK_WHITE).general)).toBe(two)
    },
  )
  test('finds a panel that blinks at 4 Hz, and lets 3 Hz through', () => {
    const [four, three] = [4, 3].map((rate) => blink(rate, block(1, ...WHOLE), BLACK_WHITE)) as [FlashWatch, FlashWatch]
    expect(worstField(four.general, PAGE, NOTHING).area).toBe(PANEL.width * 256)
    expect(worstSecond(four.general, PAGE).area).toBe(PANEL.width * PANEL.height)
    expect(flashesAsOne(four.general, four.frames(), FLASH_AREA)).toBe(4)
    expect(worstField(three.general, PAGE, NOTHING).area).toBe(0)
    expect(flashesAsOne(three.general, three.frames(), FLASH_AREA)).toBe(3)
  })
  test('lets a small area through, and adds to it what always flashes', () => {
    const small = blink(4, block(0, 18, 18), BLACK_WHITE)
    expect(worstField(small.general, PAGE, NOTHING).area).toBe(18 * 18 * CELL_AREA)
    expect(18 * 18 * CELL_AREA).toBeLessThan(FLASH_AREA)
    expect(flashesAsOne(small.general, small.frames(), FLASH_AREA)).toBe(0)
    const low = block(0, 18, 14).map((cell) => cell + (PANELS_PAGE.rows - 14) * PAGE.columns)
    const count = NOTHING.slice()
    for (let row = PAGE.rows - COUNT; row < PAGE.rows; row++) {
      count.fill(1, row * PAGE.columns, row * PAGE.columns + COUNT)
    }
    const { area } = worstField(blink(4, low, BLACK_WHITE).general, PAGE, count)
    expect(area).toBe((18 * 14 + COUNT * COUNT) * CELL_AREA)
    expect(area).toBeGreaterThan(FLASH_AREA)
  })
  test('counts panels together that blink together, also where none is large enough by itself', () => {
    const cells = [0, 1, 2].flatMap((panel) => block(panel, 14, 14))
    const together = blink(4, cells, BLACK_WHITE)
    expect(14 * 14 * CELL_AREA).toBeLessThan(FLASH_AREA)
    expect(flashesAsOne(together.general, together.frames(), FLASH_AREA)).toBe(4)
  })
  test('a change is a tenth of full light, and the darker state is below 0.80', () => {
    const seen = (from: number, to: number) => mostFlashes(blink(4, [0], [grey(from), grey(to)]).general)
    expect(seen(0.3, 0.401)).toBe(4)
    expect(seen(0.3, 0.399)).toBe(0)
    expect(seen(0.79, 0.9)).toBe(4)
    expect(seen(0.81, 0.99)).toBe(0)
  })
  test('saturated red against a grey as bright is a red flash and no general one', () => {
    const red = blink(4, [0], [lightOfHex('#FF0000'), grey(0.2126)])
    expect(mostFlashes(red.red)).toBe(4)
    expect(mostFlashes(red.general)).toBe(0)
  })
  test('sees a blink in the middle of a dance', () => {
    const film = coarseFilm(demos[0] as Figure, 30)
    const black = 255
    const frames = Array.from(film.frames(), (frame, k) =>
      Math.floor((8 * k) / FRAME_RATE) % 2 === 1 ? frame.map(() => black) : frame.slice(),
    )
    const light = (index: number): Light => (index === black ? [0, 0, 0] : film.colours.light('light', index))
    const { general } = watched(frames, light)[0] as FlashWatch
    expect(worstField(general, PAGE, NOTHING).area).toBeGreaterThan(FLASH_AREA)
  })
})

/** Of a closed polygon, x and y in turn (Gauss's trapezoids). */
function areaOf(points: readonly number[]): number {
  let twice = 0
  for (let i = 0; i < points.length; i += 2) {
    const next = (i + 2) % points.length
    twice += (points[i] as number) * (points[next + 1] as number) - (points[next] as number) * (points[i + 1] as number)
  }
  return Math.abs(twice) / 2
}

describe('the coarse picture', () => {
  test('shows at any time about one foot full of weight, and a marker, in the tone of the panel', () => {
    const film = coarseFilm(demos[0] as Figure, 30)
    const frames = Array.from(film.frames(), (frame) => frame.slice())
    const indices = new Set(frames.flatMap((frame) => [...new Set(frame)]))
    // A foot is between a ninth and two sevenths of the panel's height (src/scene/view.ts).
    const foot = (part: number) => areaOf(footprintOutline('left')) * (part * PANEL.height) ** 2
    const marker = 0.1 * PANEL.width * PANEL.height
    for (const [panel, tone] of (['in time', 'late', 'early'] as const).entries()) {
      const accent = lightOfHex(palettes.light.stage.accent[tone])
      const isAccent = (index: number) => film.colours.light('light', index).every((part, k) => part === accent[k])
      const accents = new Set([...indices].filter(isAccent))
      const cells = block(panel, ...WHOLE)
      const shown = frames.map((frame) => cells.filter((cell) => accents.has(frame[cell] as number)).length)
      expect(Math.min(...shown) * CELL_AREA).toBeGreaterThan(foot(1 / 9))
      expect(Math.max(...shown) * CELL_AREA).toBeLessThan(foot(2 / 7) + marker)
    }
  })
})

describe('palettes', () => {
  test.each(THEMES)('%s: no tone makes a red flash on any part of its panel', (theme) => {
    const { accent, ...parts } = palettes[theme].stage
    for (const tone of Object.values(accent).map(lightOfHex)) {
      for (const part of Object.values(parts).map(lightOfHex)) {
        expect(isRedChange(tone, part)).toBe(false)
        expect(isRedChange(part, tone)).toBe(false)
      }
    }
  })
})

/** Half-beat steps over two bars. */
function halfBeats(dance: DanceId, directions: readonly [Direction, Direction]): Figure {
  const count = 4 * dances[dance].beatsPerBar
  const steps = Array.from({ length: count }, (_, k) => directions[k % 2] as Direction)
  return exampleFigure(
    dance,
    steps.map(() => 0.5),
    steps,
  )
}

/**
 * The two readings of "the combined area of flashes occurring concurrently ... within any 10 degree visual field": within
 * a field, all cells that flash in the same second, whenever in it; over all panels, what flashes at the same time.
 * @param part of the played tempi, 1 = the fastest
 */
function expectNoFlashing(figure: Figure, part: number, change: (session: Session) => Session): void {
  const { from, to } = playedTempoRange(dances[figure.dance])
  const film = coarseFilm(figure, from + part * (to - from), change)
  const always = countCells(film)
  const count = always.reduce((sum, one) => sum + one, 0) * CELL_AREA
  const lights = THEMES.map((theme) => (index: number) => film.colours.light(theme, index))
  for (const watch of watched(film.frames(), ...lights)) {
    expect(mostFlashes(watch.general)).toBeGreaterThan(0)
    expect(mostFlashes(watch.red)).toBe(0)
    expect(worstField(watch.general, PAGE, always, FLASH_AREA).area).toBeLessThan(FLASH_AREA)
    expect(flashesAsOne(watch.general, watch.frames(), FLASH_AREA - count)).toBeLessThanOrEqual(3)
  }
}

const timed = demos.flatMap((figure) => figure.timings.map((_, timing) => [figure.id, timing, figure] as const))

describe('no flashing by WCAG 2.2, 2.3.1, in both themes, at the fastest', () => {
  test.each(timed)('%s, timing %d, with names', (_id, timing, figure) => {
    expectNoFlashing(figure, 1, (session) => withTiming(session, figure, timing))
  })
  test.each(timed.filter(([, timing]) => timing === 0))('%s, timing %d, names off', (_id, _timing, figure) => {
    expectNoFlashing(figure, 1, (session) => withNamesOff(session, session.order))
  })
})

const danceIds = danceList.map(({ id }) => id).filter((id) => id !== 'exercise')
describe.each(danceIds)('no flashing by WCAG 2.2, 2.3.1, in both themes: %s in half beats', (id) => {
  test.each([
    ['in place', 1, ['in place', 'in place']],
    ['side and close', 0.8, ['side', 'close']],
  ] as const)('%s, at %d of the tempi', (_steps, part, directions) => {
    expectNoFlashing(halfBeats(id, directions), part, (session) => session)
  })
})
