import { describe, expect, test } from 'vitest'
import type { Convention } from '../../src/dance/dance.ts'
import { danceList, dances } from '../../src/dance/dances.ts'
import { dynamicsStrips } from '../../src/scene/dynamicsStrips.ts'

const CONVENTIONS: readonly Convention[] = ['split on the count', 'full on the count', 'struck']
const cases = danceList.flatMap(({ id }) => CONVENTIONS.map((convention) => [id, convention] as const))

describe.each(cases)('dynamicsStrips(%s, %s)', (id, convention) => {
  const { lines } = dynamicsStrips(dances[id], convention)
  const [even, swelling, arrested] = lines as [(typeof lines)[0], (typeof lines)[0], (typeof lines)[0]]

  test('the dots lie on the same places at the same moments in all three, to 1e-9', () => {
    expect(lines.map(({ kind }) => kind)).toEqual(['even', 'swelling', 'arrested'])
    // Leaves, split and full of each step at the least; a full and the next leave may be one.
    expect(even.dots.length).toBeGreaterThan(2 * lines.length - 2)
    for (const { dots } of [swelling, arrested]) {
      expect(dots).toHaveLength(even.dots.length)
      for (const [k, { t, right }] of dots.entries()) {
        expect(Math.abs(t - (even.dots[k]?.t ?? Number.NaN))).toBeLessThan(1e-9)
        expect(Math.abs(right - (even.dots[k]?.right ?? Number.NaN))).toBeLessThan(1e-9)
      }
    }
  })

  test('between them swelling is behind and arrested ahead, each clearly somewhere', () => {
    const at = ({ points }: typeof even, t: number) => points.find((point) => Math.abs(point.t - t) < 1e-9)?.right
    for (const [line, sign] of [
      [swelling, -1],
      [arrested, 1],
    ] as const) {
      let most = 0
      for (const [k, dot] of even.dots.entries()) {
        const next = even.dots[k + 1]
        if (next === undefined || Math.abs(next.right - dot.right) < 1e-9) continue
        const middle = at(line, (dot.t + next.t) / 2)
        if (middle === undefined) throw new Error(`no point half way after ${dot.t}`)
        const done = (middle - dot.right) / (next.right - dot.right)
        most = Math.max(most, sign * (done - 0.5))
        expect(sign * (done - 0.5)).toBeGreaterThan(0)
      }
      expect(most).toBeGreaterThan(0.1)
    }
  })
})

test('dynamicsStrips(foxtrot): S Q Q, a dot each half beat where the trade has the weight (common practice, no source)', () => {
  const { counts, from, to, lines } = dynamicsStrips(dances.foxtrot, 'split on the count')
  expect(counts).toEqual([
    { text: 'S', at: 0 },
    { text: 'Q', at: 2 },
    { text: 'Q', at: 3 },
  ])
  expect([from, to]).toEqual([-0.5, 3.5])
  for (const { dots } of lines) {
    expect(dots.map(({ t }) => t)).toEqual([-0.5, 0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5])
    expect(dots.map(({ right }) => right)).toEqual(
      [0, 0.25, 0.5, 0.75, 1, 0.5, 0, 0.5, 1].map((right) => expect.closeTo(right, 9)),
    )
  }
})

test('dynamicsStrips: a dance that is counted in numbers has a bar of beats', () => {
  const called = (id: 'waltz' | 'paso doble') =>
    dynamicsStrips(dances[id], dances[id].convention).counts.map(({ text, at }) => [text, at])
  expect(called('waltz')).toEqual([
    ['1', 0],
    ['2', 1],
    ['3', 2],
  ])
  expect(called('paso doble')).toEqual([
    ['1', 0],
    ['2', 1],
  ])
})
