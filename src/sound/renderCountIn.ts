import { mixed } from './mixed.ts'
import { type AskedRound, roundTime } from './roundTime.ts'
import { type PlacedSound, soundsOf } from './soundsOf.ts'
import type { Tick } from './tick.ts'
import type { Voice } from './voice.ts'

/** A sound that has not ended when the round begins makes room for it in this time, in seconds. */
const FADE = 0.008
/** Longer than anything: what is counted in comes once and does not go round. In samples. */
const FOR_EVER = 2 ** 40

/** Ends with the round's start: from there on the round has its own sounds. */
function cut(sound: PlacedSound, end: number, sampleRate: number): PlacedSound {
  const length = Math.min(sound.length, end - sound.start)
  return length === sound.length ? sound : { ...sound, length, fade: Math.round(FADE * sampleRate) }
}

/**
 * What is heard before the round begins, as samples: they end where the round's begin, to the sample. Of a word that is said
 * on the round's first beat, what comes before that beat is in them.
 * @param ticks in beats from where counting in begins
 * @param beats that are counted in; 0 or more
 * @param round what the round is made of: its ticks, in beats from its start, and its time
 * @param lead samples before the first beat, at least; some sounds begin before their beat
 * @throws RangeError when a tick lies outside, or the round cannot be
 */
export function renderCountIn(
  ticks: readonly Tick[],
  beats: number,
  round: { readonly ticks: readonly Tick[]; readonly asked: AskedRound },
  lead: number,
  voice: Voice | null,
): Float32Array {
  const { secondsPerBeat, sampleRate, beats: length } = roundTime(round.asked)
  const samplesPerBeat = secondsPerBeat * sampleRate
  const end = Math.ceil(beats * samplesPerBeat) + lead
  // The round's start lies on a whole sample, and so its sounds as they do in the round.
  const start = end / samplesPerBeat
  const before = ticks.map((tick) => ({ ...tick, at: start - beats + tick.at }))
  const after = round.ticks.map((tick) => ({ ...tick, at: start + tick.at }))
  const all = start + length + 1
  const time = { beats: all, sampleRate, length: all * samplesPerBeat, secondsPerBeat }
  // Of the round only what reaches back is heard; it goes on there.
  const goingOn = new Set(soundsOf(after, time, voice).map((sound) => sound.start))
  const sounds = soundsOf([...before, ...after], time, voice).filter((sound) => sound.start < end)
  const heard = sounds.map((sound) => (goingOn.has(sound.start) ? sound : cut(sound, end, sampleRate)))
  return mixed(heard, FOR_EVER, 0, end)
}
