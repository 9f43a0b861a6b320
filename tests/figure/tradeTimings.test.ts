import { expect, test } from 'vitest'
import type { DanceId } from '../../src/dance/dance.ts'
import { dances } from '../../src/dance/dances.ts'
import { readTiming } from '../../src/figure/readTiming.ts'
import { readValues } from '../../src/figure/readValues.ts'
import { sumOfValues, toBeat } from '../../src/units.ts'

/**
 * Figures of the trade as they are charted. R: read in a published text; M: from memory. S1 to S80 are texts of the
 * trade: S7 IDTA revision cards; S8 ISTD waltz list; S9e S24 notes on samba; S13 Dancing Tid-bits; S40 S43 figure lists
 * of foxtrot and quickstep; S42 the same of Viennese waltz; S44 FAQ 19; S45 notes on paso doble.
 */
type Row = readonly [DanceId, figure: string, timing: string, values: string, bars: string, source: string]

const to = (last: number): string => Array.from({ length: last }, (_, index) => index + 1).join(' ')
const ones = (count: number): string => Array.from({ length: count }, () => '1').join(' ')

const rows: readonly Row[] = [
  ['waltz', 'RF Closed Change', '123', '1 1 1', '1', 'R: S7, S8'],
  ['waltz', 'Natural Turn', '123 123', '1 1 1 1 1 1', '2', 'R timing: S8, S12'],
  ['waltz', 'Whisk', '123', '1 1 1', '1', 'R: S7, S8'],
  ['waltz', 'Chassé from PP', '12&3', '1 1/2 1/2 1', '1', 'R: S7, S8'],
  ['waltz', 'Progressive Chassé to R', '12&3', '1 1/2 1/2 1', '1', 'R timing: S8'],
  ['waltz', 'Turning Lock (to L)', '1&23', '1/2 1/2 1 1', '1', 'R timing: S8'],
  ['waltz', 'Fallaway Reverse & Slip Pivot', '123&', '1 1 1/2 1/2', '1', 'R: S8'],
  ['tango', 'Two Walks', 'SS', '2 2', '1', 'R: S13 #136'],
  ['tango', 'Progressive Link', 'QQ', '1 1', '1/2', 'R: S13 #64, #136; S15'],
  ['tango', 'Progressive Side Step', 'QQS', '1 1 2', '1', 'M'],
  ['tango', 'Closed Promenade', 'SQQS', '2 1 1 2', '3/2', 'R: S13 #136, S15'],
  ['tango', 'Rock Turn', 'SQQS QQS', '2 1 1 2 1 1 2', '5/2', 'M'],
  ['tango', 'Basic Reverse Turn', 'QQ&QQS', '1 1/2 1/2 1 1 2', '3/2', 'M'],
  ['tango', 'Progressive Side Step Reverse Turn', 'QQSS QQS QQS', '1 1 2 2 1 1 2 1 1 2', '7/2', 'M'],
  ['tango', 'Five Step', 'QQQQS', '1 1 1 1 2', '3/2', 'M'],
  ['tango', 'Brush Tap', 'QQ&S', '1 1/2 1/2 2', '1', 'M'],
  ['viennese waltz', 'Reverse Turn', '123 123', '1 1 1 1 1 1', '2', 'count R: S42'],
  ['foxtrot', 'Feather Step', 'SQQ', '2 1 1', '1', 'R: S13 #128, #180; S16'],
  ['foxtrot', 'Reverse Turn with Feather Finish', 'SQQ SQQ', '2 1 1 2 1 1', '2', 'R: S7, S13 #180'],
  ['foxtrot', 'Natural Turn (full)', 'SQQ SSS', '2 1 1 2 2 2', '5/2', 'R: S13 #180'],
  ['foxtrot', 'Natural Weave', 'SQQ QQQQ', '2 1 1 1 1 1 1', '2', 'M'],
  ['foxtrot', 'Top Spin', 'QQQQ', '1 1 1 1', '1', 'M'],
  ['quickstep', 'Quarter Turn to R', 'SQQS', '2 1 1 2', '3/2', 'R: S43'],
  ['quickstep', 'Natural Spin Turn', 'SQQ SSS', '2 1 1 2 2 2', '5/2', 'M'],
  ['quickstep', 'Double Reverse Spin, follower', 'SSQQ', '2 2 1 1', '3/2', 'M'],
  ['quickstep', 'Four Quick Run', 'SQQ QQS', '2 1 1 1 1 2', '2', 'M'],
  ['samba', 'Natural Basic', '1a2 1a2', '3/4 1/4 1 3/4 1/4 1', '2', 'R: S7'],
  ['samba', 'Whisk', '1a2', '3/4 1/4 1', '1', 'R: S7, S9e'],
  ['samba', 'Travelling Volta', '1a2a1a2', '3/4 1/4 3/4 1/4 3/4 1/4 1', '2', 'R: S13 #7, S24'],
  ['samba', 'Corta Jaca', 'SQQQQQQ', '1 1/2 1/2 1/2 1/2 1/2 1/2', '2', 'R: S7, S9e, S13 #7'],
  ['samba', 'Closed Rocks', 'SQQ', '1 1/2 1/2', '1', 'R: S7, S9e'],
  ['samba', 'Plait', 'SSQQS', '1 1 1/2 1/2 1', '2', 'R: S9e, S13 #7, S24'],
  ['samba', 'Side Chassés', 'QQQQSS', '1/2 1/2 1/2 1/2 1 1', '2', 'R: S7'],
  ['cha-cha-cha', 'Basic Movement (closed)', '2 3 4&1 2 3 4&1', '1 1 1/2 1/2 1 1 1 1/2 1/2 1', '2', 'R: S13 #3, S7'],
  ['cha-cha-cha', 'New York', '2 3 4&1', '1 1 1/2 1/2 1', '1', 'M'],
  ['cha-cha-cha', 'Three Cha-Chas', '4&1 2&3 4&1', '1/2 1/2 1 1/2 1/2 1 1/2 1/2 1', '3/2', 'M'],
  ['cha-cha-cha', 'Cuban Break', '2&3&4&1', '1/2 1/2 1/2 1/2 1/2 1/2 1', '1', 'R: S13 #3'],
  ['cha-cha-cha', 'Split Cuban Break', '2&3 4&1', '1/2 1/2 1 1/2 1/2 1', '1', 'R: S13 #3'],
  ['rumba', 'Basic Movement', '2 3 4-1 2 3 4-1', '1 1 2 1 1 2', '2', 'R: S13 #10, S44'],
  ['rumba', 'Alemana', 'QQS QQS', '1 1 2 1 1 2', '2', 'R (QQS QQS): S40b'],
  ['rumba', 'Natural Top', '2 3 4-1 2 3 4-1 2 3 4-1', '1 1 2 1 1 2 1 1 2', '3', 'R: S13 #188'],
  ['paso doble', 'Appel', '1', '1', '1/2', 'R: S7, S13 #196'],
  ['paso doble', 'Sur Place', to(8), ones(8), '4', 'R: S13 #43'],
  ['paso doble', 'Drag', to(4), ones(4), '2', 'M'],
  ['paso doble', 'Sixteen', to(16), ones(16), '8', 'R: S13 #43, S45'],
  ['jive', 'Basic in Place', 'QQ QaQ QaQ', '1 1 3/4 1/4 1 3/4 1/4 1', '3/2', 'R construction: S7; feet M'],
  ['jive', 'Whip', 'QQ QaQ', '1 1 3/4 1/4 1', '1', 'R one-bar construction: S7; figure M'],
  ['jive', 'Stop and Go', 'QQ QaQ QQ QaQ', '1 1 3/4 1/4 1 1 1 3/4 1/4 1', '2', 'M'],
  ['jive', 'Rock with single-step chassés', 'QQ S S', '1 1 2 2', '3/2', 'R: S7'],
]

test.each(rows)('%s, %s: %s is %s, bars: %s', (id, _figure, timing, values, bars) => {
  const expected = readValues(values)
  const reading = readTiming(timing, dances[id])
  if (!expected.ok || !reading.ok) throw new Error(JSON.stringify({ expected, reading }))
  expect(reading.values).toEqual(expected.value)
  const [over = 0, under = 1] = bars.split('/').map(Number)
  expect(toBeat(sumOfValues(reading.values)) / dances[id].beatsPerBar).toBe(over / under)
})
