import { readWave } from './readWave.ts'
import { type SpokenWord, VOICE_KEYS, type Voice } from './voice.ts'

/** Where a word lies in the sound, in samples. */
type Place = { readonly start: number; readonly length: number; readonly onset: number }

type Table = Readonly<Record<string, unknown>>

const isTable = (value: unknown): value is Table => typeof value === 'object' && value !== null && !Array.isArray(value)

const isKey = (key: string): boolean => VOICE_KEYS.some((known) => known === key)

/**
 * A voice from its two files.
 * @param bytes `words.wav`: one channel, 16-bit PCM, all words one after the other
 * @param json `words.json`: `{ "madeWith": text, "words": { key: { "start", "length", "onset" } } }`, samples; `onset` is
 * counted from the word's own start
 * @throws {RangeError} with everything that is wrong, one to a line
 */
export function readVoice(bytes: Uint8Array, json: string): Voice {
  const problems: string[] = []
  const wave = readWave(bytes, problems)
  const places = readPlaces(json, problems)
  const total = wave?.samples.length ?? Number.POSITIVE_INFINITY
  for (const [key, { start, length }] of places) {
    if (start + length > total) problems.push(`"${key}" ends at sample ${start + length} of ${total}`)
  }
  const inOrder = [...places].sort(([, a], [, b]) => a.start - b.start)
  for (const [at, [key, { start }]] of inOrder.entries()) {
    const [earlier, place] = inOrder[at - 1] ?? []
    if (place !== undefined && place.start + place.length > start) problems.push(`"${earlier}" runs into "${key}"`)
  }
  if (wave === null || problems.length > 0) throw new RangeError(problems.join('\n'))
  const words = new Map<string, SpokenWord>()
  for (const [key, { start, length, onset }] of places) {
    words.set(key, { samples: wave.samples.subarray(start, start + length), onset })
  }
  return { sampleRate: wave.sampleRate, words }
}

/** Only the places that are sound in themselves. */
function readPlaces(json: string, problems: string[]): ReadonlyMap<string, Place> {
  const places = new Map<string, Place>()
  let root: unknown
  try {
    root = JSON.parse(json)
  } catch (error) {
    problems.push(`the list of words is no JSON: ${error instanceof Error ? error.message : error}`)
    return places
  }
  if (!isTable(root)) {
    problems.push('the list of words is no object')
    return places
  }
  for (const key of Object.keys(root)) {
    if (key !== 'madeWith' && key !== 'words') problems.push(`the list of words has an unknown key "${key}"`)
  }
  if (typeof root.madeWith !== 'string' || root.madeWith === '') problems.push('"madeWith" is no text')
  if (!isTable(root.words)) {
    problems.push('"words" is no object')
    return places
  }
  for (const key of VOICE_KEYS) {
    if (!Object.hasOwn(root.words, key)) problems.push(`"${key}" is missing`)
  }
  for (const [key, value] of Object.entries(root.words)) {
    const place = isKey(key) ? readPlace(key, value, problems) : null
    if (!isKey(key)) problems.push(`"${key}" is no word of a count`)
    if (place !== null) places.set(key, place)
  }
  return places
}

function readPlace(key: string, value: unknown, problems: string[]): Place | null {
  if (!isTable(value)) {
    problems.push(`"${key}" is no object`)
    return null
  }
  const before = problems.length
  const whole = (name: keyof Place, least: number): number => {
    const found = value[name]
    if (typeof found === 'number' && Number.isSafeInteger(found) && found >= least) return found
    problems.push(`"${key}": "${name}" is ${JSON.stringify(found) ?? 'missing'}, not a whole number from ${least}`)
    return Number.NaN
  }
  const place = { start: whole('start', 0), length: whole('length', 1), onset: whole('onset', 0) }
  for (const name of Object.keys(value)) {
    if (!Object.hasOwn(place, name)) problems.push(`"${key}" has an unknown key "${name}"`)
  }
  if (place.onset >= place.length)
    problems.push(`"${key}": "onset" ${place.onset} is not below "length" ${place.length}`)
  return problems.length > before ? null : place
}
