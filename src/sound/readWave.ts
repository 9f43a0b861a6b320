/** Mono samples from −1 to below 1, and how many of them make a second. */
export type Wave = { readonly sampleRate: number; readonly samples: Float32Array }

/** Samples a second that a browser plays for certain (Web Audio API, AudioBuffer: 8,000 to 96,000). */
const RATES = [8_000, 96_000] as const
const FULL_SCALE = 32_768
/** "RIFF", a size, "WAVE". */
const HEAD = 12
/** The name and size of a chunk. */
const CHUNK_HEAD = 8
/** The shortest `fmt ` chunk. */
const FORMAT = 16

type Chunk = { readonly at: number; readonly size: number }

/**
 * A WAVE file of one channel in 16-bit PCM: RIFF, `fmt ` and `data` as in "Multimedia Programming Interface and Data
 * Specifications 1.0" (IBM and Microsoft, 1991); any other chunk is passed over.
 * @param problems what is wrong is added here, all of it that can be told
 * @returns null when there is anything wrong
 */
export function readWave(bytes: Uint8Array, problems: string[]): Wave | null {
  const before = problems.length
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const name = (at: number) => String.fromCharCode(...bytes.subarray(at, at + 4))
  if (bytes.length < HEAD || name(0) !== 'RIFF' || name(8) !== 'WAVE') {
    problems.push('the sound is no WAVE file')
    return null
  }
  const promised = view.getUint32(4, true) + 8
  if (promised !== bytes.length) problems.push(`the sound says ${promised} bytes and has ${bytes.length}`)

  const chunks = new Map<string, Chunk>()
  for (let at = HEAD; at + CHUNK_HEAD <= bytes.length; ) {
    const size = view.getUint32(at + 4, true)
    const rest = bytes.length - at - CHUNK_HEAD
    if (size > rest) problems.push(`the sound's chunk "${name(at)}" says ${size} bytes and has ${rest}`)
    if (chunks.has(name(at))) problems.push(`the sound has its chunk "${name(at)}" twice`)
    chunks.set(name(at), { at: at + CHUNK_HEAD, size: Math.min(size, rest) })
    // A chunk of odd length is followed by an empty byte.
    at += CHUNK_HEAD + size + (size % 2)
  }

  const format = chunks.get('fmt ')
  const data = chunks.get('data')
  const sampleRate = format === undefined ? null : readFormat(view, format, problems)
  if (format === undefined) problems.push('the sound has no chunk "fmt "')
  if (data === undefined) problems.push('the sound has no chunk "data"')
  else if (data.size === 0 || data.size % 2 !== 0) problems.push(`${data.size} bytes are no whole 16-bit samples`)
  if (sampleRate === null || data === undefined || problems.length > before) return null
  const samples = new Float32Array(data.size / 2)
  for (let at = 0; at < samples.length; at++) samples[at] = view.getInt16(data.at + 2 * at, true) / FULL_SCALE
  return { sampleRate, samples }
}

/** The sample rate; null when the chunk is too short to hold one. */
function readFormat(view: DataView, { at, size }: Chunk, problems: string[]): number | null {
  if (size < FORMAT) {
    problems.push(`the sound's chunk "fmt " has ${size} bytes, not ${FORMAT}`)
    return null
  }
  const sampleRate = view.getUint32(at + 4, true)
  const wanted = [
    ['format', view.getUint16(at, true), 1],
    ['channels', view.getUint16(at + 2, true), 1],
    ['bits a sample', view.getUint16(at + 14, true), 16],
    ['bytes a frame', view.getUint16(at + 12, true), 2],
    ['bytes a second', view.getUint32(at + 8, true), 2 * sampleRate],
  ] as const
  for (const [what, is, must] of wanted) {
    if (is !== must) problems.push(`the sound's ${what}: ${is}, not ${must}`)
  }
  if (sampleRate < RATES[0] || sampleRate > RATES[1]) {
    problems.push(`the sound has ${sampleRate} samples a second, not ${RATES[0]} to ${RATES[1]}`)
  }
  return sampleRate
}
