import { createStore, type StoreApi } from 'zustand/vanilla'
import { beatAt } from './clock/clock.ts'
import type { SoundingDriver } from './clock/soundingDriver.ts'
import type { Player } from './player.ts'
import { SAMPLE_RATE } from './sound/beatLasts.ts'
import { chunksOf } from './sound/chunksOf.ts'
import { halvesBlur } from './sound/halvesBlur.ts'
import { fitsOneBuffer, renderRound } from './sound/renderRound.ts'
import type { Speaker } from './sound/speaker.ts'
import { type TickChoices, ticksOf } from './sound/ticksOf.ts'
import type { Voice } from './sound/voice.ts'
import { seconds } from './units.ts'

/** What is heard, as people set it. Nobody's link or figure switches sound on. */
export type SoundChoices = {
  readonly on: boolean
  /** 0 to 1. */
  readonly volume: number
  readonly bar: boolean
  readonly beats: boolean
  /** null: as it is usual at the tempo: not where they would blur. */
  readonly halves: boolean | null
  readonly count: TickChoices['count']
  /** Seconds that are added to what the device reports. */
  readonly offset: number
}

export type Conductor = {
  readonly store: StoreApi<SoundChoices>
  set(choices: Partial<SoundChoices>): void
  /** Gives the words of the count; before, there are clicks alone. */
  say(voice: Voice): void
  /** Seconds that the device reports between sample and ear. */
  reported(): number
  close(): void
}

/** Off, quiet. */
export const FIRST_CHOICES: SoundChoices = {
  ...{ on: false, volume: 0.5, bar: true, beats: true, halves: null, count: 'off', offset: 0 },
}

/** More than this between what sounds and what is shown is mended, in seconds. */
const OFF = 0.001
/** Chunks are asked for so long before they sound: a page may stall, in seconds. */
const AHEAD = 4.5

type Part = { readonly buffer: AudioBuffer | null; readonly lasts: number }
/** What can be heard of a round: one part that loops, or several after one another, in seconds from its start. */
type Score = {
  readonly key: string
  readonly lasts: number
  readonly secondsPerBeat: number
  readonly parts: number
  /** Seconds from the round's start. */
  readonly startOf: (index: number) => number
  readonly part: (index: number) => Part
}
type Current = { readonly score: Score; readonly when: number; readonly into: number; queued: number }

/**
 * Keeps what sounds at the beat that is shown: whatever changes (tempo, figure, loop, count, a seek, a pause), it asks what
 * the clock will show when something else can be heard, and lets that sound then.
 */
export function createConductor(
  player: Player,
  speaker: Speaker,
  driver: SoundingDriver,
  choices: SoundChoices = FIRST_CHOICES,
): Conductor {
  const store = createStore<SoundChoices>(() => choices)
  let current: Current | null = null
  let voice: Voice | null = null

  const score = (): Score => {
    const { lesson, session } = player.store.getState()
    const { secondsPerBeat } = player.clock()
    const { bar, beats, halves, count } = store.getState()
    const blurs = halvesBlur(secondsPerBeat)
    const said = voice
    const tickChoices: TickChoices = {
      ...{ counting: session.counting, count: said === null ? 'off' : count, bar, beats },
      ...{ halves: halves ?? !blurs, ands: !blurs },
    }
    const sampleRate = SAMPLE_RATE
    const key = JSON.stringify([
      ...[
        lesson.figure.id,
        lesson.schedule.timing,
        lesson.range,
        lesson.round,
        lesson.steps,
        lesson.schedule.figure.role,
      ],
      ...[tickChoices, secondsPerBeat, sampleRate, said?.sampleRate],
    ])
    if (current?.score.key === key) return current.score
    const ticks = ticksOf(lesson, tickChoices)
    const asked = { beats: lesson.round, secondsPerBeat, sampleRate }
    if (fitsOneBuffer(asked)) {
      const round = renderRound(ticks, asked, said)
      const lasts = round.samples.length / sampleRate
      const whole = { buffer: speaker.prepare(round.samples, sampleRate), lasts }
      const part = () => whole
      return { key, lasts, secondsPerBeat: round.secondsPerBeat, parts: 1, startOf: () => 0, part }
    }
    const chunks = chunksOf(ticks, { ...asked, beatsPerBar: lesson.dance.beatsPerBar }, said)
    return {
      ...{ key, lasts: chunks.length / sampleRate, secondsPerBeat: chunks.secondsPerBeat },
      parts: chunks.starts.length,
      startOf: (index) => (chunks.starts[index] ?? 0) / sampleRate,
      part: (index) => {
        const samples = chunks.samplesOf(index)
        return { buffer: speaker.prepare(samples, sampleRate), lasts: samples.length / sampleRate }
      },
    }
  }

  const modulo = (value: number, by: number): number => ((value % by) + by) % by

  /** Where in the round it is at a time, in seconds. */
  const intoAt = ({ lasts, secondsPerBeat }: Score, time: number): number => {
    const at = beatAt(player.clock(), seconds(time))
    return modulo((at - player.store.getState().lesson.range.from) * secondsPerBeat, lasts)
  }

  /** The parts of a long round that begin soon. @param now the sound's time */
  const queue = (now: number): void => {
    if (current === null || current.score.parts === 1) return
    const { score: its, when, into } = current
    for (;;) {
      const rounds = Math.floor(current.queued / its.parts)
      const index = current.queued % its.parts
      const begins = when - into + rounds * its.lasts + its.startOf(index)
      if (begins > now + AHEAD) return
      const { buffer, lasts } = its.part(index)
      const skipped = Math.max(0, when - begins)
      if (buffer !== null && skipped < lasts) {
        const sounding = { buffer, when: begins + skipped, into: skipped, loops: false }
        if (skipped > 0 || begins === when) speaker.start(sounding)
        else speaker.queue(sounding)
      }
      current.queued++
    }
  }

  const start = (its: Score, when: number, into: number): void => {
    current = { score: its, when, into, queued: 0 }
    if (its.parts > 1) {
      while (current.queued + 1 < its.parts && its.startOf(current.queued + 1) <= into) current.queued++
      queue(when)
      return
    }
    const { buffer } = its.part(0)
    if (buffer !== null) speaker.start({ buffer, when, into, loops: true })
  }

  const hush = (): void => {
    if (current === null) return
    current = null
    speaker.silence()
  }

  /** Whether what was asked for sounds at the right place. */
  const isRight = (its: Score, when: number, into: number): boolean => {
    if (current === null || current.score !== its) return false
    const off = Math.abs(modulo(current.into + when - current.when, its.lasts) - into)
    return Math.min(off, its.lasts - off) <= OFF
  }

  const follow = (): void => {
    speaker.look()
    if (!store.getState().on || !player.clock().playing || speaker.state !== 'sounding') {
      hush()
      return
    }
    // Making it takes its time, so it comes first.
    const its = score()
    const next = driver.next?.() ?? driver.now()
    const when = driver.toSound(next)
    if (when === null) return
    const into = intoAt(its, next)
    if (isRight(its, when, into)) queue(when)
    else start(its, when, into)
  }

  const stops = [
    player.store.subscribe(follow),
    player.onGrid(follow),
    speaker.onState(follow),
    store.subscribe((now, before) => {
      if (now.volume !== before.volume) speaker.setVolume(now.volume)
      if (now.offset !== before.offset) speaker.setOffset(now.offset)
      follow()
    }),
  ]
  speaker.setVolume(choices.volume)
  speaker.setOffset(choices.offset)

  return {
    store,
    set(next) {
      // Within the press: browsers allow sound in no other way.
      if (next.on === true) speaker.wake()
      if (next.on === false) speaker.sleep()
      store.setState(next)
    },
    say(words) {
      voice = words
      follow()
    },
    reported: () => speaker.reported,
    close() {
      for (const stop of stops) stop()
      hush()
      speaker.close()
    },
  }
}
