import { describe, expect, test } from 'vitest'
import { panelView } from '../../src/scene/panelView.ts'
import { labelHalfWidth } from '../../src/scene/placementLabels.ts'
import { type View, viewsOf } from '../../src/scene/view.ts'
import { lessonOf } from '../../src/session/lesson.ts'
import { newSession } from '../../src/session/session.ts'
import { beat } from '../../src/units.ts'
import { demos } from '../tools/demos.ts'

/** The large panel on a laptop, a tablet and a phone, CSS px. */
const SIZES = [
  [405, 365],
  [320, 334],
  [358, 223],
] as const

function labelled(id: string, [width, height]: readonly [number, number]) {
  const figure = demos.find((demo) => demo.id === id)
  if (figure === undefined) throw new Error(`no demo ${id}`)
  const lesson = lessonOf(newSession(figure, beat(0)), figure)
  const view = viewsOf(lesson, width, height)[0] as View
  const { picture } = panelView(lesson, 0, view, true)
  const scale = picture.pixelsPerMetre
  const boxes = picture.labels.map(({ x, y, number, count }) => ({
    what: `${number} ${count}`,
    x: x * scale,
    y: y * scale,
    halfWidth: labelHalfWidth(count) * picture.textHeight * scale,
    halfHeight: 0.5 * picture.textHeight * scale,
  }))
  return { boxes, text: picture.textHeight * scale, arrow: picture.lineOfDance !== null }
}

describe.each(SIZES)('placementLabels on a panel of %i × %i', (width, height) => {
  const size = [width, height] as const

  test.each(['13-waltz-natural-turn', '21-waltz-spin-turn'])('%s: none on the scale bar or the arrow', (id) => {
    const { boxes, text, arrow } = labelled(id, size)
    expect(arrow).toBe(true)
    for (const { what, x, y, halfWidth, halfHeight } of boxes) {
      const right = x + halfWidth - width / 2
      // The bar's text and the arrow with their margins, as they are drawn: px from the right-hand corners.
      expect(right > -100 && -y + halfHeight - height / 2 > -1.5 * text, `${what} on the scale bar`).toBe(false)
      expect(right > -38 && y + halfHeight - height / 2 > -40, `${what} on the arrow`).toBe(false)
    }
  })

  test('19-jive-basic: two lines beside each other never read as one', () => {
    const { boxes } = labelled('19-jive-basic', size)
    for (const [index, a] of boxes.entries()) {
      for (const b of boxes.slice(index + 1)) {
        const sameLine = Math.abs(a.y - b.y) < a.halfHeight + b.halfHeight
        const gap = Math.abs(a.x - b.x) - a.halfWidth - b.halfWidth
        expect(sameLine && gap < 3, `${a.what} and ${b.what}`).toBe(false)
      }
    }
  })
})
