import { readFile } from 'node:fs/promises'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import wavefile from 'wavefile'
import { readVoice } from '../../src/sound/readVoice.ts'
import { VOICE_KEYS, type Voice } from '../../src/sound/voice.ts'

type Place = { start: number; length: number; onset: number }
type List = { madeWith: string; words: Record<string, Place> }

const LENGTH = 40
const HEAD = 44

/** Each word 40 samples that rise by one, and a list of where they lie. */
function small(): { bytes: Uint8Array; list: List } {
  const wave = new wavefile.WaveFile()
  wave.fromScratch(
    1,
    16_000,
    '16',
    Array.from({ length: LENGTH * VOICE_KEYS.length }, (_, at) => at - 100),
  )
  const words = VOICE_KEYS.map((key, at) => [key, { start: LENGTH * at, length: LENGTH, onset: at }] as const)
  return { bytes: wave.toBuffer(), list: { madeWith: 'hand', words: Object.fromEntries(words) } }
}

/** What it complains of, line by line. */
function problems(bytes: Uint8Array, json: string): readonly string[] {
  try {
    readVoice(bytes, json)
  } catch (error) {
    expect(error).toBeInstanceOf(RangeError)
    return (error as RangeError).message.split('\n')
  }
  return []
}

/** The complaints after a change to the list. */
function changed(change: (list: List & Record<string, unknown>) => void): readonly string[] {
  const { bytes, list } = small()
  change(list)
  return problems(bytes, JSON.stringify(list))
}

/** The complaints after a change to the sound, or with what the change gives in its place. */
function damaged(change: (view: DataView, bytes: Uint8Array) => unknown): readonly string[] {
  const { bytes, list } = small()
  const after = change(new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength), bytes)
  return problems(after instanceof Uint8Array ? after : bytes, JSON.stringify(list))
}

describe('readVoice(bytes, json)', () => {
  test('gives each word its samples from −1 to 1, and its onset', () => {
    const { bytes, list } = small()
    // Somewhere inside a larger buffer, as a part of a download may be.
    const inside = new Uint8Array(bytes.length + 3)
    inside.set(bytes, 3)
    const { sampleRate, words } = readVoice(inside.subarray(3), JSON.stringify(list))
    expect([sampleRate, [...words.keys()]]).toEqual([16_000, VOICE_KEYS])
    const { samples, onset } = words.get('three')!
    expect([samples.length, samples[0], samples[LENGTH - 1], onset]).toEqual([LENGTH, -20 / 32768, 19 / 32768, 2])
  })
  test('passes over chunks that it does not know, also of odd length', () => {
    const { bytes, list } = small()
    const more = Uint8Array.from([...bytes, ...new TextEncoder().encode('note'), 3, 0, 0, 0, 1, 2, 3, 0])
    new DataView(more.buffer).setUint32(4, more.length - 8, true)
    expect(problems(more, JSON.stringify(list))).toEqual([])
  })

  test.each<[string, (view: DataView, bytes: Uint8Array) => unknown, string[]]>([
    ['nothing', () => new Uint8Array(0), ['the sound is no WAVE file']],
    ['a page', () => new TextEncoder().encode('<!doctype html><p>Not found'), ['the sound is no WAVE file']],
    ['two channels', (view) => view.setUint16(22, 2, true), ["the sound's channels: 2, not 1"]],
    ['floating point', (view) => view.setUint16(20, 3, true), ["the sound's format: 3, not 1"]],
    ['8 bits', (view) => view.setUint16(34, 8, true), ["the sound's bits a sample: 8, not 16"]],
    [
      'another rate',
      (view) => view.setUint32(24, 500, true),
      ["the sound's bytes a second: 32000, not 1000", 'the sound has 500 samples a second, not 8000 to 96000'],
    ],
    ['no format', (view) => view.setUint8(12, 'F'.charCodeAt(0)), ['the sound has no chunk "fmt "']],
    ['no samples', (view) => view.setUint8(36, 'D'.charCodeAt(0)), ['the sound has no chunk "data"']],
    [
      'half a sample',
      (view) => view.setUint32(40, 2 * LENGTH * VOICE_KEYS.length - 1, true),
      ['959 bytes are no whole 16-bit samples'],
    ],
    [
      'a download that broke off',
      (_, bytes) => bytes.subarray(0, 544),
      ['the sound says 1004 bytes and has 544', 'the sound\'s chunk "data" says 960 bytes and has 500'],
    ],
  ])('refuses %s', (_what, change, wanted) => {
    expect(damaged(change)).toEqual(wanted)
  })
  test('refuses a sound with any one bit of its head turned over', () => {
    for (let bit = 0; bit < 8 * HEAD; bit++) {
      const found = damaged((_, bytes) => {
        bytes[bit >> 3]! ^= 1 << (bit & 7)
      })
      expect([bit, found.length > 0]).toEqual([bit, true])
    }
  })
  test('refuses a sound that ends anywhere before its end', () => {
    const { bytes, list } = small()
    for (let end = 0; end < bytes.length; end++) {
      expect([end, problems(bytes.subarray(0, end), JSON.stringify(list)).length > 0]).toEqual([end, true])
    }
  })

  test.each<[string, (list: List & Record<string, unknown>) => void, string[]]>([
    ['a missing word', ({ words }) => delete words.and, ['"and" is missing']],
    [
      'an unknown word',
      ({ words }) => (words.nine = { start: 0, length: 1, onset: 0 }),
      ['"nine" is no word of a count'],
    ],
    ['a word that is a number', ({ words }) => (words.a = 7 as never), ['"a" is no object']],
    ['a start below 0', ({ words }) => (words.one!.start = -1), ['"one": "start" is -1, not a whole number from 0']],
    [
      'a length that is no whole number',
      ({ words }) => (words.six!.length = 3.5),
      ['"six": "length" is 3.5, not a whole number from 1'],
    ],
    ['an empty word', ({ words }) => (words.six!.length = 0), ['"six": "length" is 0, not a whole number from 1']],
    [
      'an onset as text',
      ({ words }) => (words.two!.onset = '5' as never),
      ['"two": "onset" is "5", not a whole number from 0'],
    ],
    [
      'no onset',
      ({ words }) => delete (words.two as Partial<Place>).onset,
      ['"two": "onset" is missing, not a whole number from 0'],
    ],
    [
      'an onset after the end',
      ({ words }) => (words.two!.onset = LENGTH),
      [`"two": "onset" ${LENGTH} is not below "length" ${LENGTH}`],
    ],
    ['a word beyond the end', ({ words }) => (words.quick!.length = LENGTH + 1), ['"quick" ends at sample 481 of 480']],
    ['two words in one place', ({ words }) => (words.two!.start -= 1), ['"one" runs into "two"']],
    [
      'a key that nobody knows',
      ({ words }) => Object.assign(words.one!, { begin: 0 }),
      ['"one" has an unknown key "begin"'],
    ],
    ['another such key', (list) => (list.word = {}), ['the list of words has an unknown key "word"']],
    ['no origin', (list) => (list.madeWith = ''), ['"madeWith" is no text']],
    ['words in a row', (list) => (list.words = [] as never), ['"words" is no object']],
  ])('refuses %s', (_what, change, wanted) => {
    expect(changed(change)).toEqual(wanted)
  })
  test.each([
    ['null', 'the list of words is no object'],
    ['[]', 'the list of words is no object'],
    ['{"words"', 'the list of words is no JSON'],
    ['', 'the list of words is no JSON'],
  ])('refuses the list %s', (json, wanted) => {
    const found = problems(small().bytes, json)
    expect(found).toHaveLength(1)
    expect(found[0]).toContain(wanted)
  })

  test('tells everything that is wrong at once, of the sound and of the list', () => {
    const { bytes, list } = small()
    bytes[22] = 2
    bytes[34] = 8
    delete list.words.four
    list.words.five!.length = -2
    list.words.seven!.onset = 1e9
    expect(problems(bytes, JSON.stringify(list))).toEqual([
      "the sound's channels: 2, not 1",
      "the sound's bits a sample: 8, not 16",
      '"four" is missing',
      '"five": "length" is -2, not a whole number from 1',
      '"seven": "onset" 1000000000 is not below "length" 40',
    ])
  })
  test('whatever a list says, it is read or refused with a RangeError, and what is read lies in the sound', async () => {
    const json = await readFile(resolve(import.meta.dirname, '../../public/voice/en/words.json'), 'utf8')
    const bytes = await readFile(resolve(import.meta.dirname, '../../public/voice/en/words.wav'))
    const cut = fc.record({
      at: fc.nat(json.length),
      length: fc.nat(4),
      by: fc.constantFrom('', '0', '-', '9', '1e9', '"', '{}', 'null', ','),
    })
    const ends = { read: 0, refused: 0 }
    fc.assert(
      fc.property(cut, ({ at, length, by }) => {
        const text = json.slice(0, at) + by + json.slice(at + length)
        let words: Voice['words']
        try {
          words = readVoice(bytes, text).words
        } catch (error) {
          expect(error).toBeInstanceOf(RangeError)
          ends.refused++
          return
        }
        ends.read++
        for (const [key, { start, length: said, onset }] of Object.entries((JSON.parse(text) as List).words)) {
          expect([words.get(key)?.samples.length, words.get(key)?.onset]).toEqual([said, onset])
          expect(HEAD + 2 * (start + said)).toBeLessThanOrEqual(bytes.length)
        }
      }),
      { seed: 20261125, numRuns: 300 },
    )
    // Both happen.
    expect(Math.min(ends.read, ends.refused)).toBeGreaterThan(10)
  })
})
