import { describe, expect, test } from 'vitest'
import type { DanceId } from '../../src/dance/dance.ts'
import { danceList, dances } from '../../src/dance/dances.ts'
import { playedTempoRange } from '../../src/dance/playedTempoRange.ts'
import type { Direction, Figure } from '../../src/figure/figure.ts'
import { footprintOutline } from '../../src/scene/footprint.ts'
import { palettes, type Theme } from '../../src/scene/palette.ts'
import type { Lesson } from '../../src/session/lesson.ts'
import {
  type Session,
  withNamesOff,
  withOpposite,
  withOrder,
  withSeen,
  withSteps,
  withTiming,
} from '../../src/session/session.ts'
import { panelBlock } from '../tools/blink.ts'
import { coarseFilm, LARGE_PICTURE, PANEL } from '../tools/coarseFilm.ts'
import { CELL, CELL_AREA } from '../tools/coarseRaster.ts'
import { demos } from '../tools/demos.ts'
import { exampleFigure } from '../tools/exampleFigure.ts'
import { FLASH_AREA, fieldFlashesAsOne, flashesAsOne, mostFlashes, worstField } from '../tools/flashArea.ts'
import { isRedChange, watched } from '../tools/flashWatch.ts'
import { countCells, PAGE } from '../tools/largeCount.ts'
import { bytesOf, type Light, lightOf } from '../tools/relativeLuminance.ts'

const THEMES: readonly Theme[] = ['light', 'dark']
const lightOfHex = (hex: string): Light => lightOf(bytesOf(hex))
const WHOLE = [PANEL.width / CELL, PANEL.height / CELL] as const

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
      const cells = panelBlock(panel, ...WHOLE)
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
 * @returns what was watched
 */
function expectNoFlashing(figure: Figure, part: number, change: (session: Session) => Session): Lesson {
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
  return film.lesson
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

const QUICKEST_DANCES: readonly DanceId[] = ['viennese waltz', 'quickstep', 'samba', 'jive']
/** No demo is a Viennese waltz: three steps a bar, forward and back. */
const viennese = exampleFigure(
  'viennese waltz',
  [1, 1, 1, 1, 1, 1],
  ['forward', 'side', 'close', 'back', 'side', 'close'],
)

/** Every step of the least beat value, with the one before it, as a loop has them (src/session/stepsAt.ts). */
function quickestLoops(figure: Figure) {
  const values = (figure.timings[0] as Figure['timings'][number]).values.slice(1)
  const least = Math.min(...values)
  return values.flatMap((value, first) =>
    value === least ? [[figure.dance, figure.id, first + 2, figure] as const] : [],
  )
}
const loops = [
  ...[viennese, ...demos].filter(({ dance }) => QUICKEST_DANCES.includes(dance)).flatMap(quickestLoops),
  // Of many half beats alike, two: to the side, and to a close.
  ...QUICKEST_DANCES.flatMap((dance) => quickestLoops(halfBeats(dance, ['side', 'close'])).slice(0, 2)),
]

describe('no flashing by WCAG 2.2, 2.3.1, in both themes, at the fastest: one quick step with the one before it', () => {
  test.each(loops)('%s, %s, step %d', (_dance, _id, step, figure) => {
    const steps = { first: step - 2, last: step - 1 }
    const lesson = expectNoFlashing(figure, 1, (session) => withSteps(session, steps))
    expect(lesson.steps).toEqual(steps)
  })
})

const seenDemos = ['quickstep', 'samba', 'jive', 'waltz'].map((id) => demos.find(({ dance }) => dance === id) as Figure)

describe('no flashing by WCAG 2.2, 2.3.1, in both themes, at the fastest: seen from elsewhere, and the partner', () => {
  const ways = [
    ['class', (session: Session) => withSeen(session, 'class')],
    ['mirror', (session: Session) => withSeen(session, 'mirror')],
    ['room', (session: Session) => withSeen(session, 'room')],
    ['partner', (session: Session) => withOpposite(session, true)],
    ['partner in a mirror', (session: Session) => withOpposite(withSeen(session, 'mirror'), true)],
  ] as const
  test.each(seenDemos.flatMap((figure) => ways.map(([name, change]) => [figure.id, name, figure, change] as const)))(
    '%s, %s',
    (_id, _name, figure, change) => {
      expectNoFlashing(figure, 1, change)
    },
  )
  test.each(ways)('%s is another picture', (_name, change) => {
    const figure = demos.find(({ id }) => id.startsWith('13-')) as Figure
    const [here, there] = [coarseFilm(figure, 30), coarseFilm(figure, 30, change)].map((film) => {
      const [first] = film.frames()
      return Array.from(first as Uint8Array, (index) => film.colours.light('light', index).join())
    }) as [string[], string[]]
    expect(here.filter((light, cell) => light !== there[cell]).length * CELL_AREA).toBeGreaterThan(FLASH_AREA / 4)
  })
})

// In so large a picture the contours that pass through ten degrees one after the other, summed over a whole second, come to
// more than the area (some 68,000 square pixels in samba). So here it is judged by what turns together.
describe('no flashing by WCAG 2.2, 2.3.1, in both themes, at the fastest: one picture on a whole large screen', () => {
  const figures = ['quickstep', 'samba', 'jive'].map((id) => demos.find(({ dance }) => dance === id) as Figure)
  const panels = [
    ['in time', 0],
    ['late', 1],
    ['early', 2],
  ] as const
  test.each(figures.flatMap((figure) => panels.map(([name, panel]) => [figure.id, name, figure, panel] as const)))(
    '%s, %s',
    (_id, _name, figure, panel) => {
      const { to } = playedTempoRange(dances[figure.dance])
      const film = coarseFilm(figure, to, (session) => withOrder(session, [panel]), LARGE_PICTURE)
      const lights = THEMES.map((theme) => (index: number) => film.colours.light(theme, index))
      for (const { general, red, frames } of watched(film.frames(), ...lights)) {
        expect(mostFlashes(general)).toBeGreaterThan(3)
        expect(mostFlashes(red)).toBe(0)
        expect(fieldFlashesAsOne(general, frames(), film.page, FLASH_AREA)).toBeLessThanOrEqual(3)
        expect(flashesAsOne(general, frames(), FLASH_AREA)).toBeLessThanOrEqual(3)
      }
    },
  )
})
