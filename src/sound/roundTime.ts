/** A round that is to be made into samples. */
export type AskedRound = {
  /** Its length; above 0. */
  readonly beats: number
  /** Above 0. */
  readonly secondsPerBeat: number
  /** In hertz. */
  readonly sampleRate: number
}

/** How a round lies in samples. Loop length and beat come from one whole number, so that nothing drifts. */
export type RoundTime = {
  readonly beats: number
  readonly sampleRate: number
  /** Samples in the round: a whole number, within ½ of what was asked for. */
  readonly length: number
  /** What a beat lasts, exactly. */
  readonly secondsPerBeat: number
}

/** @throws RangeError unless all three are finite and above 0, and the round has a sample at least */
export function roundTime({ beats, secondsPerBeat, sampleRate }: AskedRound): RoundTime {
  for (const [name, value] of Object.entries({ beats, secondsPerBeat, sampleRate }))
    if (!(value > 0 && Number.isFinite(value)))
      throw new RangeError(`${name} must be a finite number above 0, got ${value}`)
  const length = Math.round(beats * secondsPerBeat * sampleRate)
  if (length < 1) throw new RangeError(`a round of ${beats} beats is shorter than a sample`)
  return { beats, sampleRate, length, secondsPerBeat: length / sampleRate / beats }
}

/** Where a time lies, in samples from the round's start; not rounded. @param at in beats from the round's start */
export const sampleAt = ({ length, beats }: RoundTime, at: number): number => (at / beats) * length
