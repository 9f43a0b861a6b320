import { readVoice } from '../sound/readVoice.ts'
import type { Voice } from '../sound/voice.ts'

/** Relative: the built folder works under any path. One folder a language. */
const FOLDER = 'voice/en/'

let loading: Promise<Voice> | null = null

async function fetched(name: string): Promise<Response> {
  const response = await fetch(`${FOLDER}${name}`)
  if (!response.ok) throw new Error(`${name}: ${response.status}`)
  return response
}

async function load(): Promise<Voice> {
  const [bytes, json] = await Promise.all([
    fetched('words.wav').then((response) => response.arrayBuffer()),
    fetched('words.json').then((response) => response.text()),
  ])
  return readVoice(new Uint8Array(bytes), json)
}

/**
 * The spoken count, fetched once; asked for again after a failure.
 * @throws (rejects) without a network, or when the files are damaged
 */
export function loadVoice(): Promise<Voice> {
  loading ??= load().catch((reason: unknown) => {
    loading = null
    throw reason
  })
  return loading
}
