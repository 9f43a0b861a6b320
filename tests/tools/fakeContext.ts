import type { SoundContext } from '../../src/sound/speaker.ts'
import { type FakeParam, fakeParam } from './fakeParam.ts'

/** A buffer that was asked to sound; times in samples of the device. */
type Played = {
  readonly buffer: AudioBuffer
  /** Its first sample: browsers begin at a whole one. */
  readonly begins: number
  /** The sample of the buffer that sounds then. */
  readonly into: number
  readonly loops: boolean
  /** The sample before which it ends; of what ends before it begins nothing sounds. */
  ends: number
  readonly gain: FakeParam
  /** Tells who asked for it that it has ended; null: told. */
  ended: (() => void) | null
}

/** How a device answers when it is asked to go on; 'stands': it says that it runs, and its clock does not move. */
type Resuming = 'settles' | 'never' | 'rejects' | 'stands'
/** What it says of its output; 'old': for ever what was true when this was set. */
type Stamps = 'exact' | 'zeros' | 'undefined' | 'not a number' | 'old'

/** A device, and what can be done to it from outside. */
export type FakeContext = {
  readonly context: SoundContext
  readonly sampleRate: number
  readonly played: readonly Played[]
  /** Seconds of sound that it has made, not in steps. */
  readonly time: number
  /** How often it was asked to go on. */
  readonly resumes: number
  readonly state: string
  /** Its clock stands whatever the state is, and nothing sounds. */
  frozen: boolean
  /** Seconds between sample and ear. */
  latency: number
  /** What it says of them. */
  says: number | undefined
  stamps: Stamps
  resuming: Resuming
  /** How much faster its clock goes than the page's, as a part. */
  drift: number
  /** Called whenever a buffer is made: for a page that needs its time. */
  making: () => void
  /** Called whenever something is about to be started: for a page that is held up just then. */
  starting: () => void
  /** A telephone call: it cannot go on. */
  called: boolean
  set(state: string): void
  pass(by: number): void
  /** What comes out of it, from one of its samples to before another. */
  mix(from: number, to: number): Float32Array
  /** Bytes of buffers that sound or are going to. */
  bytes(): number
}

const BLOCK = 128

/** A buffer's sample at a place between two, round its end where it loops. */
function sampleAt(samples: Float32Array, place: number, loops: boolean): number {
  const low = Math.floor(place)
  const at = (k: number): number => samples[loops ? k % samples.length : k] ?? 0
  return low === place ? at(low) : at(low) + (at(low + 1) - at(low)) * (place - low)
}

/**
 * A sound device without sound: its clock moves in blocks of 128 samples, it writes down what it is to play, and works out
 * afterwards what came out of it. Promises are kept when time passes.
 * @param page the page's clock, seconds
 */
export function fakeContext(page: () => number, sampleRate: number, first: string): FakeContext {
  let time = 0
  let resumes = 0
  let state = first
  let told = { contextTime: 0, performanceTime: 0 }
  const waiting: (() => void)[] = []
  const listeners = new Set<() => void>()
  const played: Played[] = []
  const stepped = (): number => (Math.floor((time * sampleRate) / BLOCK + 1e-9) * BLOCK) / sampleRate
  const sample = (seconds: number): number => Math.round(seconds * sampleRate)
  const outputs: FakeParam[] = []
  const destination = {}

  const createGain = () => {
    const gain = fakeParam(stepped)
    const connect = (target: unknown): void => {
      if (target === destination) outputs.push(gain)
    }
    const disconnect = (): void => {
      for (const one of played) if (one.gain === gain) one.ends = Math.min(one.ends, sample(stepped()))
    }
    return { gain, connect, disconnect }
  }

  const createBufferSource = () => {
    let gain: FakeParam | null = null
    let own: Played | null = null
    const node = {
      buffer: null as AudioBuffer | null,
      loop: false,
      onended: null as (() => void) | null,
      connect(target: { gain: FakeParam }) {
        gain = target.gain
      },
      start(when: number, offset: number) {
        const { buffer, loop } = node
        if (buffer === null || gain === null || own !== null || !(offset >= 0) || !(when >= 0))
          throw new RangeError(`start(${when}, ${offset}) cannot be`)
        fake.starting()
        const begins = sample(Math.max(when, stepped()))
        const into = Math.round(offset * buffer.sampleRate)
        const lasts = Math.round(((buffer.length - into) * sampleRate) / buffer.sampleRate)
        const ends = loop ? Number.POSITIVE_INFINITY : begins + lasts
        own = { buffer, begins, into, loops: loop, ends, gain, ended: () => node.onended?.() }
        played.push(own)
      },
      // The last word counts, as long as it sounds; by itself it ends with its buffer.
      stop(when: number) {
        if (own === null) throw new Error('stopped before it was started')
        const { buffer, begins, into, loops } = own
        const lasts = loops ? Number.POSITIVE_INFINITY : ((buffer.length - into) * sampleRate) / buffer.sampleRate
        if (own.ended !== null) own.ends = Math.min(begins + Math.round(lasts), sample(Math.max(when, stepped())))
      },
    }
    return node
  }

  const createBuffer = (_channels: number, length: number, rate: number) => {
    fake.making()
    const samples = new Float32Array(length)
    return { length, sampleRate: rate, duration: length / rate, getChannelData: () => samples }
  }

  const set = (next: string): void => {
    if (state === next) return
    state = next
    for (const listener of [...listeners]) listener()
  }

  const context = {
    get state() {
      return state
    },
    get currentTime() {
      return stepped()
    },
    get outputLatency() {
      return fake.says
    },
    destination,
    getOutputTimestamp() {
      if (fake.stamps === 'zeros') return { contextTime: 0, performanceTime: 0 }
      if (fake.stamps === 'undefined') return {}
      if (fake.stamps === 'not a number') return { contextTime: Number.NaN, performanceTime: Number.NaN }
      if (fake.stamps === 'exact' && !fake.frozen && state === 'running')
        told = { contextTime: Math.max(0, time - fake.latency), performanceTime: page() * 1000 }
      return told
    },
    resume() {
      resumes++
      return new Promise<void>((settle, refuse) => {
        if (fake.resuming === 'rejects' || state === 'closed') refuse(new Error('not now'))
        else if (fake.resuming !== 'never')
          waiting.push(() => {
            if (fake.called || state === 'closed') return
            if (fake.resuming === 'stands') fake.frozen = true
            set('running')
            settle()
          })
      })
    },
    close() {
      if (state === 'closed') return Promise.reject(new Error('closed already'))
      for (const one of played) one.ends = Math.min(one.ends, sample(time))
      set('closed')
      return Promise.resolve()
    },
    createBuffer,
    createBufferSource,
    createGain,
    addEventListener: (_name: string, listener: () => void) => listeners.add(listener),
    removeEventListener: (_name: string, listener: () => void) => listeners.delete(listener),
  }

  const fake: FakeContext = {
    context: context as unknown as SoundContext,
    sampleRate,
    played,
    get time() {
      return time
    },
    get resumes() {
      return resumes
    },
    get state() {
      return state
    },
    ...{ frozen: false, latency: 0.04, says: undefined, stamps: 'exact', resuming: 'settles', drift: 0, called: false },
    making() {},
    starting() {},
    set,
    pass(by) {
      for (const settle of waiting.splice(0)) settle()
      if (state !== 'running' || fake.frozen) return
      time += by * (1 + fake.drift)
      const now = stepped() * sampleRate
      for (const one of played) {
        if (one.ended === null || one.ends > now) continue
        one.ended()
        one.ended = null
      }
    },
    mix(from, to) {
      const mixed = new Float32Array(to - from)
      const out = outputs[0] ?? fakeParam(stepped)
      for (const { buffer, begins, into, loops, ends, gain } of played) {
        const samples = buffer.getChannelData(0)
        const rate = buffer.sampleRate / sampleRate
        const [first, end] = [Math.max(from, begins), Math.min(to, ends)]
        for (let block = first; block < end; block += BLOCK) {
          const next = Math.min(end, block + BLOCK)
          const [t0, t1] = [block / sampleRate, next / sampleRate]
          const steady = gain.isSteady(t0, t1) && out.isSteady(t0, t1) ? gain.at(t0) * out.at(t0) : null
          for (let k = block; k < next; k++) {
            const loud = steady ?? gain.at(k / sampleRate) * out.at(k / sampleRate)
            mixed[k - from] = (mixed[k - from] ?? 0) + loud * sampleAt(samples, into + (k - begins) * rate, loops)
          }
        }
      }
      return mixed
    },
    bytes() {
      const now = stepped() * sampleRate
      const alive = played.filter(({ begins, ends }) => ends > Math.max(now, begins)).map(({ buffer }) => buffer)
      return [...new Set(alive)].reduce((sum, { length }) => sum + length * Float32Array.BYTES_PER_ELEMENT, 0)
    },
  }
  return fake
}
