import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { addTurns } from '../../src/figure/addTurns.ts'
import { readTurn } from '../../src/figure/readTurn.ts'
import { turnText } from '../../src/figure/texts.ts'
import { type Radians, radians } from '../../src/units.ts'
import { THOUSAND } from '../tools/generateFigure.ts'

/** What the reader makes of a fraction of a turn, to the right positive. */
function said(over: number, under: number): Radians {
  const reading = readTurn(over === 0 ? 'none' : `${Math.abs(over)}/${under} ${over < 0 ? 'left' : 'right'}`, 'turn')
  if (!reading.ok) throw new Error(JSON.stringify(reading))
  return reading.value
}

/** At most a whole turn: the sum of two is one that a description may say. */
const fraction = fc
  .integer({ min: 1, max: 20 })
  .chain((under) => fc.record({ over: fc.integer({ min: -under, max: under }), under: fc.constant(under) }))

describe('addTurns(first, second)', () => {
  test('the sum of two fractions of a turn is the number that the reader makes of the sum, and can be written', () => {
    let plainSumsOff = 0
    const property = fc.property(fraction, fraction, (a, b) => {
      const [first, second] = [said(a.over, a.under), said(b.over, b.under)]
      const sum = said(a.over * b.under + b.over * a.under, a.under * b.under)
      if (first + second !== sum) plainSumsOff += 1
      expect(addTurns(first, second)).toBe(sum)
      expect(readTurn(turnText(addTurns(first, second)), 'turn')).toMatchObject({ value: sum })
    })
    fc.assert(property, THOUSAND)
    expect(plainSumsOff).toBeGreaterThan(50)
  })

  test('of other numbers, their plain sum; next to nothing is nothing', () => {
    expect(addTurns(radians(0.123456789), radians(1))).toBe(1.123456789)
    expect(addTurns(radians(1), radians(-1 - 1e-12))).toBe(0)
    expect(addTurns(radians(0), radians(0.1))).toBe(0.1)
  })
})
