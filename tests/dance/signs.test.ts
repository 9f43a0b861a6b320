import { expect, test } from 'vitest'
import type { DanceId } from '../../src/dance/dance.ts'
import { danceList, dances } from '../../src/dance/dances.ts'
import { toBeat } from '../../src/units.ts'

// S7: student revision cards of IDTA Associate theory (foxtrot, quickstep, tango, samba, jive; waltz: numbers only).
// S17: rec.arts.dance lead-and-follow FAQ, music and timing (a slow is two beats in 4/4).
// S15: Richard Lamberty, Tango timing (tango in four).
test.each<readonly [DanceId, number | null, number | null]>([
  ['waltz', null, null], // S7
  ['tango', 2, 1], // S15
  ['viennese waltz', null, null], // S7
  ['foxtrot', 2, 1], // S7, S17
  ['quickstep', 2, 1], // S7, S17
  ['samba', 1, 0.5], // S7
  ['cha-cha-cha', 2, 1], // S17
  ['rumba', 2, 1], // S17
  ['paso doble', null, null], // S9f: URDC teaching sheet, Paso Doble: one step a beat
  ['jive', 2, 1], // S7, S17
  ['exercise', 2, 1], // S17
])('%s: S is worth %s and Q %s beats as danced', (id, S, Q) => {
  const signs = dances[id].signs
  expect(signs.S === null ? null : toBeat(signs.S)).toBe(S)
  expect(signs.Q === null ? null : toBeat(signs.Q)).toBe(Q)
  expect(signs.source.provenance).toBe('published')
})

// &: S7 (as above), S13 Dancing Tid-bits no. 3, S14a Sandi & Dan Finch, Where to put the & step, S17 (as above).
// a: S10 Common Glossary of Round Dance Terms, Roundalab & URDC, Oct 2001, S13 no. 7, S14a.
test.each(danceList)('$id: & is half a beat and a a quarter', ({ signs }) => {
  expect([toBeat(signs['&']), toBeat(signs.a)]).toEqual([0.5, 0.25])
})

// S7 (tango), S17: in 2/4 S is 1 written beat, Q a half, & a quarter.
test('tango: S, Q and & in written beats are 1, a half and a quarter', () => {
  const { signs, written } = dances.tango
  const values = [signs.S, signs.Q, signs['&']].map((value) => toBeat(value!) / written!.danced)
  expect(values).toEqual([1, 0.5, 0.25])
})

// The one relation that holds in every dance: S7 (tango, samba), S9 URDC teaching sheets (c) Tango and (e) Samba.
test('a slow is two quicks wherever there are slows', () => {
  const withSlows = danceList.filter((dance) => dance.signs.S !== null || dance.signs.Q !== null)
  expect(withSlows).toHaveLength(8)
  for (const { signs } of withSlows) expect(signs.S).toBe(2 * signs.Q!)
})
