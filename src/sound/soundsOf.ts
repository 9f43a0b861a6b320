import { clickSounds } from './clickSounds.ts'
import { resampled } from './resampled.ts'
import { type RoundTime, sampleAt } from './roundTime.ts'
import type { Tick } from './tick.ts'
import type { SpokenWord, Voice } from './voice.ts'

/** How loud clicks and words are: 0 to 1. */
export type Gains = { readonly clicks: number; readonly words: number }

/** Quiet to begin with: our voice, whose words peak at −6 dBFS, peaks where the loudest click does, at −12 dBFS. */
const FIRST_GAINS: Gains = { clicks: 1, words: 0.5 }

/** One click or word, and where it lies. */
export type PlacedSound = {
  /** The place of its first sample; below 0: it begins at the end of the round before. */
  readonly start: number
  readonly samples: Float32Array
  /** How many of them are heard. */
  readonly length: number
  readonly gain: number
  /** Over so many samples at its end it fades away; 0: it ends by itself. */
  readonly fade: number
}

/** A word that must make room for the next one fades in this time, in seconds. */
const FADE = 0.008

const isGain = (gain: number): boolean => gain >= 0 && gain <= 1

function clicksOf(ticks: readonly Tick[], time: RoundTime, gain: number): PlacedSound[] {
  if (ticks.every(({ click }) => click === null)) return []
  const sounds = clickSounds(time.sampleRate)
  return ticks.flatMap(({ at, click }) => {
    if (click === null) return []
    const samples = sounds[click]
    return { start: Math.round(sampleAt(time, at)), samples, length: samples.length, gain, fade: 0 }
  })
}

/** One speaker: a word that has not ended when the next begins makes room for it, over the round's end too. */
function takingTurns(words: readonly PlacedSound[], time: RoundTime): PlacedSound[] {
  return words.map((word, k) => {
    const next = words[k + 1]?.start ?? (words[0] ?? word).start + time.length
    const length = Math.max(0, Math.min(word.length, next - word.start))
    return length === word.length ? word : { ...word, length, fade: Math.round(FADE * time.sampleRate) }
  })
}

/** Words at another rate, kept as long as their voice is: each is worked out once, whatever is made of it. */
const known = new WeakMap<SpokenWord, { readonly rate: number; readonly samples: Float32Array }>()

function wordAt(word: SpokenWord, from: number, to: number): Float32Array {
  const again = known.get(word)
  if (again?.rate === to) return again.samples
  const samples = resampled(word.samples, from, to)
  known.set(word, { rate: to, samples })
  return samples
}

function wordsOf(ticks: readonly Tick[], time: RoundTime, voice: Voice, gain: number): PlacedSound[] {
  const placed = ticks.flatMap(({ at, say }) => {
    const word = say === null ? undefined : voice.words.get(say)
    if (say === null || word === undefined) return []
    const samples = wordAt(word, voice.sampleRate, time.sampleRate)
    const onset = (word.onset * time.sampleRate) / voice.sampleRate
    return { start: Math.round(sampleAt(time, at) - onset), samples, length: samples.length, gain, fade: 0 }
  })
  return takingTurns(
    placed.sort((a, b) => a.start - b.start),
    time,
  )
}

/**
 * The sounds of a round and where they lie: a click begins with its beat, a word's onset falls on it. A word that the voice
 * does not have is not said.
 * @throws RangeError when a tick lies outside the round or a gain outside 0 to 1
 */
export function soundsOf(
  ticks: readonly Tick[],
  time: RoundTime,
  voice: Voice | null,
  gains: Gains = FIRST_GAINS,
): PlacedSound[] {
  const outside = ticks.find(({ at }) => !(at >= 0 && at < time.beats))
  if (outside !== undefined) throw new RangeError(`a tick must be in [0, ${time.beats}) beats, got ${outside.at}`)
  if (!isGain(gains.clicks) || !isGain(gains.words))
    throw new RangeError(`gains must be in [0, 1], got ${gains.clicks} and ${gains.words}`)
  return [...clicksOf(ticks, time, gains.clicks), ...(voice === null ? [] : wordsOf(ticks, time, voice, gains.words))]
}
