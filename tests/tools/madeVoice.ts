import { VOICE_KEYS, type Voice } from '../../src/sound/voice.ts'

type Made = {
  readonly sampleRate?: number
  /** Samples in each word. */
  readonly length?: number
  readonly onset?: number
  /** A sample of a word. */
  readonly sample?: (k: number, length: number) => number
}

/** A voice made for a test, every word alike: a swelling and falling hum unless told otherwise. */
export function madeVoice({
  sampleRate = 24_000,
  length = 7200,
  onset = 1200,
  sample = (k, all) => 0.5 * Math.sin((Math.PI * k) / (all - 1)) * Math.sin(k / 20),
}: Made = {}): Voice {
  const samples = Float32Array.from({ length }, (_, k) => sample(k, length))
  return { sampleRate, words: new Map(VOICE_KEYS.map((key) => [key, { samples, onset }])) }
}
