import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { softLimit } from '../../src/sound/softLimit.ts'

const RUNS = { numRuns: 1000, seed: 20261125 } as const
const anySample = fc.double({ min: -1e6, max: 1e6, noNaN: true })

describe('softLimit(sample)', () => {
  test('nothing beyond ±0.89, which is −1 dBFS', () => {
    fc.assert(
      fc.property(anySample, (sample) => Math.abs(softLimit(sample)) <= 0.89),
      RUNS,
    )
    expect(20 * Math.log10(Math.abs(softLimit(1e6)))).toBeLessThanOrEqual(-1)
  })
  test('what is quiet is unchanged, up to two clicks and a word at −12 dBFS and more', () => {
    fc.assert(
      fc.property(fc.double({ min: -0.6, max: 0.6, noNaN: true }), (sample) => softLimit(sample) === sample),
      RUNS,
    )
  })
  test('louder stays louder, and the other side is the mirror', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1.8, noNaN: true }),
        fc.double({ min: 1e-6, max: 0.2, noNaN: true }),
        (sample, more) => {
          expect(softLimit(sample + more)).toBeGreaterThan(softLimit(sample))
          expect(softLimit(-sample)).toBeCloseTo(-softLimit(sample), 15)
        },
      ),
      RUNS,
    )
  })
  test('a soft knee: its slope never jumps and never grows beyond 1 (a clipper’s falls from 1 to 0 at once)', () => {
    const step = 0.001
    const slope = (x: number) => (softLimit(x + step) - softLimit(x)) / step
    for (let x = 0; x < 2; x += step) {
      expect(slope(x)).toBeLessThanOrEqual(1 + 1e-9)
      expect(Math.abs(slope(x + step) - slope(x))).toBeLessThan(0.01)
    }
  })
})
