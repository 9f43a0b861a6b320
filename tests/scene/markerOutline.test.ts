import { describe, expect, test } from 'vitest'
import { FOOTPRINT_BREADTH } from '../../src/scene/footprint.ts'
import { MARKER_REACH, markerCircle, markerOutline } from '../../src/scene/markerOutline.ts'
import type { Tone } from '../../src/scene/panelPicture.ts'

const TONES: readonly Tone[] = ['in time', 'late', 'early', 'plain']

const corners = (points: readonly number[]) => points.length / 2
const distances = (points: readonly number[]) =>
  Array.from({ length: corners(points) }, (_, i) => Math.hypot(points[2 * i]!, points[2 * i + 1]!))
function area(points: readonly number[]): number {
  let twice = 0
  for (let i = 0; i < points.length; i += 2) {
    const [nextX, nextY] = [points[(i + 2) % points.length]!, points[(i + 3) % points.length]!]
    twice += points[i]! * nextY - nextX * points[i + 1]!
  }
  return Math.abs(twice) / 2
}

describe('markerOutline', () => {
  test('late is a square on its side, early one on its corner, the others are round: apart without colour', () => {
    expect(markerOutline('late').map(Math.abs)).toEqual(Array(8).fill(Math.abs(markerOutline('late')[0]!)))
    expect(markerOutline('early').filter((value) => value === 0)).toHaveLength(4)
    expect(corners(markerOutline('in time'))).toBeGreaterThan(48)
  })

  test('with names off, all look like the one in time', () => {
    expect(markerOutline('plain')).toEqual(markerOutline('in time'))
    expect(markerCircle()).toEqual(markerOutline('in time'))
  })

  test.each(TONES)('%s: as large as the others within a tenth, middle at the weight', (tone) => {
    const points = markerOutline(tone)
    const share = area(points) / area(markerCircle())
    expect(share).toBeGreaterThan(0.9)
    expect(share).toBeLessThan(1.1)
    const middle = [0, 1].map((axis) => points.filter((_, i) => i % 2 === axis).reduce((sum, value) => sum + value, 0))
    expect(middle[0]).toBeCloseTo(0, 9)
    expect(middle[1]).toBeCloseTo(0, 9)
  })

  test.each(TONES)('%s: wide enough to see a foot through it, and within its reach', (tone) => {
    expect(Math.min(...distances(markerOutline(tone)))).toBeGreaterThan(1.5 * (FOOTPRINT_BREADTH / 2))
    expect(Math.max(...distances(markerOutline(tone)))).toBeLessThan(MARKER_REACH)
  })
})
