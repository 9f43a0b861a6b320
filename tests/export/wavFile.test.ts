import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import wavefile from 'wavefile'
import { wavFile } from '../../src/export/wavFile.ts'

const { WaveFile } = wavefile

const roundOf = (samples: ArrayLike<number>, sampleRate = 48_000) => ({
  samples: Float32Array.from(samples),
  sampleRate,
  secondsPerBeat: samples.length / sampleRate,
})

/** The file's 16-bit samples and format, as an independent reader (npm wavefile 11.0.0, MIT) sees them. */
function readBack(bytes: Uint8Array) {
  const wav = new WaveFile(bytes)
  const { numChannels, sampleRate, bitsPerSample, audioFormat } = wav.fmt as Record<string, number>
  const samples = wav.getSamples(false, Int16Array) as unknown as Int16Array
  return { container: wav.container, audioFormat, numChannels, sampleRate, bitsPerSample, samples }
}

describe('wavFile(round, rounds)', () => {
  // The format's field order: the header of a PCM file printed in flacon's tests (tests/data/CD.wav.hdr), there in stereo;
  // the sizes and samples worked out by hand.
  test('has the 44 bytes of a PCM header, every size in its place', () => {
    const file = wavFile(roundOf([0, 0.5, -1], 44_100), 1)
    expect(Buffer.from(file).toString('hex').toUpperCase().match(/../g)?.join(' ')).toBe(
      [
        '52 49 46 46 2A 00 00 00 57 41 56 45', // RIFF, 50 − 8 bytes, WAVE
        '66 6D 74 20 10 00 00 00 01 00 01 00', // fmt, 16 bytes, PCM, one channel
        '44 AC 00 00 88 58 01 00 02 00 10 00', // 44,100 a second, 88,200 bytes a second, 2 bytes, 16 bits
        '64 61 74 61 06 00 00 00', // data, 6 bytes
        '00 00 00 40 00 80',
      ].join(' '),
    )
  })

  test('an independent reader finds n rounds of the same samples, each within half a step (full scale: within one)', () => {
    fc.assert(
      fc.property(
        fc.float32Array({ min: -1, max: 1, noNaN: true, minLength: 1, maxLength: 200 }),
        fc.integer({ min: 1, max: 9 }),
        fc.constantFrom(8000, 44_100, 48_000, 192_000),
        (samples, rounds, sampleRate) => {
          const { samples: read, ...format } = readBack(wavFile(roundOf(samples, sampleRate), rounds))
          expect(format).toEqual({ container: 'RIFF', audioFormat: 1, numChannels: 1, sampleRate, bitsPerSample: 16 })
          expect(read.length).toBe(samples.length * rounds)
          for (const [index, value] of read.entries()) {
            const sample = samples[index % samples.length]!
            const step = sample > 1 - 0.5 / 32_768 ? 1 : 0.5
            expect(Math.abs(value / 32_768 - sample) * 32_768).toBeLessThanOrEqual(step)
          }
        },
      ),
      { seed: 20261125, numRuns: 200 },
    )
  })

  test('10 s at 48,000, three times: the last round is the first one, sample for sample', () => {
    const length = 48_000 * 10
    const round = roundOf({ length })
    for (let index = 0; index < length; index++) round.samples[index] = Math.sin(index * 0.1) * Math.sin(index * 1e-4)
    const { samples } = readBack(wavFile(round, 3))
    expect(samples.length).toBe(3 * length)
    const first = Buffer.from(samples.slice(0, length).buffer)
    expect(Buffer.compare(first, Buffer.from(samples.slice(2 * length).buffer))).toBe(0)
    expect(new Set(samples.subarray(0, 1000)).size).toBeGreaterThan(500)
  })

  test('what is too loud is held at the end of the range, never wrapped round; what is no number is silent', () => {
    const { samples } = readBack(wavFile(roundOf([1, 1.5, 1e30, Infinity, -1, -1.5, -Infinity, NaN]), 1))
    expect([...samples]).toEqual([32_767, 32_767, 32_767, 32_767, -32_768, -32_768, -32_768, 0])
  })

  test('rounds to the nearest step', () => {
    const steps = [0.4, 0.6, 1.4, 1.6, -0.4, -0.6, -1.4, -1.6]
    const { samples } = readBack(wavFile(roundOf(steps.map((step) => step / 32_768)), 1))
    expect([...samples]).toEqual([0, 1, 1, 2, 0, -1, -1, -2])
  })

  test('the same round gives the same bytes: there is no dither', () => {
    const round = roundOf([0.1, 1e-6, -0.3])
    expect(wavFile(round, 3)).toEqual(wavFile(round, 3))
  })

  test('more than 2^31 bytes are refused with their number, before any memory is taken', () => {
    const rounds = (2 ** 31 - 44) / 2 + 1
    expect(() => wavFile(roundOf([0]), rounds)).toThrow(RangeError)
    expect(() => wavFile(roundOf([0]), rounds)).toThrow(/2147483648 bytes.*2147483650/)
  })

  test.each([0, -1, 1.5, NaN, Infinity])('%s rounds are refused', (rounds) => {
    expect(() => wavFile(roundOf([0]), rounds)).toThrow(RangeError)
  })
  test.each([0, 44_100.5, NaN, 2 ** 31])('a sample rate of %s is refused', (sampleRate) => {
    expect(() => wavFile(roundOf([0], sampleRate), 1)).toThrow(RangeError)
  })
})
