import { describe, expect, test } from 'vitest'
import { footprintOutline } from '../../src/scene/footprint.ts'
import { dashes } from '../../src/stage/dashes.ts'

const lengthOf = (points: readonly number[]): number => {
  let length = 0
  for (let i = 2; i < points.length; i += 2) {
    length += Math.hypot(points[i]! - points[i - 2]!, points[i + 1]! - points[i - 1]!)
  }
  return length
}

describe('dashes(line, false, on, off)', () => {
  test('cuts a straight line into dashes of the lengths asked for, the last one cut short', () => {
    expect(dashes([0, 0, 10, 0], false, 3, 1)).toEqual([
      [0, 0, 3, 0],
      [4, 0, 7, 0],
      [8, 0, 10, 0],
    ])
  })

  test('a dash goes round a corner and keeps it', () => {
    expect(dashes([0, 0, 2, 0, 2, 5], false, 4, 9)).toEqual([[0, 0, 2, 0, 2, 2]])
  })

  test('a line without length has no dashes', () => {
    expect(dashes([1, 1, 1, 1], false, 3, 1)).toEqual([])
    expect(dashes([], true, 3, 1)).toEqual([])
  })
})

describe('dashes(outline, true, on, off)', () => {
  const outline = footprintOutline('left').map((value) => value * 60)
  const whole = lengthOf([...outline, ...outline.slice(0, 2)])
  const found = dashes(outline, true, 7, 5)

  test('all dashes are equally long, and so are all gaps, the one at the seam included', () => {
    const on = lengthOf(found[0]!)
    for (const dash of found) expect(lengthOf(dash)).toBeCloseTo(on, 6)
    const gaps = found.map((dash, i) => {
      const next = found[(i + 1) % found.length]!
      return Math.hypot(next[0]! - dash[dash.length - 2]!, next[1]! - dash[dash.length - 1]!)
    })
    // A gap is measured straight across, the outline bends: a little less than along it, never more.
    const off = whole / found.length - on
    for (const gap of gaps) {
      expect(gap).toBeLessThanOrEqual(off + 1e-6)
      expect(gap).toBeGreaterThan(0.9 * off)
    }
  })

  test('dash and gap keep the proportion asked for', () => {
    expect(found.reduce((sum, dash) => sum + lengthOf(dash), 0) / whole).toBeCloseTo(7 / 12, 6)
    expect(found.length).toBe(Math.round(whole / 12))
  })
})
