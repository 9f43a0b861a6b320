import { describe, expect, test } from 'vitest'
import { beatsPerMinute } from '../../src/dance/beatsPerMinute.ts'
import type { DanceId } from '../../src/dance/dance.ts'
import { dances } from '../../src/dance/dances.ts'
import { secondsPerBeat } from '../../src/dance/secondsPerBeat.ts'

/** A slow end and a fast end. */
type Ends<T> = readonly [T, T]

type Row = {
  readonly dance: DanceId
  readonly timeSignature: string
  readonly beatsPerBar: number
  readonly bars: Ends<number>
  readonly beats: Ends<number>
  readonly beat: Ends<string>
  readonly halfBeat: Ends<string>
  readonly bar: Ends<string>
}

/**
 * S1: DTV Turnier- und Sportordnung tempo table, state 05/2023, prints the bars and the beats a minute (its own beats
 * are those of tango in four). S2: Polish Dance Association (PTT) rules extract, undated, prints the same ten ranges.
 * Seconds by hand: 60 / (bars a minute × beats a bar), to four decimals.
 */
const rows: readonly Row[] = [
  {
    dance: 'waltz',
    timeSignature: '3/4',
    beatsPerBar: 3,
    bars: [28, 30],
    beats: [84, 90],
    beat: ['0.7143', '0.6667'],
    halfBeat: ['0.3571', '0.3333'],
    bar: ['2.1429', '2.0000'],
  },
  {
    dance: 'tango',
    timeSignature: '4/4',
    beatsPerBar: 4,
    bars: [31, 33],
    beats: [124, 132],
    beat: ['0.4839', '0.4545'],
    halfBeat: ['0.2419', '0.2273'],
    bar: ['1.9355', '1.8182'],
  },
  {
    dance: 'viennese waltz',
    timeSignature: '3/4',
    beatsPerBar: 3,
    bars: [58, 60],
    beats: [174, 180],
    beat: ['0.3448', '0.3333'],
    halfBeat: ['0.1724', '0.1667'],
    bar: ['1.0345', '1.0000'],
  },
  {
    dance: 'foxtrot',
    timeSignature: '4/4',
    beatsPerBar: 4,
    bars: [28, 30],
    beats: [112, 120],
    beat: ['0.5357', '0.5000'],
    halfBeat: ['0.2679', '0.2500'],
    bar: ['2.1429', '2.0000'],
  },
  {
    dance: 'quickstep',
    timeSignature: '4/4',
    beatsPerBar: 4,
    bars: [50, 52],
    beats: [200, 208],
    beat: ['0.3000', '0.2885'],
    halfBeat: ['0.1500', '0.1442'],
    bar: ['1.2000', '1.1538'],
  },
  {
    dance: 'samba',
    timeSignature: '2/4',
    beatsPerBar: 2,
    bars: [50, 52],
    beats: [100, 104],
    beat: ['0.6000', '0.5769'],
    halfBeat: ['0.3000', '0.2885'],
    bar: ['1.2000', '1.1538'],
  },
  {
    dance: 'cha-cha-cha',
    timeSignature: '4/4',
    beatsPerBar: 4,
    bars: [30, 32],
    beats: [120, 128],
    beat: ['0.5000', '0.4688'],
    halfBeat: ['0.2500', '0.2344'],
    bar: ['2.0000', '1.8750'],
  },
  {
    dance: 'rumba',
    timeSignature: '4/4',
    beatsPerBar: 4,
    bars: [25, 27],
    beats: [100, 108],
    beat: ['0.6000', '0.5556'],
    halfBeat: ['0.3000', '0.2778'],
    bar: ['2.4000', '2.2222'],
  },
  {
    dance: 'paso doble',
    timeSignature: '2/4',
    beatsPerBar: 2,
    bars: [60, 62],
    beats: [120, 124],
    beat: ['0.5000', '0.4839'],
    halfBeat: ['0.2500', '0.2419'],
    bar: ['1.0000', '0.9677'],
  },
  {
    dance: 'jive',
    timeSignature: '4/4',
    beatsPerBar: 4,
    bars: [42, 44],
    beats: [168, 176],
    beat: ['0.3571', '0.3409'],
    halfBeat: ['0.1786', '0.1705'],
    bar: ['1.4286', '1.3636'],
  },
]

test('the table holds every dance that has a published range, once', () => {
  const inProgram = Object.keys(dances).filter((id) => id !== 'exercise')
  expect(rows.map((row) => row.dance).sort()).toEqual(inProgram.sort())
})

describe.each(rows)('$dance, by DTV Turnier- und Sportordnung, state 05/2023', (row) => {
  const dance = dances[row.dance]

  test('is counted in the metre of the table', () => {
    expect([dance.timeSignature, dance.beatsPerBar]).toEqual([row.timeSignature, row.beatsPerBar])
  })

  test('keeps the range in bars a minute and names both texts', () => {
    expect([dance.tempo.from, dance.tempo.to]).toEqual(row.bars)
    expect(dance.tempo.source.provenance).toBe('published')
    expect(dance.tempo.source.text).toContain('DTV Turnier- und Sportordnung')
    expect(dance.tempo.source.text).toContain('Polish Dance Association (PTT)')
  })

  test.each([0, 1] as const)('end %i: beats a minute, and seconds to four decimals', (end) => {
    const bars = end === 0 ? dance.tempo.from : dance.tempo.to
    const oneBeat = secondsPerBeat(dance, bars)
    expect(beatsPerMinute(dance, bars)).toBe(row.beats[end])
    expect(oneBeat.toFixed(4)).toBe(row.beat[end])
    expect((oneBeat / 2).toFixed(4)).toBe(row.halfBeat[end])
    expect((oneBeat * dance.beatsPerBar).toFixed(4)).toBe(row.bar[end])
  })
})

// The same music as it is printed. Bars by S1 as above; the 2/4 by S7: student revision cards of IDTA Associate theory.
describe('tango as written, in 2/4', () => {
  const tango = dances.tango
  const written = tango.written

  test('a bar has two written beats, each of two danced counts', () => {
    expect(written).toMatchObject({ timeSignature: '2/4', beatsPerBar: 2, danced: 2 })
  })

  test.each([
    { bars: 31, beats: 62, beat: '0.9677', halfBeat: '0.4839', bar: '1.9355' },
    { bars: 33, beats: 66, beat: '0.9091', halfBeat: '0.4545', bar: '1.8182' },
  ])('at $bars bars a minute: $beats beats a minute, and seconds to four decimals', (row) => {
    const writtenBeat = secondsPerBeat(tango, row.bars) * written!.danced
    expect(beatsPerMinute(tango, row.bars) / written!.danced).toBe(row.beats)
    expect(writtenBeat.toFixed(4)).toBe(row.beat)
    expect((writtenBeat / 2).toFixed(4)).toBe(row.halfBeat)
    expect((writtenBeat * written!.beatsPerBar).toFixed(4)).toBe(row.bar)
  })

  test('no other dance is written otherwise than it is danced', () => {
    const others = Object.values(dances).filter((dance) => dance.written !== null)
    expect(others.map((dance) => dance.id)).toEqual(['tango'])
  })
})
