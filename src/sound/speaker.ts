import type { SoundTime } from '../clock/soundingDriver.ts'
import { type HeardTime, heardTime } from './heardTime.ts'
import { type StillWatch, stillWatch } from './stillWatch.ts'

/** As much of an AudioContext as is used; a test brings its own. */
export type SoundContext = Pick<
  AudioContext,
  | 'state'
  | 'currentTime'
  | 'destination'
  | 'outputLatency'
  | 'getOutputTimestamp'
  | 'resume'
  | 'close'
  | 'createBuffer'
  | 'createBufferSource'
  | 'createGain'
  | 'addEventListener'
  | 'removeEventListener'
>

/**
 * off: nobody wants sound. sounding: it is heard. waiting: it is wanted and not heard (before a press, in a telephone call,
 * or the device stands); a press may help. missing: this browser has none.
 */
export type SoundState = 'off' | 'waiting' | 'sounding' | 'missing'

/** Something that is to sound. */
export type Sounding = {
  readonly buffer: AudioBuffer
  /** The sound's time at which it begins: it is heard when `heardAt` comes to it. */
  readonly when: number
  /** The second of it that sounds then. */
  readonly into: number
  /** Over and over; or once. */
  readonly loops: boolean
  /** Seconds at its beginning that are not heard; left out: none. */
  readonly quiet?: number
}

export type Speaker = SoundTime & {
  readonly state: SoundState
  /** Seconds that the device reports between sample and ear; 0 where it does not say. */
  readonly reported: number
  /** Told when the state changes. Returns what stops it. */
  onState(listener: () => void): () => void
  /** Within a press, for browsers allow no other beginning: makes the device ready, or tries again. */
  wake(): void
  /** No sound any more. */
  sleep(): void
  /** Samples as the device wants them; null before it is there. Takes some milliseconds, so it comes before `earliest`. */
  prepare(samples: Float32Array, sampleRate: number): AudioBuffer | null
  /** From its beginning on this sounds, and nothing that was asked for before. */
  start(sounding: Sounding): void
  /** This sounds besides: what follows on what sounds already. */
  queue(sounding: Sounding): void
  /** Nothing sounds any more, without a snap. */
  silence(): void
  /** 0 to 1. */
  setVolume(volume: number): void
  /** Seconds that a listener has added to what the device reports (Bluetooth). */
  setOffset(offset: number): void
  /** To be called now and then (each frame will do): learns what is heard, and finds a device that stands. */
  look(): void
  close(): void
}

type Voiced = {
  readonly source: AudioBufferSourceNode
  readonly gain: GainNode
  /** The device's time from which it is heard, in seconds. */
  readonly begins: number
  /** From nothing, in `FADE`; or as it is. */
  readonly rises: boolean
  /** When it begins to give way. */
  ends: number
}

/** Seconds from asking to sounding: two blocks of samples and a little. */
const LEAD = 0.03
/** Seconds that the device needs at the least. */
const SOONEST = 0.005
/** It begins at its next block, 128 samples on, what it comes to know too late; in seconds. */
const BLOCK = 0.003
/** So often, each time with more room, a page asks that was held up between its question and its order. */
const TRIES = 6
/** Seconds in which one sound gives way to another, so that nothing snaps. */
const FADE = 0.004
/** What the device says of its output is not believed where it is so long ago, or still to come, in seconds. */
const STALE = 0.5
/** After the last sound has given way, so long until the device is closed: its last samples are still on their way. */
const CLOSE = 0.1
/** Of full: nobody is to be startled. */
const QUIET = 0.5

const onTimer = (after: number, call: () => void): (() => void) => {
  const timer = setTimeout(call, after * 1000)
  return () => clearTimeout(timer)
}

/**
 * The one place that knows Web Audio. Nothing sounds before a press; the picture never waits for it.
 * @param make a context, or null where the browser has none; called within a press
 * @param page the page's clock, seconds
 * @param later does something after so many seconds, unless it is taken back
 */
export function createSpeaker(
  make: () => SoundContext | null,
  page: () => number,
  later: (seconds: number, call: () => void) => () => void = onTimer,
): Speaker {
  let context: SoundContext | null = null
  let out: GainNode | null = null
  const playing = new Set<Voiced>()
  let heard: HeardTime | null = null
  let watch: StillWatch = stillWatch()
  let wanted = false
  let none = false
  let offset = 0
  let volume = QUIET
  let told: SoundState = 'off'
  /** Takes back that the device is closed soon; null: it is not. */
  let stay: (() => void) | null = null
  const listeners = new Set<() => void>()

  const stateNow = (): SoundState => {
    if (!wanted) return 'off'
    if (none) return 'missing'
    const runs = context !== null && context.state === 'running' && heard !== null && !watch.stands()
    return runs ? 'sounding' : 'waiting'
  }
  const tell = (): void => {
    const state = stateNow()
    if (state === told) return
    told = state
    for (const listener of listeners) listener()
  }

  /** What the device reports, where it is a number at all. */
  const reported = (): number => {
    const latency = context?.outputLatency
    return latency !== undefined && Number.isFinite(latency) && latency > 0 ? latency : 0
  }

  /** What is heard just now, by the device's own word; by its clock and latency where it says nothing that can be. */
  const learn = (): void => {
    if (context === null || context.state !== 'running') {
      // When it goes on, nothing of what was holds.
      heard = null
      watch = stillWatch()
      return
    }
    const at = page()
    watch.look(context.currentTime, at)
    const { contextTime = Number.NaN, performanceTime = 0 } = context.getOutputTimestamp()
    const said = { page: performanceTime / 1000, sound: contextTime }
    const says = performanceTime > 0 && Math.abs(said.page - at) < STALE && Number.isFinite(contextTime)
    const now = says ? said : { page: at, sound: context.currentTime - reported() }
    if (heard === null) heard = now.sound > 0 ? heardTime(now) : null
    else heard.learn(now)
  }

  const look = (): void => {
    learn()
    tell()
  }

  const drop = (): void => {
    stay?.()
    stay = null
    context?.removeEventListener('statechange', look)
    context?.close().catch(() => {})
    context = null
    out = null
    playing.clear()
    heard = null
    watch = stillWatch()
  }

  const begin = (): void => {
    try {
      context = make()
    } catch {
      context = null
    }
    none = context === null
    if (context === null) return
    out = context.createGain()
    out.gain.value = volume
    out.connect(context.destination)
    context.addEventListener('statechange', look)
  }

  const fade = (voiced: Voiced, when: number): void => {
    const { source, gain, begins, rises } = voiced
    // What gives way already is not brought back for a moment by the next change.
    if (when >= voiced.ends) return
    voiced.ends = when
    if (when <= begins) {
      source.stop(when)
      return
    }
    gain.gain.cancelScheduledValues(when)
    if (rises && when < begins + FADE) gain.gain.linearRampToValueAtTime((when - begins) / FADE, when)
    else gain.gain.setValueAtTime(1, when)
    gain.gain.linearRampToValueAtTime(0, when + FADE)
    source.stop(when + FADE)
  }

  /**
   * Lets it sound. A device that went on in the meantime would begin too late, and be late for as long as it sounds: then
   * it is asked anew. Returns the device's time at which it begins.
   */
  const sound = (
    device: SoundContext,
    into: GainNode,
    { buffer, when, into: from, loops, quiet = 0 }: Sounding,
    fades: boolean,
  ): number => {
    for (let tries = 1; ; tries++) {
      // A page that stalled asks too late: then it begins at once, and farther on.
      const begins = Math.max(when, device.currentTime + SOONEST * tries)
      const at = from + begins - when
      if (!loops && at >= buffer.duration) return begins
      const source = device.createBufferSource()
      source.buffer = buffer
      source.loop = loops
      const gain = device.createGain()
      const rises = fades || begins > when
      const heardFrom = Math.max(begins, when + quiet)
      if (rises) {
        // Before as well: browsers round the beginning to a sample.
        gain.gain.value = 0
        gain.gain.setValueAtTime(0, heardFrom)
        gain.gain.linearRampToValueAtTime(1, heardFrom + FADE)
      }
      source.connect(gain)
      gain.connect(into)
      source.start(begins, at % buffer.duration)
      if (device.currentTime + BLOCK > begins && tries < TRIES) {
        gain.disconnect()
        source.stop()
        continue
      }
      const voiced = { source, gain, begins: heardFrom, rises, ends: Number.POSITIVE_INFINITY }
      source.onended = () => {
        playing.delete(voiced)
        gain.disconnect()
      }
      playing.add(voiced)
      return begins
    }
  }

  const silence = (): void => {
    if (context === null) return
    for (const voiced of playing) fade(voiced, context.currentTime)
  }

  return {
    get state() {
      return stateNow()
    },
    get reported() {
      return reported()
    },
    onState(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    wake() {
      wanted = true
      stay?.()
      stay = null
      learn()
      // A clock that stands although the device says that it runs, or one that was closed, is of no use any more.
      if (context !== null && (context.state === 'closed' || (context.state === 'running' && watch.stands()))) drop()
      if (context === null) begin()
      if (context !== null && context.state !== 'running') context.resume().then(look, look)
      look()
    },
    sleep() {
      wanted = false
      // What sounds gives way first: a device that is closed at once snaps.
      silence()
      if (context !== null) stay ??= later(CLOSE + reported(), drop)
      tell()
    },
    prepare(samples, sampleRate) {
      if (context === null) return null
      const buffer = context.createBuffer(1, samples.length, sampleRate)
      buffer.getChannelData(0).set(samples)
      return buffer
    },
    start(sounding) {
      if (context === null || out === null) return
      const before = [...playing]
      const begins = sound(context, out, sounding, true)
      for (const voiced of before) fade(voiced, begins)
    },
    queue(sounding) {
      if (context !== null && out !== null) sound(context, out, sounding, false)
    },
    silence,
    setVolume(next) {
      volume = Math.min(1, Math.max(0, next))
      if (context !== null && out !== null) out.gain.setTargetAtTime(volume, context.currentTime, FADE)
    },
    setOffset(next) {
      offset = next
    },
    heardAt(at) {
      learn()
      return stateNow() === 'sounding' && heard !== null ? heard.at(at) - offset : null
    },
    earliest() {
      return stateNow() === 'sounding' && context !== null ? context.currentTime + LEAD : null
    },
    look,
    close() {
      drop()
      listeners.clear()
    },
  }
}
