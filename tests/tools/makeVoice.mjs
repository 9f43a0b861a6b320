// Makes the words of the spoken count and writes them to public/voice/en/. Needs espeak-ng, which nothing else here does:
// the words are committed, so this runs only when they are to be others.
//
//   node tests/tools/makeVoice.mjs
//
// The committed words were made on Debian 12 by espeak-ng 1.51 (package 1.51+dfsg-10+deb12u2), called for each word as
//
//   espeak-ng -v en-gb-x-rp -p 80 -s <speed> -z --stdout <said>
//
// with the speeds and what is said below: the slowest speed, in fives from 175 words a minute, at which the word is short
// enough. Of fifteen tried (en-gb, en-us and en-gb-x-rp, at pitches from 20 to 80), in this voice at this pitch (about
// 135 Hz) the peaks stand out least from the vowels, so that all can be loud. Then each word is trimmed, faded and set to one
// loudness; nothing is stretched or cut.
import { spawnSync } from 'node:child_process'
import { mkdir, writeFile } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import wavefile from 'wavefile'
import { perceivedOnset } from './perceivedOnset.mjs'
import { voicedLevel } from './voicedLevel.mjs'

const FILE = fileURLToPath(import.meta.url)
const FOLDER = resolve(FILE, '../../../public/voice/en')

const PROGRAM = 'espeak-ng'
const VOICE = 'en-gb-x-rp'
const PITCH = 80
/**
 * By key: what is said ([[…]] is in phonemes: the a of "1 a 2" is said as in "up"; from memory), words a minute.
 * @type {Readonly<Record<string, readonly [said: string, speed: number]>>}
 */
const WORDS = {
  one: ['one', 200],
  two: ['two', 175],
  three: ['three', 175],
  four: ['four', 195],
  five: ['five', 235],
  six: ['six', 235],
  seven: ['seven', 250],
  eight: ['eight', 175],
  and: ['and', 315],
  a: ['[[V]]', 175],
  slow: ['slow', 210],
  quick: ['quick', 205],
}

/** Seconds: within half a beat of a slow waltz (0.36 s at 28 bars a minute). */
const LONGEST = 0.3
/** Seconds, for what is said between two words. */
const LONGEST_BETWEEN = 0.18
/** @param {string} key */
export const longest = (key) => (key === 'and' || key === 'a' ? LONGEST_BETWEEN : LONGEST)

/** −6 dBFS. */
export const PEAK = 10 ** (-6 / 20)
/** Seconds, at either end. */
export const FADE = 0.002
/** Below this a sound is silence at its ends: −48 dBFS. */
const SILENCE = 0.004

/**
 * Without the silence at its ends, and faded in and out in a straight line.
 * @param {readonly number[]} samples
 * @param {number} sampleRate samples a second
 */
export function trimAndFade(samples, sampleRate) {
  /** @param {number} sample */
  const isHeard = (sample) => Math.abs(sample) > SILENCE
  const trimmed = samples.slice(samples.findIndex(isHeard), samples.findLastIndex(isHeard) + 1)
  const fade = Math.round(FADE * sampleRate)
  return trimmed.map((sample, at) => sample * Math.min(1, at / fade, (trimmed.length - 1 - at) / fade))
}

/**
 * All words at one loudness (of their voiced parts): the greatest at which no peak is above `PEAK`.
 * @param {readonly (readonly number[])[]} words
 * @param {number} sampleRate samples a second
 */
export function evenLoudness(words, sampleRate) {
  /** @param {readonly number[]} word */
  const peakiness = (word) => word.reduce((most, at) => Math.max(most, Math.abs(at)), 0) / voicedLevel(word, sampleRate)
  const level = PEAK / Math.max(...words.map(peakiness))
  return words.map((word) => {
    const gain = level / voicedLevel(word, sampleRate)
    return word.map((sample) => gain * sample)
  })
}

/**
 * @param {readonly string[]} args
 * @returns {Buffer} what the synthesiser wrote
 */
function espeak(...args) {
  const { status, stdout, stderr, error } = spawnSync(PROGRAM, args)
  if (error || status !== 0) throw new Error(`${PROGRAM} ${args.join(' ')}: ${error?.message ?? stderr}`)
  return stdout
}

/** @param {string} said @param {number} speed */
function synthesise(said, speed) {
  const bytes = espeak('-v', VOICE, '-p', `${PITCH}`, '-s', `${speed}`, '-z', '--stdout', said)
  // To a pipe it writes the usual head of 44 bytes, with a length that it cannot know yet.
  const samples = []
  for (let at = 44; at + 1 < bytes.length; at += 2) samples.push(bytes.readInt16LE(at) / 32768)
  return { sampleRate: bytes.readUInt32LE(24), samples }
}

async function main() {
  const version = /\d+(\.\d+)+/.exec(espeak('--version').toString())?.[0]
  const keys = Object.keys(WORDS)
  const spoken = Object.values(WORDS).map(([said, speed]) => synthesise(said, speed))
  const sampleRate = spoken[0]?.sampleRate ?? 0
  const words = evenLoudness(
    spoken.map(({ samples }) => trimAndFade(samples, sampleRate)),
    sampleRate,
  )
  // Toward zero, so that rounding lifts no peak above the limit.
  const whole = words.map((word) => word.map((sample) => Math.trunc(sample * 32768)))
  /** @type {Record<string, { start: number, length: number, onset: number }>} */
  const places = {}
  let start = 0
  for (const [at, word] of whole.entries()) {
    const key = keys[at] ?? ''
    if (word.length > longest(key) * sampleRate) throw new Error(`${key} lasts ${word.length / sampleRate} s`)
    // Of what is written, not of what it was rounded from.
    const onset = perceivedOnset(
      word.map((sample) => sample / 32768),
      sampleRate,
    )
    places[key] = { start, length: word.length, onset }
    start += word.length
  }
  const wave = new wavefile.WaveFile()
  wave.fromScratch(1, sampleRate, '16', whole.flat())
  const madeWith = `${PROGRAM} ${version}, voice ${VOICE}, pitch ${PITCH}`
  await mkdir(FOLDER, { recursive: true })
  await writeFile(join(FOLDER, 'words.wav'), wave.toBuffer())
  await writeFile(join(FOLDER, 'words.json'), `${JSON.stringify({ madeWith, words: places }, null, 2)}\n`)
}

if (process.argv[1] !== undefined && resolve(process.argv[1]) === FILE) await main()
