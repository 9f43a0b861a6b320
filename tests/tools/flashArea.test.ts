import { describe, expect, test } from 'vitest'
import type { Figure } from '../../src/figure/figure.ts'
import { type Session, withOrder, withSeen, withSteps } from '../../src/session/session.ts'
import { blink, block, panelBlock } from './blink.ts'
import { coarseFilm, LARGE_PAGE, LARGE_PICTURE, PANEL, PANELS_PAGE } from './coarseFilm.ts'
import { CELL, CELL_AREA } from './coarseRaster.ts'
import { demos } from './demos.ts'
import { FLASH_AREA, fieldFlashesAsOne, flashesAsOne, mostFlashes, worstField, worstSecond } from './flashArea.ts'
import { type Changes, type FlashWatch, FRAME_RATE, watched } from './flashWatch.ts'
import { COUNT, NOTHING, PAGE } from './largeCount.ts'
import { bytesOf, type Light, lightOf } from './relativeLuminance.ts'

const lightOfHex = (hex: string): Light => lightOf(bytesOf(hex))
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
    const [four, three] = [4, 3].map((rate) => blink(rate, panelBlock(1, ...WHOLE), BLACK_WHITE)) as [
      FlashWatch,
      FlashWatch,
    ]
    expect(worstField(four.general, PAGE, NOTHING).area).toBe(PANEL.width * 256)
    expect(worstSecond(four.general, PAGE).area).toBe(PANEL.width * PANEL.height)
    expect(flashesAsOne(four.general, four.frames(), FLASH_AREA)).toBe(4)
    expect(worstField(three.general, PAGE, NOTHING).area).toBe(0)
    expect(flashesAsOne(three.general, three.frames(), FLASH_AREA)).toBe(3)
  })
  test('lets a small area through, and adds to it what always flashes', () => {
    const small = blink(4, panelBlock(0, 18, 18), BLACK_WHITE)
    expect(worstField(small.general, PAGE, NOTHING).area).toBe(18 * 18 * CELL_AREA)
    expect(18 * 18 * CELL_AREA).toBeLessThan(FLASH_AREA)
    expect(flashesAsOne(small.general, small.frames(), FLASH_AREA)).toBe(0)
    const low = panelBlock(0, 18, 14).map((cell) => cell + (PANELS_PAGE.rows - 14) * PAGE.columns)
    const count = NOTHING.slice()
    for (let row = PAGE.rows - COUNT; row < PAGE.rows; row++) {
      count.fill(1, row * PAGE.columns, row * PAGE.columns + COUNT)
    }
    const { area } = worstField(blink(4, low, BLACK_WHITE).general, PAGE, count)
    expect(area).toBe((18 * 14 + COUNT * COUNT) * CELL_AREA)
    expect(area).toBeGreaterThan(FLASH_AREA)
  })
  test('counts panels together that blink together, also where none is large enough by itself', () => {
    const cells = [0, 1, 2].flatMap((panel) => panelBlock(panel, 14, 14))
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
  test('finds that ten degrees blink, also where others do so the other way round', () => {
    const [here, there] = [16, 140].map((left) => block(left, 24, 24, LARGE_PAGE)) as [number[], number[]]
    expect(here.length * CELL_AREA).toBeGreaterThan(FLASH_AREA)
    const [four, three] = [4, 3].map((rate) => blink(rate, here, BLACK_WHITE, LARGE_PAGE, there).general) as [
      Changes,
      Changes,
    ]
    const frames = 2 * FRAME_RATE
    expect(flashesAsOne(four, frames, FLASH_AREA)).toBe(0)
    expect(fieldFlashesAsOne(four, frames, LARGE_PAGE, FLASH_AREA)).toBe(4)
    expect(fieldFlashesAsOne(three, frames, LARGE_PAGE, FLASH_AREA)).toBe(3)
  })
  test('lets through what blinks together but nowhere within ten degrees on a large enough area', () => {
    const cells = [0, 60, 120, 180].flatMap((left) => block(left, 16, 16, LARGE_PAGE))
    const { general, frames } = blink(4, cells, BLACK_WHITE, LARGE_PAGE)
    expect(flashesAsOne(general, frames(), FLASH_AREA)).toBe(4)
    expect(fieldFlashesAsOne(general, frames(), LARGE_PAGE, FLASH_AREA)).toBe(0)
  })
  test.each([
    ['a dance', (session: Session) => session, PANEL],
    ['a loop of two steps', (session: Session) => withSteps(session, { first: 1, last: 2 }), PANEL],
    ['a dance seen in a mirror', (session: Session) => withSeen(session, 'mirror'), PANEL],
    ['one large picture', (session: Session) => withOrder(session, [0]), LARGE_PICTURE],
  ] as const)('sees a blink in the middle of %s', (_, change, size) => {
    const film = coarseFilm(demos[0] as Figure, 30, change, size)
    const black = 255
    const frames: Uint8Array[] = []
    for (const frame of film.frames()) {
      const on = Math.floor((8 * frames.length) / FRAME_RATE) % 2 === 1
      frames.push(on ? frame.map(() => black) : frame.slice())
      if (frames.length === 1.5 * FRAME_RATE) break
    }
    const light = (index: number): Light => (index === black ? [0, 0, 0] : film.colours.light('light', index))
    const { general } = watched(frames, light)[0] as FlashWatch
    const nothing = new Uint8Array(film.page.columns * film.page.rows)
    expect(worstField(general, film.page, nothing).area).toBeGreaterThan(FLASH_AREA)
    expect(fieldFlashesAsOne(general, frames.length, film.page, FLASH_AREA)).toBeGreaterThan(3)
    expect(flashesAsOne(general, frames.length, FLASH_AREA)).toBeGreaterThan(3)
  })
})
