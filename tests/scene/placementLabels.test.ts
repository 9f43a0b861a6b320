import { describe, expect, test } from 'vitest'
import { panelView } from '../../src/scene/panelView.ts'
import { labelHalfWidth } from '../../src/scene/placementLabels.ts'
import { headingInView, inView, type View, viewsOf } from '../../src/scene/view.ts'
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

/** How far a label is from a foot: from the line between its heel and toes, walked along in fifty steps. */
function offFoot(
  foot: { x: number; y: number; heading: number },
  at: { x: number; y: number },
  length: number,
): number {
  const steps = Array.from({ length: 51 }, (_, k) => (k / 50 - 0.5) * length)
  return Math.min(
    ...steps.map((s) =>
      Math.hypot(at.x - foot.x - s * Math.sin(foot.heading), at.y - foot.y - s * Math.cos(foot.heading)),
    ),
  )
}

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

  test('of all demos no label stands nearer to another foot than to its own, but for three feet on one spot', () => {
    let count = 0
    const mistaken = demos.flatMap((figure) => {
      const lesson = lessonOf(newSession(figure, beat(0)), figure)
      return viewsOf(lesson, ...size).flatMap((view) => {
        const { labels, footLength } = panelView(lesson, 0, view, true).picture
        const feet = view.idealFloor.actions.map(({ place }) => ({
          ...inView(view, place),
          heading: headingInView(view, place.heading),
        }))
        count += labels.length
        return labels.flatMap(({ x, y, number }) => {
          const own = feet[Number(number) - 1]!
          const others = feet.slice(Math.max(0, view.page.first - 2), view.page.last + 1)
          const off = offFoot(own, { x, y }, footLength)
          const nearer = others.filter(
            (foot) =>
              Math.hypot(foot.x - own.x, foot.y - own.y) > 0.05 && offFoot(foot, { x, y }, footLength) < off - 0.005,
          )
          return nearer.length === 0 ? [] : [`${figure.id} ${number}`]
        })
      })
    })
    expect(count).toBeGreaterThan(80)
    expect(mistaken.filter((one) => !one.startsWith('16-rumba-side-check'))).toEqual([])
  })
})
