import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { chunksOf } from '../../src/sound/chunksOf.ts'
import { readVoice } from '../../src/sound/readVoice.ts'
import { renderRound } from '../../src/sound/renderRound.ts'
import type { Tick } from '../../src/sound/tick.ts'
import type { Check } from './check.mjs'
import { blockRatios, interleaved } from './interleaved.mjs'
import { median } from './median.mjs'

const BLOCKS = 25
const RATE = 48_000
/** A foxtrot at full tempo (30 bars of four a minute). */
const ASKED = { secondsPerBeat: 0.5, sampleRate: RATE, beatsPerBar: 4 }
const NUMBERS = ['one', 'two', 'three', 'four'] as const

/** Everything at once: clicks on beats and halves, and a word with each. */
const ticksOf = (beats: number): Tick[] =>
  Array.from({ length: 2 * beats }, (_, k) => ({
    at: k / 2,
    click: k % 8 === 0 ? 'bar' : k % 2 === 0 ? 'beat' : 'half',
    say: k % 2 === 0 ? (NUMBERS[(k / 2) % 4] ?? null) : 'and',
  }))

/** The least that makes so many samples: each is one sound's, turned down, and held in bounds. */
function plainly(length: number, own: Float32Array): Float32Array {
  const samples = new Float32Array(length)
  for (let k = 0; k < length; k++) {
    const sample = 0.5 * (own[k % own.length] ?? 0)
    if (sample > 1 || sample < -1) samples[k] = Math.sign(sample)
    else samples[k] = sample
  }
  return samples
}

/**
 * What a change of tempo costs until something sounds at the new one: the first chunk of 64 bars, and a whole looping buffer
 * of 30 s, each against a plain loop over the same number of samples.
 * @param repository where the voice lies
 */
export function soundCost(repository: string): Check[] {
  const folder = join(repository, 'public/voice/en')
  const voice = readVoice(readFileSync(join(folder, 'words.wav')), readFileSync(join(folder, 'words.json'), 'utf8'))
  const own = voice.words.get('one')?.samples ?? new Float32Array(1)
  const [long, short] = [ticksOf(256), ticksOf(60)]
  const first = (): Float32Array => chunksOf(long, { ...ASKED, beats: 256 }, voice).samplesOf(0)
  const whole = (): Float32Array => renderRound(short, { ...ASKED, beats: 60 }, voice).samples
  let kept: Float32Array = first()
  const [chunkLength, wholeLength] = [kept.length, whole().length]
  const ways = [first, () => plainly(chunkLength, own), whole, () => plainly(wholeLength, own)].map((way) => () => {
    kept = way()
  })
  const [chunkMs = [], chunkPlain = [], wholeMs = [], wholePlain = []] = interleaved(ways, BLOCKS)
  if (kept.length !== wholeLength) throw new Error('nothing was made')
  const check = (name: string, ours: readonly number[], plain: readonly number[]): Check => ({
    ...{ name, measured: median(blockRatios(ours, plain)), limit: 6, bound: 'at most' },
    samples: {
      'ours, ms': ours,
      'plain loop, ms': plain,
      'ours, median ms': median(ours),
      'plain loop, median ms': median(plain),
    },
  })
  return [
    check('a change of tempo, 64 bars: the first chunk to a plain loop', chunkMs, chunkPlain),
    check('a looping buffer of 30 s to a plain loop', wholeMs, wholePlain),
  ]
}
