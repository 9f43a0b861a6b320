import { describe, expect, test } from 'vitest'
import { layOut } from '../../src/scene/glyphs.ts'

const WRITTEN = [...'0123456789SQ&aLR-½¼¾cefmt×']

describe('layOut(text, height)', () => {
  test.each(WRITTEN)('%s is drawn inside its height, in a shape of its own', (character) => {
    const { strokes, width } = layOut(character, 2)
    expect(strokes.length).toBeGreaterThan(0)
    expect(width).toBeGreaterThan(0)
    for (const { points } of strokes) {
      for (let i = 1; i < points.length; i += 2) expect(Math.abs(points[i] as number)).toBeLessThanOrEqual(1.25)
      for (let i = 0; i < points.length; i += 2)
        expect(Math.abs(points[i] as number)).toBeLessThanOrEqual(width / 2 + 0.4)
    }
    const same = WRITTEN.filter((other) => JSON.stringify(layOut(other, 2)) === JSON.stringify(layOut(character, 2)))
    expect(same).toEqual([character])
  })
  test('grows with its height, and with its text', () => {
    expect(layOut('S', 4).width).toBeCloseTo(2 * layOut('S', 2).width, 9)
    expect(layOut('SQ', 2).width).toBeGreaterThan(layOut('S', 2).width + layOut('Q', 2).width - 0.5)
  })
  test('nothing for no text', () => {
    expect(layOut('', 1)).toMatchObject({ width: 0, strokes: [] })
  })
})
