import { expect, test } from 'vitest'
import { beatsPerMinute } from '../../src/dance/beatsPerMinute.ts'
import type { DanceId } from '../../src/dance/dance.ts'
import { danceList, dances } from '../../src/dance/dances.ts'
import { secondsPerBeat } from '../../src/dance/secondsPerBeat.ts'

// Each body by words of its title that no other body's title has.
const S3 = 'World Dance Organisation championship rules'
const S4american = 'NDCA recommended tempi, American style'
const S4international = 'NDCA recommended tempi, International style'
const S5 = 'rec.arts.dance FAQ, ed. V. Eijkhout, 1994–2000'
const S7 = 'Student revision cards of IDTA Associate theory'
const S12 = 'Questions and Answers for Ballroom Examinations'
const S24 = 'ISTD-derived notes on samba and paso doble'
const S48 = 'USISTD syllabus, American style waltz'

/** Body, dance, bars a minute, beats a minute, seconds a beat (both: slow end, fast end). */
type Row = readonly [
  body: string,
  dance: DanceId,
  bars: readonly [number, number],
  beats: readonly [number, number],
  beat: readonly [string, string],
]

// Tango in four counts. Bolero and East Coast Swing, which S4 prints too, are none of the ten dances.
const printed: readonly Row[] = [
  [S3, 'tango', [32, 34], [128, 136], ['0.4688', '0.4412']],
  [S3, 'viennese waltz', [56, 60], [168, 180], ['0.3571', '0.3333']],
  [S3, 'quickstep', [48, 50], [192, 200], ['0.3125', '0.3000']],
  [S3, 'cha-cha-cha', [28, 30], [112, 120], ['0.5357', '0.5000']],
  [S3, 'paso doble', [56, 60], [112, 120], ['0.5357', '0.5000']],
  [S4american, 'waltz', [28, 30], [84, 90], ['0.7143', '0.6667']],
  [S4american, 'tango', [30, 32], [120, 128], ['0.5000', '0.4688']],
  [S4american, 'foxtrot', [30, 32], [120, 128], ['0.5000', '0.4688']],
  [S4american, 'viennese waltz', [54, 58], [162, 174], ['0.3704', '0.3448']],
  [S4american, 'cha-cha-cha', [28, 30], [112, 120], ['0.5357', '0.5000']],
  [S4american, 'rumba', [32, 36], [128, 144], ['0.4688', '0.4167']],
  [S4american, 'samba', [52, 52], [104, 104], ['0.5769', '0.5769']],
  [S4american, 'paso doble', [58, 60], [116, 120], ['0.5172', '0.5000']],
  [S4international, 'tango', [33, 33], [132, 132], ['0.4545', '0.4545']],
  [S4international, 'viennese waltz', [56, 60], [168, 180], ['0.3571', '0.3333']],
  [S4international, 'cha-cha-cha', [32, 32], [128, 128], ['0.4688', '0.4688']],
  [S4international, 'rumba', [26, 27], [104, 108], ['0.5769', '0.5556']],
  [S4international, 'samba', [48, 50], [96, 100], ['0.6250', '0.6000']],
  [S4international, 'jive', [44, 46], [176, 184], ['0.3409', '0.3261']],
  [S7, 'waltz', [30, 30], [90, 90], ['0.6667', '0.6667']],
  [S7, 'foxtrot', [30, 30], [120, 120], ['0.5000', '0.5000']],
  [S7, 'quickstep', [50, 50], [200, 200], ['0.3000', '0.3000']],
  // The cards count tango in two: 66–68 beats of 0.9091–0.8824 s (the next test); here in four.
  [S7, 'tango', [33, 34], [132, 136], ['0.4545', '0.4412']],
  [S7, 'samba', [50, 50], [100, 100], ['0.6000', '0.6000']],
  [S7, 'jive', [44, 44], [176, 176], ['0.3409', '0.3409']],
]

// Printed in bars a minute only; beats and seconds by hand.
const printedInBars: readonly Row[] = [
  [S12, 'waltz', [31, 31], [93, 93], ['0.6452', '0.6452']],
  [S48, 'waltz', [28, 32], [84, 96], ['0.7143', '0.6250']],
  [S24, 'samba', [50, 50], [100, 100], ['0.6000', '0.6000']],
  [S24, 'paso doble', [62, 62], [124, 124], ['0.4839', '0.4839']],
  [S5, 'waltz', [28, 31], [84, 93], ['0.7143', '0.6452']],
  [S5, 'tango', [32, 34], [128, 136], ['0.4688', '0.4412']],
  [S5, 'viennese waltz', [56, 60], [168, 180], ['0.3571', '0.3333']],
  [S5, 'cha-cha-cha', [32, 34], [128, 136], ['0.4688', '0.4412']],
  [S5, 'samba', [48, 50], [96, 100], ['0.6250', '0.6000']],
  [S5, 'rumba', [27, 29], [108, 116], ['0.5556', '0.5172']],
  [S5, 'jive', [44, 52], [176, 208], ['0.3409', '0.2885']],
]

const rows = [...printed, ...printedInBars]

test.each(rows)('%s: %s keeps its own range, beats a minute and seconds a beat', (body, id, bars, beats, beat) => {
  const dance = dances[id]
  const found = dance.otherTempi.filter((tempo) => tempo.source.text.includes(body))
  expect(found).toHaveLength(1)
  const { from, to, source } = found[0]!
  expect(source.provenance).toBe('published')
  expect([from, to]).toEqual(bars)
  expect([from, to].map((tempo) => beatsPerMinute(dance, tempo))).toEqual(beats)
  expect([from, to].map((tempo) => secondsPerBeat(dance, tempo).toFixed(4))).toEqual(beat)
})

test('tango as S7 (student revision cards of IDTA Associate theory) counts it: 66–68 written beats a minute', () => {
  const { danced } = dances.tango.written!
  expect([33, 34].map((bars) => beatsPerMinute(dances.tango, bars) / danced)).toEqual([66, 68])
  expect([33, 34].map((bars) => (secondsPerBeat(dances.tango, bars) * danced).toFixed(4))).toEqual(['0.9091', '0.8824'])
})

test('no other range is kept than those of the tables', () => {
  const kept = danceList.flatMap((dance) => dance.otherTempi.map((tempo) => `${dance.id}: ${tempo.source.text}`))
  expect(kept).toHaveLength(rows.length)
  expect(new Set(kept).size).toBe(kept.length)
})
