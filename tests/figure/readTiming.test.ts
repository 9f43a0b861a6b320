import { describe, expect, test } from 'vitest'
import type { DanceId } from '../../src/dance/dance.ts'
import { dances } from '../../src/dance/dances.ts'
import { readTiming } from '../../src/figure/readTiming.ts'
import { readValues } from '../../src/figure/readValues.ts'
import { sumOfValues, toBeat } from '../../src/units.ts'

/**
 * Split patterns of the trade, with the beats on which the signs fall. R: read in a published text; M: from memory;
 * I: inferred. S7 IDTA revision cards; S8 ISTD waltz list; S13 Dancing Tid-bits; S14a Finch; S15 Lamberty; S24 and S25
 * ISTD-derived notes; S44 FAQ 19; S53 a glossary of round dancing; S9f and S10 notes on paso doble and samba.
 * Where a text counts a hold, the hold is an action with a sign of its own.
 */
type Row = readonly [DanceId, text: string, values: string, onsets: readonly number[], sum: number, source: string]
const rows: readonly Row[] = [
  ['waltz', '1 2 3', '1 1 1', [0, 1, 2], 3, 'R: S7'],
  ['viennese waltz', '1 2 3', '1 1 1', [0, 1, 2], 3, 'R: S7'],
  ['waltz', '1 2 & 3', '1 1/2 1/2 1', [0, 1, 1.5, 2], 3, 'R: S7, S14a'],
  ['waltz', '1 & 2 3', '1/2 1/2 1 1', [0, 0.5, 1, 2], 3, 'R string: S8; values I'],
  ['waltz', '1 2 3 &', '1 1 1/2 1/2', [0, 1, 2, 2.5], 3, 'R string: S8; values I'],
  ['waltz', '1 (2) 3', '2 1', [0, 2], 3, 'R: S53'],
  ['foxtrot', 'S Q Q', '2 1 1', [0, 2, 3], 4, 'R: S7'],
  ['foxtrot', 'S Q & Q', '2 1/2 1/2 1', [0, 2, 2.5, 3], 4, 'R: S14a'],
  ['foxtrot', 'S S S', '2 2 2', [0, 2, 4], 6, 'R: S13 #180'],
  ['foxtrot', 'S QQ QQQQ', '2 1 1 1 1 1 1', [0, 2, 3, 4, 5, 6, 7], 8, 'M (weave)'],
  ['quickstep', 'S Q Q S', '2 1 1 2', [0, 2, 3, 4], 6, 'R: S7'],
  ['tango', 'Q Q S', '1 1 2', [0, 1, 2], 4, 'M; unit R: S15'],
  ['tango', 'S Q Q S', '2 1 1 2', [0, 2, 3, 4], 6, 'R: S15'],
  ['tango', 'Q Q & S', '1 1/2 1/2 2', [0, 1, 1.5, 2], 4, 'M'],
  ['cha-cha-cha', '2 3 4 & 1', '1 1 1/2 1/2 1', [0, 1, 2, 2.5, 3], 4, 'R: S7, S13 #3'],
  [
    'cha-cha-cha',
    '2 & 3 & 4 & 1',
    '1/2 1/2 1/2 1/2 1/2 1/2 1',
    [0, 0.5, 1, 1.5, 2, 2.5, 3],
    4,
    'R: S13 #3 (Cuban break)',
  ],
  // The step of 2 is delayed: steps on ½, 1, 2, 2½, 3, after a hold on 0.
  ['cha-cha-cha', '2 (hold) & 3 4 & 1', '1/2 1/2 1 1/2 1/2 1', [0, 0.5, 1, 2, 2.5, 3], 4, 'M; name R: S51 (guapacha)'],
  ['rumba', '2 3 4-1', '1 1 2', [0, 1, 2], 4, 'R: S13 #188, S44'],
  ['rumba', '2 3 4.1', '1 1 2', [0, 1, 2], 4, 'R: S13 #188, S44'],
  ['samba', '1 a 2', '3/4 1/4 1', [0, 0.75, 1], 2, 'R: S7, S10, S24'],
  ['samba', '1 a 2 a 1 a 2', '3/4 1/4 3/4 1/4 3/4 1/4 1', [0, 0.75, 1, 1.75, 2, 2.75, 3], 4, 'R: S24 (volta)'],
  ['samba', 'S Q Q', '1 1/2 1/2', [0, 1, 1.5], 2, 'R: S7, S24'],
  ['samba', '1 2 &', '1 1/2 1/2', [0, 1, 1.5], 2, 'R: S7, S24'],
  ['samba', 'Q Q S', '1/2 1/2 1', [0, 0.5, 1], 2, 'R: S24'],
  ['samba', '1 & 2', '1/2 1/2 1', [0, 0.5, 1], 2, 'R: S24'],
  ['samba', 'S S Q Q S', '1 1 1/2 1/2 1', [0, 1, 2, 2.5, 3], 4, 'R: S24'],
  ['samba', 'S QQQQQQ', '1 1/2 1/2 1/2 1/2 1/2 1/2', [0, 1, 1.5, 2, 2.5, 3, 3.5], 4, 'R: S7, S24'],
  ['jive', 'Q a Q', '3/4 1/4 1', [0, 0.75, 1], 2, 'R: S7, S13 #34'],
  ['jive', '3 a 4', '3/4 1/4 1', [0, 0.75, 1], 2, 'R: S7, S13 #34'],
  ['jive', '1 a 2', '3/4 1/4 1', [0, 0.75, 1], 2, 'R: S7, S13 #34'],
  ['jive', '1 & 2', '1/2 1/2 1', [0, 0.5, 1], 2, 'R: S13 #34 (American triple)'],
  ['jive', 'Q Q QaQ QaQ', '1 1 3/4 1/4 1 3/4 1/4 1', [0, 1, 2, 2.75, 3, 4, 4.75, 5], 6, 'R: S7'],
  ['jive', 'Q Q QaQ', '1 1 3/4 1/4 1', [0, 1, 2, 2.75, 3], 4, 'R: S7'],
  ['paso doble', '1 2 3 4 5 6 7 8', '1 1 1 1 1 1 1 1', [0, 1, 2, 3, 4, 5, 6, 7], 8, 'R: S9f, S25'],
]

const valuesOf = (text: string) => {
  const reading = readValues(text)
  if (!reading.ok) throw new Error(`no beat values: ${text}`)
  return reading.value
}

describe('readTiming(text, dance)', () => {
  test.each(rows)('%s: %s is %s', (id, text, values, onsets, sum) => {
    const reading = readTiming(text, dances[id])
    expect(reading).toMatchObject({ ok: true, values: valuesOf(values) })
    if (!reading.ok) return
    expect(reading.values.map((_, index) => toBeat(sumOfValues(reading.values.slice(0, index))))).toEqual(onsets)
    expect(toBeat(sumOfValues(reading.values))).toBe(sum)
    expect(reading.signs).toHaveLength(reading.values.length)
  })

  test("samba's runs, the one pattern without a spelling of its own (R: S24), by their beat values", () => {
    const given = valuesOf('3/4 1/2 3/4')
    expect(readTiming('1 2 3', dances.samba, given)).toMatchObject({ ok: true, values: given, signs: ['1', '2', '3'] })
    expect(readTiming('1 2 3', dances.samba)).toMatchObject({ ok: false })
  })

  test.each<[DanceId, string, readonly string[], number]>([
    ['foxtrot', 'SQQ', ['S', 'Q', 'Q'], 1],
    ['foxtrot', 's q | q', ['S', 'Q', 'Q'], 1],
    ['waltz', '12&3', ['1', '2', '&', '3'], 1],
    ['waltz', '1, 2 & / 3', ['1', '2', '&', '3'], 1],
    ['waltz', '2 3 1', ['2', '3', '1'], 2],
    ['waltz', '123 223 323', ['1', '2', '3', '2', '2', '3', '3', '2', '3'], 1],
    ['waltz', '1 (2) (3)', ['1 (2) (3)'], 1],
    ['rumba', '2 3 4 – 1 2 3 4-1', ['2', '3', '4-1', '2', '3', '4-1'], 2],
    ['rumba', 'Q Q S', ['Q', 'Q', 'S'], 2],
    ['cha-cha-cha', '4&1 2&3 4&1', ['4', '&', '1', '2', '&', '3', '4', '&', '1'], 4],
    ['cha-cha-cha', '2 (hold) & 3 4 & 1', ['2', '&', '3', '4', '&', '1'], 2],
    ['paso doble', '12345678', ['1', '2', '3', '4', '5', '6', '7', '8'], 1],
    ['paso doble', '1 2 3 4 1 2 1 2', ['1', '2', '3', '4', '1', '2', '1', '2'], 1],
    ['exercise', '', [], 1],
  ])('%s: reads the signs of %s', (id, text, signs, firstCount) => {
    expect(readTiming(text, dances[id])).toMatchObject({ ok: true, signs, firstCount })
  })

  test('counts a paso doble on to 16, with and without spaces', () => {
    const counts = Array.from({ length: 16 }, (_, index) => String(index + 1))
    for (const between of ['', ' ']) {
      const reading = readTiming(counts.join(between), dances['paso doble'])
      expect(reading).toMatchObject({ ok: true, signs: counts, values: counts.map(() => 48) })
    }
  })

  test.each<[DanceId, string, readonly [code: string, at: number][]]>([
    [
      'foxtrot',
      'slow quick',
      [
        ['timing-sign-unknown', 0],
        ['timing-sign-unknown', 5],
      ],
    ],
    ['foxtrot', 'S-Q', [['timing-sign-unknown', 1]]],
    ['waltz', '1-2-3', [['timing-sign-unknown', 3]]],
    ['waltz', '1 (2 3)', [['timing-sign-unknown', 2]]],
    ['waltz', '1 (2', [['timing-sign-unknown', 2]]],
    ['waltz', '1 3', [['timing-count-out-of-order', 2]]],
    [
      'waltz',
      '1 2 3 4 5 6',
      [
        ['timing-count-out-of-order', 6],
        ['timing-count-out-of-order', 8],
        ['timing-count-out-of-order', 10],
      ],
    ],
    ['waltz', '1 3 1 2 3', [['timing-count-out-of-order', 2]]],
    ['waltz', '4 1', [['timing-count-out-of-order', 0]]],
    ['waltz', '0', [['timing-count-out-of-order', 0]]],
    ['rumba', '2 3 4.2', [['timing-count-out-of-order', 5]]],
    ['paso doble', '1 2 2', [['timing-count-out-of-order', 4]]],
    ['samba', 'Q 2', [['timing-count-out-of-order', 2]]],
    ['waltz', '(1) 2 3', [['timing-split-first', 0]]],
    ['waltz', '(hold) 1', [['timing-split-first', 0]]],
    ['waltz', 'a & 1', [['timing-split-too-long', 2]]],
    ['waltz', '1 a & 2', [['timing-split-too-long', 4]]],
    ['samba', 'Q & Q', [['timing-split-too-long', 2]]],
    ['waltz', 'S 3', [['timing-sign-not-of-dance', 0]]],
  ])('%s: refuses %s', (id, text, expected) => {
    const reading = readTiming(text, dances[id])
    expect(reading.ok ? [] : reading.faults.map(({ fault, at }) => [fault.code, at])).toEqual(expected)
  })

  test.each([
    ['letters and brackets', 'S Q Q (', 25_000],
    ['repeats', '1 ×2 ', 20_000],
    ['ranges', '1–4 ', 25_000],
    ['repeats with spaces and no number', 'x    ', 20_000],
    ['beats held, then repeated', '(2) ', 25_000],
  ])('takes 100,000 signs in one pass: %s', (_, signs, times) => {
    const started = performance.now()
    expect(readTiming(`1 ${signs.repeat(times)}×8 ×8 ×8`, dances.foxtrot).ok).toBe(false)
    // Some 50 ms; a scanner that looks back over the text would need minutes.
    expect(performance.now() - started).toBeLessThan(2000)
  })
})

describe('readTiming(text, dance): ranges', () => {
  test.each<[DanceId, string, string]>([
    ['paso doble', '1–8', '1 2 3 4 5 6 7 8'],
    ['paso doble', '1-8', '1 2 3 4 5 6 7 8'],
    ['paso doble', '1 – 4 1–4', '1 2 3 4 1 2 3 4'],
    ['paso doble', '1–16', '1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16'],
    ['paso doble', '1 2 3–10 11', '1 2 3 4 5 6 7 8 9 10 11'],
    ['waltz', '1–3 1–3', '1 2 3 1 2 3'],
    ['foxtrot', '1–34', '1 2 3 4'],
    ['rumba', '2–4', '2 3 4'],
    ['waltz', '1–3&', '1 2 3 &'],
  ])('%s: %s names all counts between, as %s does', (id, text, long) => {
    const [short, written] = [readTiming(text, dances[id]), readTiming(long, dances[id])]
    expect(short).toMatchObject({ ok: true })
    expect(short).toEqual(written)
  })

  test.each<[DanceId, string, readonly string[]]>([
    ['rumba', '2 3 4-1', ['2', '3', '4-1']],
    ['waltz', '1-2 3', ['1-2', '3']],
    ['paso doble', '1–2', ['1-2']],
    ['paso doble', '2-1', ['2-1']],
    ['paso doble', '1–8-9', []],
    // The bar's number stands for its count 1, so that 2 comes next.
    ['waltz', '1 2 3 2-2 3', ['1', '2', '3', '2-2', '3']],
  ])('%s: in %s a dash to the next count is a tie', (id, text, signs) => {
    const reading = readTiming(text, dances[id])
    expect(reading.ok ? reading.signs : []).toEqual(signs)
  })

  test.each<[DanceId, string, sign: string, at: number]>([
    ['rumba', '2 3 4-2', '4-2', 5],
    ['waltz', '1 2 3–2', '3–2', 5],
    ['waltz', '1–1', '1–1', 1],
    ['waltz', '1–8', '1–8', 1],
    ['waltz', '1–16', '1–16', 1],
    ['paso doble', '1 2 3–3', '3–3', 5],
    ['paso doble', '1–17', '1–1', 1],
  ])('%s: refuses the range in %s', (id, text, sign, at) => {
    const reading = readTiming(text, dances[id])
    expect(reading.ok ? null : reading.faults[0]).toEqual({
      fault: { code: 'timing-range-wrong', values: { sign } },
      at,
    })
  })

  test('never makes more than 500 signs: a range that would is refused, and nothing after it is read', () => {
    const reading = readTiming(`${'1–16 '.repeat(40)}S`, dances['paso doble'])
    expect(reading).toMatchObject({ ok: false, faults: [{ fault: { code: 'timing-range-wrong' }, at: 31 * 5 + 1 }] })
  })
})

describe('readTiming(text, dance): ×2', () => {
  test.each<[DanceId, string, string]>([
    ['rumba', '2 3 4-1 ×2', '2 3 4-1 2 3 4-1'],
    ['rumba', '2 3 4-1 x3', '2 3 4-1 2 3 4-1 2 3 4-1'],
    ['cha-cha-cha', '2 3 4&1 X 2', '2 3 4&1 2 3 4&1'],
    ['waltz', '1 2 3 ×2 1 2 & 3', '1 2 3 1 2 3 1 2 & 3'],
    ['foxtrot', 'S ×2 QQ ×2', 'S S Q Q S S Q Q'],
    ['jive', 'QQ ×2', 'QQ QQ'],
    ['paso doble', '1–8 ×2', '1 2 3 4 5 6 7 8 1 2 3 4 5 6 7 8'],
    ['foxtrot', '& S Q Q ×2', '& S Q Q & S Q Q'],
  ])('%s: %s is %s', (id, text, long) => {
    const [short, written] = [readTiming(text, dances[id]), readTiming(long, dances[id])]
    expect(short).toMatchObject({ ok: true })
    expect(short).toEqual(written)
  })

  test('as many as 500 signs, a figure’s most', () => {
    const reading = readTiming('S ×5 ×5 ×5 ×4', dances.foxtrot)
    expect(reading.ok && reading.signs).toHaveLength(500)
    expect(readTiming('S ×7 ×8 ×3 ×3', dances.foxtrot)).toMatchObject({ ok: false, faults: [{ at: 11 }] })
  })

  test('a hold is held in every round', () => {
    const reading = readTiming('2 (hold) 3 4 1 ×2', dances['cha-cha-cha'])
    expect(reading.ok && reading.holds.map(({ index }) => index)).toEqual([0, 4])
  })

  test.each<[DanceId, string, code: string, at: number]>([
    ['waltz', '×2', 'timing-repeat-wrong', 0],
    ['waltz', '×2 1 2 3', 'timing-repeat-wrong', 0],
    ['waltz', '1 2 3 ×1', 'timing-repeat-wrong', 6],
    ['waltz', '1 2 3 ×0', 'timing-repeat-wrong', 6],
    ['waltz', '1 2 3 ×9', 'timing-repeat-wrong', 6],
    ['waltz', '1 2 3 x20', 'timing-repeat-wrong', 6],
    ['waltz', '1 2 3 ×', 'timing-sign-unknown', 6],
    ['waltz', '1 2 3 extra', 'timing-sign-unknown', 6],
    // The second round would begin on 3.
    ['waltz', '1 2 ×2', 'timing-count-out-of-order', 4],
    // 3 × 8 × 8 = 192 signs are right, 8 times as many are not, and nothing is read after them.
    ['waltz', '1 2 3 ×8 ×8 ×8 S', 'timing-repeat-wrong', 12],
  ])('%s: refuses %s', (id, text, code, at) => {
    const reading = readTiming(text, dances[id])
    expect(reading.ok ? [] : reading.faults.map(({ fault, at: place }) => [fault.code, place])).toEqual([[code, at]])
  })
})

describe('readTiming(text, dance): a figure that begins with & or a', () => {
  test.each<[DanceId, string, values: string, firstCount: number]>([
    ['waltz', '& 1 2 3', '1/2 1 1 1', 0.5],
    ['waltz', '&', '1/2', 0.5],
    ['waltz', '& 3', '1/2 1', 2.5],
    ['samba', 'a 1 a 2', '1/4 3/4 1/4 1', 0.75],
    ['samba', '& a 1', '1/4 1/4 1', 0.5],
    ['foxtrot', '& S Q Q', '1/2 2 1 1', 0.5],
    ['rumba', '& Q Q S', '1/2 1 1 2', 1.5],
    ['rumba', '& 2 3 4-1', '1/2 1 1 2', 1.5],
    ['cha-cha-cha', '& 1 2 3', '1/2 1 1 1', 0.5],
    // The & lasts over 1: from half a beat before it.
    ['waltz', '& (1) 2 3', '3/2 1 1', 0.5],
  ])('%s: %s has the beat values %s and begins at count %d', (id, text, values, firstCount) => {
    expect(readTiming(text, dances[id])).toMatchObject({ ok: true, values: valuesOf(values), firstCount })
  })

  test('with beat values of its own it begins so much before the count', () => {
    const given = valuesOf('1/4 3/4 1')
    expect(readTiming('& 1 2', dances.samba, given)).toMatchObject({ ok: true, values: given, firstCount: 0.75 })
  })
})

// S, Q and & in 2/4 (1, 1/2, 1/4 written beats) and 1 & 2 & for 1 2 3 4: student revision cards of IDTA Associate
// theory, tango; Dancing Tid-bits no. 136.
describe("readTiming(text, tango, given, '2/4')", () => {
  const read = (text: string, given: string | null = null) =>
    readTiming(text, dances.tango, given === null ? null : valuesOf(given), '2/4')

  test.each<[string, values: string, firstCount: number]>([
    ['1 & 2 &', '1 1 1 1', 1],
    ['1 2', '2 2', 1],
    ['1 & 2 & ×2', '1 1 1 1 1 1 1 1', 1],
    ['2 & 1 &', '1 1 1 1', 3],
    ['1 2 2 2 3 2', '2 2 2 2 2 2', 1],
    ['1 (2) 1', '4 2', 1],
    ['1-2', '4', 1],
    ['1 a 2', '3/2 1/2 2', 1],
    ['S Q Q S', '2 1 1 2', 1],
    ['Q Q & S', '1 1/2 1/2 2', 1],
    ['S Q Q 1', '2 1 1 2', 1],
    ['& 1 2', '1 2 2', 0],
    ['& 2', '1 2', 2],
    ['& S', '1/2 2', 0.5],
  ])('%s is %s danced beats and begins at the danced count %d', (text, values, firstCount) => {
    expect(read(text)).toMatchObject({ ok: true, values: valuesOf(values), firstCount })
  })

  test('SQQS& by its signs and by the cards’ written values 1 1/2 1/2 3/4 1/4 is the same', () => {
    const danced = { ok: true, values: valuesOf('2 1 1 3/2 1/2'), signs: ['S', 'Q', 'Q', 'S', '&'], firstCount: 1 }
    expect(read('SQQS&')).toMatchObject(danced)
    expect(read('SQQS&', '1 1/2 1/2 3/4 1/4')).toMatchObject(danced)
    expect(readTiming('SQQS&', dances.tango)).toMatchObject(danced)
  })

  test('a bar has two counts', () => {
    expect(read('1 2 3 4')).toMatchObject({ ok: false, faults: [{ at: 4 }, { at: 6 }] })
    expect(readTiming('1 2 3 4', dances.tango)).toMatchObject({ ok: true })
  })

  test('changes nothing in a dance that is written as it is danced, nor by another time signature', () => {
    expect(readTiming('1 & 2', dances.samba, null, '2/4')).toEqual(readTiming('1 & 2', dances.samba))
    expect(readTiming('1 & 2', dances.tango, null, '4/4')).toEqual(readTiming('1 & 2', dances.tango))
  })
})
