import { describe, expect, test } from 'vitest'
import { FOOTPRINT_BREADTH, footprintOutline, loadedPart } from '../../src/scene/footprint.ts'

/** Area of a polygon given as x and y in turn (the shoelace formula). */
function area(points: readonly number[]): number {
  let twice = 0
  for (let i = 0; i < points.length; i += 2) {
    const [x0, y0] = [points[i] as number, points[i + 1] as number]
    const [x1, y1] = [points[(i + 2) % points.length] as number, points[(i + 3) % points.length] as number]
    twice += x0 * y1 - x1 * y0
  }
  return Math.abs(twice) / 2
}

const xs = (points: readonly number[]) => points.filter((_, i) => i % 2 === 0)
const ys = (points: readonly number[]) => points.filter((_, i) => i % 2 === 1)

describe.each(['left', 'right'] as const)('footprintOutline(%s)', (foot) => {
  const outline = footprintOutline(foot)
  test('is one foot length long, toes up', () => {
    expect(Math.min(...ys(outline))).toBeCloseTo(-0.5, 3)
    expect(Math.max(...ys(outline))).toBeCloseTo(0.5, 3)
  })
  test('has the breadth of ANSUR II (2012): 102 mm to 271 mm, within 1 %', () => {
    expect(Math.max(...xs(outline)) - Math.min(...xs(outline))).toBeCloseTo(102 / 271, 2)
    expect(FOOTPRINT_BREADTH).toBeCloseTo(0.376, 3)
  })
  test('its heel is 0.27 of the length broad (ANSUR II), and the toe end broader', () => {
    const broad = (from: number, to: number) => {
      const points = xs(outline).filter(
        (_, i) => (ys(outline)[i] as number) >= from && (ys(outline)[i] as number) <= to,
      )
      return Math.max(...points) - Math.min(...points)
    }
    expect(broad(-0.5, -0.25)).toBeCloseTo(0.27, 2)
    expect(broad(0, 0.4)).toBeGreaterThan(1.3 * broad(-0.5, -0.25))
  })
  test('left is the mirror of right', () => {
    const other = footprintOutline(foot === 'left' ? 'right' : 'left')
    expect(Math.min(...xs(other))).toBeCloseTo(-Math.max(...xs(outline)), 9)
    expect(area(other)).toBeCloseTo(area(outline), 9)
  })
})

describe('loadedPart(foot, share): the heel first, by area', () => {
  test.each(['left', 'right'] as const)('%s: the filled area is the share, within half a per cent', (foot) => {
    const whole = area(footprintOutline(foot))
    for (let share = 0.02; share < 1; share += 0.02) {
      expect(Math.abs(area(loadedPart(foot, share)) / whole - share)).toBeLessThan(0.005)
    }
  })
  test('nothing at 0, all at 1, and never more than the foot', () => {
    expect(loadedPart('left', 0)).toEqual([])
    expect(area(loadedPart('left', 1))).toBe(area(footprintOutline('left')))
    expect(Math.max(...ys(loadedPart('right', 0.3)))).toBeLessThan(Math.max(...ys(loadedPart('right', 0.6))))
  })
})
