import { type MidiTrackNameEvent, parseMidi } from 'midi-file'
import { describe, expect, test } from 'vitest'
import { beatsPerMinute } from '../../src/dance/beatsPerMinute.ts'
import { danceList, dances } from '../../src/dance/dances.ts'
import { playedTempoRange } from '../../src/dance/playedTempoRange.ts'
import { secondsPerBeat } from '../../src/dance/secondsPerBeat.ts'
import { type MidiClicks, midiFile } from '../../src/export/midiFile.ts'
import type { Tick } from '../../src/sound/tick.ts'
import { hex } from './bytes.ts'

/** A waltz at 28 bars a minute: one silent bar without a name. */
const bare: MidiClicks = { title: '', timeSignature: '3/4', quartersPerMinute: 84, ticks: [], length: 3, rounds: 1 }

const tick = (at: number, click: Tick['click']): Tick => ({ at, click, say: null })

/** What an independent reader (npm midi-file 1.2.4, MIT) finds; all times from the start in MIDI ticks. */
function readBack(file: Uint8Array) {
  const { header, tracks } = parseMidi(file)
  let at = 0
  const events = tracks.flat().map((event) => {
    at += event.deltaTime
    return { at, event }
  })
  const of = (type: string) => events.filter(({ event }) => event.type === type)
  const notes = events.flatMap(({ at, event }) => (event.type === 'noteOn' ? [{ at, ...event }] : []))
  const tempi = events.flatMap(({ event }) => (event.type === 'setTempo' ? [event.microsecondsPerBeat] : []))
  const metres = events.flatMap(({ event }) => (event.type === 'timeSignature' ? [event] : []))
  // The reader gives one character for each byte.
  const names = of('trackName').map(({ event }) =>
    Buffer.from((event as MidiTrackNameEvent).text, 'latin1').toString('utf8'),
  )
  return { header, tracks, events, notes, names, tempi, metres, end: at, last: events.at(-1)?.event.type }
}

/** A round of bars with their halves, and a quarter and a third in the first beat. */
const roundOf = (beatsPerBar: number, bars: number): Tick[] => [
  ...Array.from({ length: bars * beatsPerBar * 2 }, (_, half) =>
    tick(half / 2, half % 2 === 1 ? 'half' : half % (2 * beatsPerBar) === 0 ? 'bar' : 'beat'),
  ),
  tick(0.75, 'half'),
  tick(1 / 3, 'half'),
  tick(0.25, null),
]

describe('midiFile(clicks)', () => {
  test('one waltz bar at 28: 42 bytes, as put together by the Standard MIDI File text', () => {
    // Not printed in the text; npm midi-file 1.2.4 writes the same bytes. The end is at tick 1440, 8B 20.
    expect(hex(midiFile(bare))).toBe(
      '4D 54 68 64 00 00 00 06 00 00 00 01 01 E0 4D 54 72 6B 00 00 00 14 00 FF 58 04 03 02 18 08 00 FF 51 03 0A E6 2E 8B 20 FF 2F 00',
    )
  })

  const played = danceList.flatMap((dance) => {
    const { from, to } = playedTempoRange(dance)
    return [from, dance.tempo.from, (dance.tempo.from + dance.tempo.to) / 2, dance.tempo.to, to].map(
      (bars) => [dance.name, bars, dance] as const,
    )
  })
  test.each(played)('%s at %d bars a minute: every click on its MIDI tick and at its time', (_name, bars, dance) => {
    const ticks = roundOf(dance.beatsPerBar, 2)
    const length = 2 * dance.beatsPerBar
    const rounds = 3
    const { beatsPerBar, timeSignature } = dance
    const quartersPerMinute = beatsPerMinute(dance, bars)
    const read = readBack(midiFile({ title: dance.name, timeSignature, quartersPerMinute, ticks, length, rounds }))
    expect(read.header).toMatchObject({ format: 0, numTracks: 1, ticksPerBeat: 480 })
    expect(read.tracks).toHaveLength(1)
    expect(read.metres).toMatchObject([{ numerator: beatsPerBar, denominator: 4, metronome: 24, thirtyseconds: 8 }])
    expect(read.names).toEqual([dance.name])

    const places = Array.from({ length: rounds }, (_, round) =>
      ticks.filter(({ click }) => click !== null).map(({ at }) => round * length + at),
    )
      .flat()
      .sort((one, other) => one - other)
    // Thirds too: 480 is a multiple of 48. A product such as 480 × ⅓ may be off by a last bit.
    const expected = places.map((place) => Math.round(place * 480))
    for (const [index, place] of places.entries()) expect(expected[index]).toBeCloseTo(place * 480, 6)
    expect(read.notes.map(({ at }) => at)).toEqual(expected)
    expect([read.end, read.last]).toEqual([rounds * length * 480, 'endOfTrack'])

    // ticks × microseconds / (10⁶ × 480), the text's rule; a file's tempo is true to half a microsecond a beat.
    const [microseconds = NaN] = read.tempi
    expect(read.tempi).toHaveLength(1)
    for (const [index, place] of places.entries()) {
      const heard = (read.notes[index]!.at * microseconds) / (1e6 * 480)
      expect(Math.abs(heard - place * secondsPerBeat(dance, bars))).toBeLessThanOrEqual(0.5e-6 * place + 1e-9)
    }
  })

  test('all eleven metres were there, and tango is written as it is danced, in 4/4', () => {
    expect(new Set(played.map(([name]) => name)).size).toBe(11)
    expect(dances.tango.timeSignature).toBe('4/4')
    expect(dances.samba.timeSignature).toBe('2/4')
    expect(dances['paso doble'].timeSignature).toBe('2/4')
  })

  test('bar, beat and half are three keys of the percussion map on channel 10, each softer than the one before', () => {
    const ticks = [tick(0, 'bar'), tick(0.5, 'half'), tick(1, 'beat')]
    const { notes, events } = readBack(midiFile({ ...bare, ticks }))
    // A reader counts channels from 0. The percussion map of General MIDI 1 has the keys 35 to 81 (MMA0007/RP003).
    expect(new Set(notes.map(({ channel }) => channel))).toEqual(new Set([9]))
    expect(new Set(notes.map(({ noteNumber }) => noteNumber)).size).toBe(3)
    for (const { noteNumber } of notes) expect(noteNumber >= 35 && noteNumber <= 81).toBe(true)
    const [bar, half, beat] = notes.map(({ velocity }) => velocity)
    expect(bar).toBeGreaterThan(beat!)
    expect(beat).toBeGreaterThan(half!)
    expect(half).toBeGreaterThan(0)
    expect(bar).toBeLessThanOrEqual(127)
    expect(events.filter(({ event }) => event.type === 'noteOff')).toHaveLength(3)
  })

  test('every note is ended once, before the next begins and within the file, also in a crowd', () => {
    const ticks = [0, 1 / 48, 2 / 48, 0.1, 1, 2.98, 2.995].map((at) => tick(at, 'beat'))
    const { events, end } = readBack(midiFile({ ...bare, ticks, rounds: 2 }))
    const notes = events.filter(({ event }) => event.type === 'noteOn' || event.type === 'noteOff')
    expect(notes).toHaveLength(28)
    for (const [index, { at, event }] of notes.entries()) {
      expect(event.type).toBe(index % 2 === 0 ? 'noteOn' : 'noteOff')
      if (index % 2 === 1) expect(at).toBeGreaterThan(notes[index - 1]!.at)
    }
    expect(notes.at(-1)!.at).toBeLessThanOrEqual(end)
    expect(end).toBe(2 * 3 * 480)
  })

  test('after a thousand beats of places between MIDI ticks, each is still within half a tick of its own', () => {
    // Sevenths of 1/480 beat fall between the ticks; a sum of rounded waits loses a part of each.
    const step = 1 + 3 / 7 / 480
    const ticks = Array.from({ length: 10 }, (_, index) => tick(index * step, 'beat'))
    const length = 10 * step
    const { notes, end } = readBack(midiFile({ ...bare, ticks, length, rounds: 100 }))
    expect(notes).toHaveLength(1000)
    for (const [index, { at }] of notes.entries()) {
      expect(Math.abs(at - index * step * 480)).toBeLessThanOrEqual(0.5 + 1e-6)
    }
    expect(Math.abs(end - 1000 * step * 480)).toBeLessThanOrEqual(0.5 + 1e-6)
    // So that the check above can fail: a thousand waits rounded one by one would be 428 ticks short.
    expect(1000 * step * 480 - 1000 * Math.round(step * 480)).toBeGreaterThan(400)
  })

  test('a thousand whole beats end on their tick, and in time to half a millisecond', () => {
    const { notes, end, tempi } = readBack(midiFile({ ...bare, ticks: [tick(0, 'beat')], length: 1, rounds: 1000 }))
    expect(notes.map(({ at }) => at)).toEqual(Array.from({ length: 1000 }, (_, beat) => beat * 480))
    // At 84 the file's microseconds are 0.285714 too many a beat.
    expect((end * tempi[0]!) / (1e6 * 480) - (1000 * 60) / 84).toBeCloseTo(0.000285714, 8)
  })

  test('a click just before the end stays inside the file', () => {
    const { notes, end } = readBack(midiFile({ ...bare, ticks: [tick(2.9999, 'half')] }))
    expect(notes.map(({ at }) => at)).toEqual([1439])
    expect(end).toBe(1440)
  })

  test('ticks may come in any order, and silent ones sound nothing', () => {
    const ticks = [tick(2, 'beat'), tick(0, 'bar'), tick(1, null)]
    expect(readBack(midiFile({ ...bare, ticks })).notes.map(({ at }) => at)).toEqual([0, 960])
    expect(ticks.map(({ at }) => at)).toEqual([2, 0, 1])
  })

  test.each([
    ['Drehung rückwärts', 'Drehung rückwärts'],
    ['ワルツ 🕺', 'ワルツ 🕺'],
    ['Three\r\n walks\u0000\u007f\u0085', 'Three walks'],
    ['a\u202eb\u2028c\ud800d', 'abcd'],
    ['x'.repeat(300), 'x'.repeat(300)],
  ])('the name %j is read as %j', (title, name) => {
    expect(readBack(midiFile({ ...bare, title })).names).toEqual([name])
  })
  test.each(['', '\n\t'])('a title of %j gives no name', (title) => {
    expect(readBack(midiFile({ ...bare, title })).names).toEqual([])
  })

  test('a metre in eighths: a beat is an eighth, the tempo still in quarters', () => {
    const { notes, end, tempi } = readBack(
      midiFile({ ...bare, timeSignature: '6/8', quartersPerMinute: 120, ticks: [tick(3, 'beat')], length: 6 }),
    )
    expect([notes[0]?.at, end, tempi[0]]).toEqual([720, 1440, 500_000])
  })

  test.each<[string, Partial<MidiClicks>]>([
    ['a tempo below what 24 bits hold', { quartersPerMinute: 3.5 }],
    ['a tempo of 0', { quartersPerMinute: 0 }],
    ['no metre', { timeSignature: 'waltz' }],
    ['no round', { rounds: 0 }],
    ['half a round', { rounds: 0.5 }],
    ['a round without length', { length: 0 }],
    ['a round of no number', { length: NaN }],
    ['a tick at the end', { ticks: [tick(3, 'bar')] }],
    ['a tick before the start', { ticks: [tick(-0.5, 'half')] }],
    ['a tick at no number', { ticks: [tick(NaN, 'half')] }],
    ['more than 28 bits of MIDI ticks', { rounds: 186_414 }],
  ])('%s is refused', (_what, wrong) => {
    expect(() => midiFile({ ...bare, ...wrong })).toThrow(RangeError)
  })
  test('as many MIDI ticks as 28 bits hold are written', () => {
    expect(readBack(midiFile({ ...bare, rounds: 186_413 })).end).toBe(186_413 * 1440)
  })
})
