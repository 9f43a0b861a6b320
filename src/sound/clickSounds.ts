import type { Tick } from './tick.ts'

export type ClickKind = NonNullable<Tick['click']>

type Click = {
  readonly hertz: number
  /** Its largest sample. */
  readonly peak: number
  readonly seconds: number
}

/**
 * The three clicks at full setting. Own judgement: between 0.8 and 2 kHz, where small speakers still carry and nothing is
 * shrill; a fifth and a fourth apart; each about 5 dB below the one before. The loudest peaks at −12 dBFS: a page cannot
 * know how loud it is at the ear, so it starts quiet (WHO-ITU H.870 is about the level there).
 */
const CLICKS: Readonly<Record<ClickKind, Click>> = {
  bar: { hertz: 1760, peak: 0.25, seconds: 0.06 },
  beat: { hertz: 1174.66, peak: 0.14, seconds: 0.05 },
  half: { hertz: 880, peak: 0.08, seconds: 0.04 },
}

/** From nothing to full and, at the end, back: a jump would be heard as a snap. In seconds. */
const ATTACK = 0.0025
const RELEASE = 0.008
/** A click falls to 1/e in this part of its length: like a struck block. */
const DECAY = 0.3
/** Below this the highest click has no room. In hertz; browsers offer 8 kHz and more. */
const LOWEST_RATE = 8000

/** 0 at 0 and below, 1 at 1 and above, with no corner between. */
const rise = (x: number): number => Math.sin((Math.PI / 2) * Math.min(1, Math.max(0, x))) ** 2

function clickSound({ hertz, peak, seconds }: Click, sampleRate: number): Float32Array {
  const samples = new Float32Array(Math.round(seconds * sampleRate))
  let loudest = 0
  for (let k = 0; k < samples.length; k++) {
    const time = k / sampleRate
    const left = (samples.length - 1 - k) / sampleRate
    const envelope = rise(time / ATTACK) * Math.exp(-time / (DECAY * seconds)) * rise(left / RELEASE)
    samples[k] = envelope * Math.sin(2 * Math.PI * hertz * time)
    loudest = Math.max(loudest, Math.abs(samples[k] ?? 0))
  }
  return samples.map((sample) => (sample / loudest) * peak)
}

/**
 * The three clicks as samples. Each begins with its beat and begins and ends with a sample of 0.
 * @param sampleRate in hertz
 * @throws RangeError unless the rate is finite and at least 8,000
 */
export function clickSounds(sampleRate: number): Readonly<Record<ClickKind, Float32Array>> {
  if (!(sampleRate >= LOWEST_RATE && Number.isFinite(sampleRate)))
    throw new RangeError(`a sample rate must be at least ${LOWEST_RATE} Hz, got ${sampleRate}`)
  return {
    bar: clickSound(CLICKS.bar, sampleRate),
    beat: clickSound(CLICKS.beat, sampleRate),
    half: clickSound(CLICKS.half, sampleRate),
  }
}
