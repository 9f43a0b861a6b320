import { parseMidi } from 'midi-file'
import { describe, expect, test } from 'vitest'
import { metreEvent, readMetre } from '../../src/export/metreEvent.ts'
import { midiTrack } from '../../src/export/midiTrack.ts'
import { tempoEvent } from '../../src/export/tempoEvent.ts'
import { variableLength } from '../../src/export/variableLength.ts'
import { fromHex, hex } from './bytes.ts'

// All bytes here: the Standard MIDI File 1.0 specification (International MIDI Association), read in copies of its text; the
// tempi, which it does not print, worked out as 60,000,000 / quarters and encoded with npm midi-file 1.2.4.

describe('variableLength(value)', () => {
  test.each([
    [0, '00'],
    [0x40, '40'],
    [0x7f, '7F'],
    [0x80, '81 00'],
    [0x2000, 'C0 00'],
    [0x3fff, 'FF 7F'],
    [0x4000, '81 80 00'],
    [0x100000, 'C0 80 00'],
    [0x1fffff, 'FF FF 7F'],
    [0x200000, '81 80 80 00'],
    [0x8000000, 'C0 80 80 00'],
    [0xfffffff, 'FF FF FF 7F'],
    [96, '60'],
    [192, '81 40'],
    [240, '81 70'],
    [480, '83 60'],
    [960, '87 40'],
    [1440, '8B 20'],
    [1920, '8F 00'],
  ])('%i is %s', (value, bytes) => {
    expect(hex(variableLength(value))).toBe(bytes)
  })
  test.each([-1, 0.5, NaN, 0x10000000])('%s is refused', (value) => {
    expect(() => variableLength(value)).toThrow(RangeError)
  })
})

describe('tempoEvent(quartersPerMinute)', () => {
  test.each([
    [60, '0F 42 40'],
    [84, '0A E6 2E'],
    [87, '0A 85 F7'],
    [90, '0A 2C 2B'],
    [120, '07 A1 20'],
    [124, '07 62 1F'],
    [128, '07 27 0E'],
    [174, '05 42 FC'],
    [180, '05 16 15'],
    [192, '04 C4 B4'],
    [200, '04 93 E0'],
    [208, '04 66 CE'],
  ])('%i quarters a minute are FF 51 03 %s', (quarters, bytes) => {
    expect(hex(tempoEvent(quarters))).toBe(`FF 51 03 ${bytes}`)
  })
  test('the slowest that three bytes hold is FF FF FF; slower is refused with its number', () => {
    expect(hex(tempoEvent(3.5762789))).toBe('FF 51 03 FF FF FF')
    expect(() => tempoEvent(3.576278)).toThrow(/3\.576278$/)
  })
  test.each([0, -60, NaN, Infinity, 2e8])('%s is refused', (quarters) => {
    expect(() => tempoEvent(quarters)).toThrow(RangeError)
  })
})

describe('metreEvent(readMetre(timeSignature))', () => {
  test.each([
    ['4/4', '04 02 18 08'],
    ['3/4', '03 02 18 08'],
    ['2/4', '02 02 18 08'],
    // The specification's own example: the metronome clicks on every third eighth.
    ['6/8', '06 03 24 08'],
  ])('%s is FF 58 04 %s', (timeSignature, bytes) => {
    expect(hex(metreEvent(readMetre(timeSignature)))).toBe(`FF 58 04 ${bytes}`)
  })
  test.each(['', '3', '3/5', '0/4', '256/4', '3/4 ', '3/64', '-3/4'])('"%s" is refused', (timeSignature) => {
    expect(() => readMetre(timeSignature)).toThrow(RangeError)
  })
})

describe('midiTrack(ticksPerQuarter, events, end)', () => {
  // The specification's example of format 0: 96 ticks a quarter, three channels, some statuses left out ("running").
  const example = `4D 54 68 64 00 00 00 06 00 00 00 01 00 60 4D 54 72 6B 00 00 00 3B 00 FF 58 04 04 02 18 08
    00 FF 51 03 07 A1 20 00 C0 05 00 C1 2E 00 C2 46 00 92 30 60 00 3C 60 60 91 43 40 60 90 4C 20 81 40 82 30 40
    00 3C 40 00 81 43 40 00 80 4C 40 00 FF 2F 00`.replace(/\s+/g, ' ')

  test("gives the specification's example, all 81 bytes", () => {
    const events: [number, string][] = [
      [0, 'FF 58 04 04 02 18 08'],
      [0, 'FF 51 03 07 A1 20'],
      [0, 'C0 05'],
      [0, 'C1 2E'],
      [0, 'C2 46'],
      [0, '92 30 60'],
      [0, '3C 60'],
      [96, '91 43 40'],
      [192, '90 4C 20'],
      [384, '82 30 40'],
      [384, '3C 40'],
      [384, '81 43 40'],
      [384, '80 4C 40'],
    ]
    const file = midiTrack(
      96,
      events.map(([at, bytes]) => ({ at, bytes: fromHex(bytes) })),
      384,
    )
    expect(hex(file)).toBe(example)
    expect(file).toHaveLength(81)
  })

  test('an event before its predecessor, or an end before the last, is refused', () => {
    const note = (at: number) => ({ at, bytes: [0x99, 76, 100] })
    expect(() => midiTrack(480, [note(2), note(1)], 3)).toThrow(RangeError)
    expect(() => midiTrack(480, [note(2)], 1)).toThrow(RangeError)
    expect(() => midiTrack(480, [note(1), note(2)], 2)).not.toThrow()
  })

  test('a long track has its length in all four bytes, so that a reader comes to its end', () => {
    const events = Array.from({ length: 20_000 }, (_, at) => ({ at, bytes: [0x99, 76, 100] }))
    expect(parseMidi(midiTrack(480, events, 20_000)).tracks[0]).toHaveLength(20_001)
  })
})
