import { describe, expect, test } from 'vitest'
import { pose } from '../../src/pose/pose.ts'
import { panelView } from '../../src/scene/panelView.ts'
import { headingInView, inView, type Seen, type View, viewsOf } from '../../src/scene/view.ts'
import { lessonOf } from '../../src/session/lesson.ts'
import { newSession, withSeen } from '../../src/session/session.ts'
import { beat } from '../../src/units.ts'
import { demos } from '../tools/demos.ts'
import { exampleFigure } from '../tools/exampleFigure.ts'

/** To the side with the right foot, facing the wall: right in the room is against the line of dance. */
const SIDE = exampleFigure('waltz', [1, 1], ['side', 'close'], { starts: { way: 'facing', to: 'wall' } })

function seenAs(seen: Seen, figure = SIDE) {
  const lesson = lessonOf(withSeen(newSession(figure, beat(0)), seen), figure)
  const view = viewsOf(lesson, 400, 400)[0] as View
  return { lesson, view, panel: panelView(lesson, 0, view, true) }
}

describe('viewsOf(lesson, …): from where the floor is seen', () => {
  test('room: the line of dance up the panel, or to its right where the figure is larger so', () => {
    for (const figure of demos.filter(({ starts }) => starts !== null)) {
      const { view, panel } = seenAs('room', figure)
      expect([0, Math.PI / 2]).toContain(view.turned)
      expect(panel.picture.lineOfDance).toBe(view.turned)
    }
  })
  test.each(demos.map((figure) => [figure.id, figure] as const))('dancer: %s begins facing up', (_id, figure) => {
    const { panel } = seenAs('dancer', figure)
    const start = panel.frameAt(-99)
    for (const { heading } of [start.left, start.right]) {
      expect(Math.cos(heading)).toBeCloseTo(1, 9)
    }
  })
  test('dancer: one’s own right is on the right, whatever way the room lies', () => {
    const { panel } = seenAs('dancer')
    expect(panel.frameAt(99).right.x).toBeGreaterThan(panel.frameAt(-99).right.x)
    expect(panel.picture.lineOfDance).not.toBeNull()
  })
  test('mirror: a mirror image: the same places up side down, headings turned about, no foot’s name changed', () => {
    const [dancer, facing] = [seenAs('dancer').panel, seenAs('mirror').panel]
    expect([dancer.picture.mirrored, facing.picture.mirrored]).toEqual([false, true])
    for (let t = -1; t <= 3; t += 0.25) {
      const [plain, mirrored] = [dancer.frameAt(t), facing.frameAt(t)]
      for (const foot of ['left', 'right'] as const) {
        expect(mirrored[foot].x).toBeCloseTo(plain[foot].x, 9)
        expect(mirrored[foot].y).toBeCloseTo(-plain[foot].y, 9)
        expect(Math.sin(mirrored[foot].heading)).toBeCloseTo(Math.sin(plain[foot].heading), 9)
        expect(Math.cos(mirrored[foot].heading)).toBeCloseTo(-Math.cos(plain[foot].heading), 9)
        expect(mirrored[foot].load).toBe(plain[foot].load)
      }
    }
  })
  test('class: turned half round, nothing mirrored: the right foot is on the class’s left', () => {
    const [dancer, facing] = [seenAs('dancer').panel, seenAs('class').panel]
    expect(facing.picture.mirrored).toBe(false)
    for (let t = -1; t <= 3; t += 0.25) {
      const [plain, turned] = [dancer.frameAt(t), facing.frameAt(t)]
      expect(turned.right.x).toBeCloseTo(-plain.right.x, 9)
      expect(turned.right.y).toBeCloseTo(-plain.right.y, 9)
      expect(Math.cos(turned.right.heading - plain.right.heading)).toBeCloseTo(-1, 9)
    }
  })
  test('a toe lies ahead of its foot’s middle in every view: places and headings are turned and mirrored alike', () => {
    for (const seen of ['room', 'dancer', 'class', 'mirror'] as const) {
      const { lesson, view } = seenAs(seen)
      const { right } = pose(view.idealFloor, lesson.ideal.curve.at(0.3))
      const toe = { x: right.x + 0.1 * Math.sin(right.heading), y: right.y + 0.1 * Math.cos(right.heading) }
      const [foot, tip] = [inView(view, right), inView(view, toe)]
      const heading = headingInView(view, right.heading)
      expect(tip.x - foot.x).toBeCloseTo(0.1 * Math.sin(heading), 9)
      expect(tip.y - foot.y).toBeCloseTo(0.1 * Math.cos(heading), 9)
    }
  })
})
