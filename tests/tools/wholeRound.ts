import { chunksOf } from '../../src/sound/chunksOf.ts'
import { fitsOneBuffer, type Round, renderRound } from '../../src/sound/renderRound.ts'
import type { AskedRound } from '../../src/sound/roundTime.ts'
import type { Gains } from '../../src/sound/soundsOf.ts'
import type { Tick } from '../../src/sound/tick.ts'
import type { Voice } from '../../src/sound/voice.ts'

/** The samples of a round of any length, as they are played: in one buffer, or in chunks one after the other. */
export function wholeRound(
  ticks: readonly Tick[],
  asked: AskedRound & { readonly beatsPerBar: number },
  voice: Voice | null = null,
  gains?: Gains,
): Round {
  if (fitsOneBuffer(asked)) return renderRound(ticks, asked, voice, gains)
  const { starts, length, sampleRate, secondsPerBeat, samplesOf } = chunksOf(ticks, asked, voice, gains)
  const samples = new Float32Array(length)
  for (const [k, start] of starts.entries()) samples.set(samplesOf(k), start)
  return { samples, sampleRate, secondsPerBeat }
}
