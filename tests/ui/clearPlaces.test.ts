import { describe, expect, test } from 'vitest'
import { strip } from '../../src/scene/strip.ts'
import { lessonOf } from '../../src/session/lesson.ts'
import { newSession, withJoined } from '../../src/session/session.ts'
import { clearPlaces, nameBox } from '../../src/ui/clearPlaces.ts'
import { linePlaces } from '../../src/ui/linePlaces.ts'
import { beat } from '../../src/units.ts'
import { demos } from '../tools/demos.ts'

const NAMES = ['in time', 'late', 'early']
const nameOf = (panel: number): string => NAMES[panel] ?? ''
/** As StripPicture.tsx has them. */
const levelOf = (right: number): number => 13 + (1 - right) * 74

const ROOMS = [
  // Phones, upright and on their side; a tablet, a laptop and a projector; beside a sheet. In rem.
  { width: 14, height: 4.5 },
  { width: 18, height: 4.5 },
  { width: 8, height: 3.25 },
  { width: 35, height: 3.25 },
  { width: 32, height: 6.25 },
  { width: 48, height: 6.25 },
  { width: 80, height: 12 },
]

const strips = demos.flatMap((figure) =>
  [false, true].map((joined) => strip(lessonOf(withJoined(newSession(figure, beat(0)), joined), figure))),
)

describe('clearPlaces(strip, nameOf, room, levelOf)', () => {
  test.each(ROOMS)('no name on another, on a foot’s name, or beyond the end: $width × $height', (room) => {
    for (const one of strips) {
      const boxes = clearPlaces(one, nameOf, room, levelOf).map((place) =>
        nameBox(place, nameOf(place.panel), room, levelOf),
      )
      for (const [k, a] of boxes.entries()) {
        if (a.right > room.width) expect.fail('beyond the end')
        for (const y of [13, 87].map((level) => (level / 100) * room.height)) {
          if (a.left < 0 && a.top < y && a.bottom > y) expect.fail('on the name of a foot')
        }
        for (const b of boxes.slice(k + 1)) {
          const isApart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top
          if (!isApart) expect.fail(`on one another: ${JSON.stringify([a, b])}`)
        }
      }
    }
  })

  test('every name has a place on a laptop, and nearly every one on a phone', () => {
    const lost = (width: number, height: number): number =>
      strips.reduce(
        (sum, one) => sum + linePlaces(one).length - clearPlaces(one, nameOf, { width, height }, levelOf).length,
        0,
      )
    expect(lost(48, 6.25)).toBe(0)
    expect(lost(18, 4.5)).toBeLessThan(strips.length / 10)
  })

  test('where nothing is in the way they stand as linePlaces has them', () => {
    const [first] = strips
    if (first === undefined) throw new Error('no demo')
    expect(clearPlaces(first, nameOf, { width: 48, height: 6.25 }, levelOf)).toEqual(linePlaces(first))
  })
})
