import { describe, expect, test } from 'vitest'
import { pageAt } from '../../src/scene/pages.ts'
import { type PanelView, panelView } from '../../src/scene/panelView.ts'
import { type View, viewsOf } from '../../src/scene/view.ts'
import { lessonOf } from '../../src/session/lesson.ts'
import { newSession } from '../../src/session/session.ts'
import { beat } from '../../src/units.ts'
import { demos } from '../tools/demos.ts'
import { walks } from '../tools/exampleFigure.ts'

const SIZES = [
  ['laptop', 400, 420],
  ['tablet', 310, 380],
  ['phone, the large one', 370, 300],
] as const
const lesson = (figure: (typeof demos)[number]) => lessonOf(newSession(figure, beat(0)), figure)

describe.each(SIZES)('(viewsOf(lesson, size)[0] as View): %s', (_, width, height) => {
  test.each(demos.map((figure) => [figure.id, figure] as const))(
    '%s fits its panel, and its feet can be seen',
    (_id, figure) => {
      const compared = lesson(figure)
      const views = viewsOf(compared, width, height)
      const pages = views.map(({ page }) => page)
      for (const [index] of compared.panels.entries()) {
        const panels = views.map((view) => panelView(compared, index, view, true))
        for (let t: number = compared.range.from; t <= compared.range.to; t += 1 / 8) {
          const { picture, frameAt } = panels[pageAt(pages, t)] as PanelView
          const { left, right, marker } = frameAt(t)
          for (const point of [left, right, marker]) {
            expect(Math.abs(point.x * picture.pixelsPerMetre)).toBeLessThanOrEqual(width / 2)
            expect(Math.abs(point.y * picture.pixelsPerMetre)).toBeLessThanOrEqual(height / 2)
          }
        }
        for (const { picture } of panels) {
          // A ninth of the panel's height: the least that a figure's feet may be (look of the picture).
          expect(picture.footLength * picture.pixelsPerMetre).toBeGreaterThanOrEqual(height / 9)
          expect(picture.footLength).toBeGreaterThanOrEqual(0.271)
          expect(picture.footLength).toBeLessThanOrEqual(0.271 * 1.5 + 1e-9)
          for (const { x, y } of picture.labels) {
            expect(Math.abs(x * picture.pixelsPerMetre)).toBeLessThanOrEqual(width / 2)
            expect(Math.abs(y * picture.pixelsPerMetre)).toBeLessThanOrEqual(height / 2)
          }
        }
      }
    },
  )
})

describe('panelView(lesson, panel, view, names)', () => {
  const compared = lesson(walks('foxtrot', [2, 1, 1]))
  const view = viewsOf(compared, 400, 420)[0] as View
  const [ideal, late, early] = [0, 1, 2].map((index) => panelView(compared, index, view, true))

  test('all panels show the same piece of floor', () => {
    expect(late?.picture.placements).toEqual(ideal?.picture.placements)
    expect(early?.picture.placements).toEqual(ideal?.picture.placements)
  })
  test('the ghost is where the in-time marker is', () => {
    for (const t of [-0.5, 0.3, 1, 2.2, 3.5]) expect(late?.frameAt(t).ghost).toEqual(ideal?.frameAt(t).marker)
    expect(ideal?.frameAt(1).ghost).toBeNull()
  })
  test('one bead for each half beat gone by, larger on the counts, tied to where the plan is', () => {
    const beads = late?.frameAt(1.2).beads ?? []
    expect(beads.map(({ onCount }) => onCount)).toEqual([false, true, false, true])
    const plan = ideal?.frameAt(1.2).beads ?? []
    expect(beads.map(({ tick }) => tick)).toEqual(plan.map(({ x, y }) => ({ x, y })))
    // Late by ½: each bead lies where the plan's bead before lay.
    for (let k = 1; k < beads.length; k++) {
      expect(beads[k]?.x).toBeCloseTo(plan[k - 1]?.x as number, 9)
      expect(beads[k]?.y).toBeCloseTo(plan[k - 1]?.y as number, 9)
    }
  })
  test('the beads are the same array until the next grid point', () => {
    expect(late?.frameAt(1.2).beads).toBe(late?.frameAt(1.4).beads)
    expect(late?.frameAt(1.5).beads).not.toBe(late?.frameAt(1.4).beads)
  })
  test('an early dancer’s wait is marked with its half beats; lateness is no wait', () => {
    expect(early?.frameAt(1.5).beads.at(-1)?.waited).toBe('2')
    expect(late?.frameAt(7).beads.every(({ waited }) => waited === '')).toBe(true)
  })
  test('paso doble’s stillness is no wait, in time or late', () => {
    const paso = lesson(walks('paso doble', [1, 1, 1]))
    for (const index of [0, 1]) {
      const { frameAt } = panelView(paso, index, viewsOf(paso, 400, 420)[0] as View, true)
      expect(frameAt(3).beads.every(({ waited }) => waited === '')).toBe(true)
    }
  })
  test('the trail ends before the marker and begins at the start', () => {
    const frame = early?.frameAt(0.4)
    expect(frame?.trailPoints).toBe(Math.floor(0.9 * 16) + 1)
  })
})
