import { describe, expect, test } from 'vitest'
import { type Mark, markPlaces } from '../../src/scene/markPlaces.ts'
import { panelView } from '../../src/scene/panelView.ts'
import { type View, viewsOf } from '../../src/scene/view.ts'
import { lessonOf } from '../../src/session/lesson.ts'
import { newSession } from '../../src/session/session.ts'
import { gridPoints } from '../../src/timing/grid.ts'
import { beat } from '../../src/units.ts'
import { demos } from '../tools/demos.ts'
import { walks } from '../tools/exampleFigure.ts'

const SIZE = { width: 400, height: 390 }
const textSize = () => ({ width: 130, height: 25 })

function marks(figure: (typeof demos)[number], panel: number, at: number, skip?: ReadonlySet<Mark>) {
  const lesson = lessonOf(newSession(figure, beat(0)), figure)
  const { picture, frameAt } = panelView(lesson, panel, viewsOf(lesson, SIZE.width, SIZE.height)[0] as View, true)
  return markPlaces(picture, frameAt(at), SIZE, textSize, skip)
}

describe('markPlaces(picture, frame, panel, textSize)', () => {
  const sqq = walks('foxtrot', [2, 1, 1])
  const kinds = (panel: number, at: number) => marks(sqq, panel, at).map(({ mark }) => mark)

  test('in time, full over a foot: the weight, what is filled, what is in the air, a bead', () => {
    expect(new Set(kinds(0, 2.5))).toEqual(new Set(['weight', 'carries', 'air', 'bead', 'coming']))
  })
  test('late: where it should be, and how far off', () => {
    expect(kinds(1, 2.5)).toEqual(expect.arrayContaining(['weight', 'ghost', 'fault']))
  })
  test('early: that it waits', () => {
    expect(kinds(2, 2.5)).toContain('wait')
  })
  test('what another panel has explained is not said again', () => {
    expect(marks(sqq, 1, 2.5, new Set<Mark>(['weight', 'ghost'])).map(({ mark }) => mark)).not.toContain('weight')
  })
  test.each(demos.slice(0, 12).map((figure) => [figure.id, figure] as const))(
    '%s: inside the panel, and no words on other words',
    (_id, figure) => {
      for (const panel of [0, 1, 2]) {
        for (const at of gridPoints(0, 4, 0.5)) {
          const boxes = marks(figure, panel, at).map(({ box }) => box)
          for (const [k, box] of boxes.entries()) {
            expect(box.x - box.halfWidth).toBeGreaterThanOrEqual(0)
            expect(box.x + box.halfWidth).toBeLessThanOrEqual(SIZE.width)
            expect(box.y - box.halfHeight).toBeGreaterThanOrEqual(0)
            expect(box.y + box.halfHeight).toBeLessThanOrEqual(SIZE.height)
            for (const other of boxes.slice(0, k)) {
              const apart =
                Math.abs(other.x - box.x) >= other.halfWidth + box.halfWidth - 6 ||
                Math.abs(other.y - box.y) >= other.halfHeight + box.halfHeight - 6
              expect(apart).toBe(true)
            }
          }
        }
      }
    },
  )
})
