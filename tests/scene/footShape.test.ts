import { describe, expect, test } from 'vitest'
import { footShape } from '../../src/scene/footShape.ts'

const LENGTH = 0.271
const even = (flat: readonly number[]) => flat.filter((_, k) => k % 2 === 0)
const odd = (flat: readonly number[]) => flat.filter((_, k) => k % 2 === 1)
const extent = (values: readonly number[]) => [Math.min(...values), Math.max(...values)]

describe('footShape(foot, place, length)', () => {
  const { outline, heel } = footShape('right', { x: 1, y: 2, heading: 0 }, LENGTH)
  test('is as long as the foot, around its place, and as broad as ANSUR II says: 0.376 of the length', () => {
    expect(extent(odd(outline))).toEqual([expect.closeTo(2 - LENGTH / 2, 9), expect.closeTo(2 + LENGTH / 2, 9)])
    const [left, right] = extent(even(outline)) as [number, number]
    expect(right - left).toBeCloseTo(0.376 * LENGTH, 3)
  })
  test('has its heel’s front behind its middle and inside the outline', () => {
    for (const y of odd(heel)) expect(y).toBeLessThan(2)
    const [left, right] = extent(even(outline)) as [number, number]
    for (const x of even(heel)) expect(x > left && x < right).toBe(true)
  })
  test('a left foot is the right one mirrored', () => {
    const left = footShape('left', { x: -1, y: 2, heading: 0 }, LENGTH)
    const mirrored = even(left.outline).map((x) => -x)
    for (const [k, x] of even(outline).entries()) expect(mirrored[k]).toBeCloseTo(x, 12)
  })
  test('turned a quarter to the right its toes point along x', () => {
    const turned = footShape('right', { x: 1, y: 2, heading: Math.PI / 2 }, LENGTH)
    expect(extent(even(turned.outline))).toEqual([expect.closeTo(1 - LENGTH / 2, 9), expect.closeTo(1 + LENGTH / 2, 9)])
    for (const x of even(turned.heel)) expect(x).toBeLessThan(1)
  })
})
