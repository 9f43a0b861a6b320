import { describe, expect, test } from 'vitest'
import { type Box, freeSpot } from '../../src/scene/freeSpot.ts'

const panel = { halfWidth: 200, halfHeight: 150 }
const size = { halfWidth: 20, halfHeight: 8 }
const around = { x: 0, y: 0, reaches: [30] }

const overlaps = (a: Box, b: Box): boolean =>
  Math.abs(a.x - b.x) < a.halfWidth + b.halfWidth && Math.abs(a.y - b.y) < a.halfHeight + b.halfHeight

describe('freeSpot', () => {
  test('lies beside its point, its edge at the reach, where nothing is in the way', () => {
    expect(freeSpot(around, size, [], panel)).toEqual({ x: 50, y: 0, ...size })
  })

  test('goes to the other side of what is taken', () => {
    const label: Box = { x: 60, y: 0, halfWidth: 20, halfHeight: 10 }
    const spot = freeSpot(around, size, [label], panel)
    expect(overlaps(spot, label)).toBe(false)
    expect(spot.x).toBe(-50)
  })

  test('stays in the panel, even if that covers a little', () => {
    const atTheEdge = { x: 190, y: 0, reaches: [30] }
    const label: Box = { x: 125, y: 0, halfWidth: 20, halfHeight: 10 }
    const spot = freeSpot(atTheEdge, size, [label], panel)
    expect(Math.abs(spot.x) + size.halfWidth).toBeLessThanOrEqual(panel.halfWidth)
    expect(Math.abs(spot.y) + size.halfHeight).toBeLessThanOrEqual(panel.halfHeight)
  })

  test('where everything is taken, it covers least', () => {
    const everywhere: Box = { x: 0, y: 0, halfWidth: 90, halfHeight: 30 }
    const spot = freeSpot(around, size, [everywhere], panel)
    const covered = (box: Box): number =>
      Math.max(0, Math.min(box.y + box.halfHeight, 30) - Math.max(box.y - box.halfHeight, -30))
    expect(covered(spot)).toBeLessThan(2 * size.halfHeight)
  })

  test('several notes on one spot do not lie on each other', () => {
    const taken: Box[] = []
    for (let k = 0; k < 4; k++) taken.push(freeSpot(around, size, taken, panel))
    for (const [i, one] of taken.entries()) {
      for (const other of taken.slice(i + 1)) expect(overlaps(one, other)).toBe(false)
    }
  })
})
