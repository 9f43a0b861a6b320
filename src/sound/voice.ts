/** What can be said in a count: every voice has all of these, in its own language. */
export const VOICE_KEYS = [
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'and',
  'a',
  'slow',
  'quick',
] as const

/** A short spoken sample. */
export type SpokenWord = {
  /** Mono, −1 to 1. */
  readonly samples: Float32Array
  /**
   * Samples from the start to where the word is perceived to begin: the half-height of the first rise of its envelope,
   * rectified and averaged over 20 ms. This is what goes on the beat, for a listener hears a word begin near its vowel.
   */
  readonly onset: number
}

/** Short spoken samples by key (`VOICE_KEYS`). */
export type Voice = {
  /** Samples a second. */
  readonly sampleRate: number
  readonly words: ReadonlyMap<string, SpokenWord>
}
