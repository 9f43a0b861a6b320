import { readFile } from 'node:fs/promises'
import { resolve } from 'node:path'
import { describe, expect, test } from 'vitest'
import wavefile from 'wavefile'
import { dances } from '../../src/dance/dances.ts'
import { secondsPerBeat } from '../../src/dance/secondsPerBeat.ts'
import { serve } from '../../src/serve/serve.mjs'
import { readVoice } from '../../src/sound/readVoice.ts'
import { renderRound } from '../../src/sound/renderRound.ts'
import { VOICE_KEYS } from '../../src/sound/voice.ts'
import { FADE, longest, PEAK } from '../tools/makeVoice.mjs'
import { near } from '../tools/near.ts'
import { perceivedOnset } from '../tools/perceivedOnset.mjs'
import { voicedLevel } from '../tools/voicedLevel.mjs'

const PUBLIC = resolve(import.meta.dirname, '../../public')
const bytes = await readFile(resolve(PUBLIC, 'voice/en/words.wav'))
const json = await readFile(resolve(PUBLIC, 'voice/en/words.json'), 'utf8')
const voice = readVoice(bytes, json)
const { sampleRate } = voice
const word = (key: string) => voice.words.get(key)!

const peak = (samples: Float32Array): number => samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0)
const decibels = (ratio: number): number => 20 * Math.log10(ratio)
/** The greatest root mean square over any 50 ms. */
function loudest(samples: Float32Array): number {
  const width = Math.round(0.05 * sampleRate)
  let most = 0
  for (let from = 0; from + width <= samples.length; from += 50) {
    const part = samples.subarray(from, from + width)
    most = Math.max(most, part.reduce((sum, sample) => sum + sample ** 2, 0) / width)
  }
  return Math.sqrt(most)
}

describe('the English words', () => {
  test('are all there, in two files of 150 kB at most', () => {
    expect([...voice.words.keys()]).toEqual(VOICE_KEYS)
    expect(bytes.length + Buffer.byteLength(json)).toBeLessThanOrEqual(150_000)
  })
  test('are read as an independent reader reads them, and not one sample is left over', () => {
    // npm wavefile, whose samples are whole numbers of 16 bits
    const wave = new wavefile.WaveFile(bytes)
    expect((wave.fmt as { sampleRate: number }).sampleRate).toBe(sampleRate)
    const whole = wave.getSamples(false, Int16Array) as unknown as Int16Array
    const samples = VOICE_KEYS.flatMap((key) => [...word(key).samples])
    expect(samples.length).toBe(whole.length)
    expect(samples.findIndex((sample, at) => sample * 32768 !== whole[at])).toBe(-1)
  })
  test.each(VOICE_KEYS)('%s: the stored onset is where it is perceived to begin, within a sample', (key) => {
    const { samples, onset } = word(key)
    near(onset, perceivedOnset(samples, sampleRate), 1, key)
    // It does not hang on what height makes a rise count: no consonant comes near it, and no vowel falls short.
    for (const counts of [0.55, 0.9]) near(onset, perceivedOnset(samples, sampleRate, counts), 1, key, counts)
  })
  test.each(VOICE_KEYS)('%s: is long enough to be heard and short enough for its place', (key) => {
    const lasts = word(key).samples.length / sampleRate
    expect(lasts).toBeGreaterThan(0.15)
    expect(lasts).toBeLessThanOrEqual(longest(key))
    expect(lasts).toBeLessThan(secondsPerBeat(dances.waltz, dances.waltz.tempo.to) / 2)
  })
  test('fit between each other on the half beats of the fastest published waltz: none has to make room', () => {
    const half = secondsPerBeat(dances.waltz, dances.waltz.tempo.to) / 2
    const tail = (key: string) => (word(key).samples.length - word(key).onset) / sampleRate
    for (const key of VOICE_KEYS) {
      expect(tail(key) + word('and').onset / sampleRate).toBeLessThan(half)
      expect(tail('and') + word(key).onset / sampleRate).toBeLessThan(half)
    }
  })
  test('are equally loud where they are voiced; the one whose peaks stand out most comes to −6 dBFS, none above', () => {
    const levels = VOICE_KEYS.map((key) => decibels(voicedLevel(word(key).samples, sampleRate)))
    expect(Math.max(...levels) - Math.min(...levels)).toBeLessThan(0.02)
    const peaks = VOICE_KEYS.map((key) => peak(word(key).samples))
    expect(Math.max(...peaks)).toBeLessThanOrEqual(PEAK)
    expect(decibels(Math.max(...peaks))).toBeGreaterThan(-6.01)
    // Apart from what counts as voiced: no word's loudest 50 ms stand out.
    const fifties = VOICE_KEYS.map((key) => decibels(loudest(word(key).samples)))
    expect(Math.max(...fifties) - Math.min(...fifties)).toBeLessThan(2)
  })
  test.each(VOICE_KEYS)('%s: begins and ends without a snap, and holds no constant part', (key) => {
    const { samples } = word(key)
    const fade = FADE * sampleRate
    const most = peak(samples)
    for (let at = 0; at < fade; at++) {
      near(samples[at], 0, (most * at) / fade, key, at)
      near(samples.at(-1 - at), 0, (most * at) / fade, key, -at)
    }
    near(samples.reduce((sum, sample) => sum + sample, 0) / samples.length, 0, 0.005, key)
  })
  test('the note says what they were made with, as their list does', async () => {
    const notice = await readFile(resolve(PUBLIC, '../NOTICE'), 'utf8')
    const { madeWith } = JSON.parse(json) as { madeWith: string }
    expect(madeWith).toMatch(/^espeak-ng \d+\.\d+, voice /)
    expect(notice.replaceAll(/\s+/g, ' ')).toContain(`synthesised with ${madeWith}`)
  })
  test('come from our own server to a page that its policy lets fetch them', async () => {
    const { port, close } = await serve({ root: PUBLIC, port: 0 })
    try {
      const fetched = async (name: string) => {
        const answer = await fetch(`http://127.0.0.1:${port}/voice/en/${name}`)
        expect(answer.status).toBe(200)
        expect(answer.headers.get('content-security-policy')).toContain("connect-src 'self'")
        return answer
      }
      const sound = Buffer.from(await (await fetched('words.wav')).arrayBuffer())
      expect([sound.equals(bytes), await (await fetched('words.json')).text()]).toEqual([true, json])
    } finally {
      await close()
    }
  })
})

describe('the English words in a round at 48 kHz', () => {
  const RATE = 48_000
  const WITHIN = 0.01 * RATE
  /** How far after its place each word of a round is perceived to begin, in samples. */
  function late(said: readonly (readonly [at: number, key: string])[], beats: number, beat: number, sound = voice) {
    const ticks = said.map(([at, say]) => ({ at, click: null, say }))
    const round = renderRound(ticks, { beats, secondsPerBeat: beat, sampleRate: RATE }, sound, { clicks: 0, words: 1 })
    const { samples, secondsPerBeat: exact } = round
    const around = Math.round(0.15 * RATE)
    return said.map(([at]) => {
      const from = Math.round(at * exact * RATE) - around
      const part = Float32Array.from(
        { length: 2 * around },
        (_, k) => samples[(from + k + samples.length) % samples.length]!,
      )
      return from + perceivedOnset(part, RATE) - at * exact * RATE
    })
  }
  const allOn = VOICE_KEYS.map((key, at) => [at, key] as const)
  const counted = VOICE_KEYS.slice(0, 8).flatMap((key, at) => [[at, key] as const, [at + 0.5, 'and'] as const])

  test.each([
    ['slowest', dances.waltz.tempo.from],
    ['fastest', dances.waltz.tempo.to],
  ])('on the beats and half beats of the %s waltz each is perceived within 10 ms of its place', (_which, tempo) => {
    const beat = secondsPerBeat(dances.waltz, tempo)
    for (const [k, off] of late(allOn, 12, beat).entries()) near(off, 0, WITHIN, ...allOn[k]!)
    for (const [k, off] of late(counted, 8, beat).entries()) near(off, 0, WITHIN, ...counted[k]!)
  })
  test('placed by their first samples instead, nine of the twelve would be late by more than that', () => {
    const words = new Map([...voice.words].map(([key, { samples }]) => [key, { samples, onset: 0 }]))
    const off = late(allOn, 12, 0.7, { sampleRate, words })
    expect(off.filter((samples) => samples > WITHIN).length).toBeGreaterThanOrEqual(9)
  })
})
