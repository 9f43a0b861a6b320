import { createStore, type StoreApi } from 'zustand/vanilla'
import { beatAt, isOver } from './clock/clock.ts'
import type { SoundingDriver } from './clock/soundingDriver.ts'
import type { Player } from './player.ts'
import type { Lesson } from './session/lesson.ts'
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
  /** What is heard just now, for whoever writes it into a file. */
  heard(): { readonly choices: TickChoices; readonly voice: Voice | null }
  close(): void
}

/** Off, quiet. */
export const FIRST_CHOICES: SoundChoices = {
  ...{ on: false, volume: 0.5, bar: true, beats: true, halves: null, count: 'off', offset: 0 },
}

/** More than this between what sounds and what is shown is mended, in seconds. */
const OFF = 0.001
/** Beats that are one but for rounding. */
const NEAR = 1e-9
/** Chunks are asked for so long before they sound: a page may stall, in seconds. */
const AHEAD = 4.5
/** A click lasts no longer, in seconds. */
const CLICK = 0.06
/** A click that is begun or goes on so near to where it was is heard as one, in seconds. */
const ONE = 0.005
/** What begins so soon is made together with what sounds before, in seconds. */
const SOON = 0.2
/** It is looked after so often without a frame or a press, in seconds. */
const LOOK = 0.25

type Part = { readonly buffer: AudioBuffer | null; readonly lasts: number }
/** What can be heard of a round: one part that loops, or several after one another, in seconds from its start. */
type Score = {
  readonly key: string
  readonly lasts: number
  readonly secondsPerBeat: number
  readonly parts: number
  /** Over and over, or once. */
  readonly repeats: boolean
  /** Where clicks begin, in seconds from the round's start. */
  readonly clicks: readonly number[]
  /** Seconds from the round's start. */
  readonly startOf: (index: number) => number
  readonly part: (index: number) => Part
}
/** Calls somebody every so many seconds until it is stopped. */
type Every = (seconds: number, call: () => void) => () => void

const onTimer: Every = (every, call) => {
  const timer = setInterval(call, every * 1000)
  return () => clearInterval(timer)
}

/** A time on a whole sample, so that parts join without a gap. */
const onSample = (time: number): number => Math.round(time * SAMPLE_RATE) / SAMPLE_RATE

const modulo = (value: number, by: number): number => ((value % by) + by) % by

/** A moment: the driver's time, the sound's, and how far into the round it is; in seconds. */
type Place = { readonly time: number; readonly when: number; readonly into: number }
type Current = { readonly score: Score; readonly when: number; readonly into: number; queued: number }

/** How far into its round it is at a time of the sound's, in seconds. */
const intoNow = ({ score, into, when }: Current, now: number): number => modulo(into + now - when, score.lasts)

/** Seconds since the last click began. */
const sinceClick = ({ clicks, lasts }: Score, into: number): number =>
  Math.min(...clicks.map((click) => modulo(into - click, lasts)))

/**
 * Keeps what sounds at the beat that is shown: whatever changes (tempo, figure, loop, count, a seek, a pause), it asks what
 * the clock will show when something else can be heard, and lets that sound then.
 */
export function createConductor(
  player: Player,
  speaker: Speaker,
  driver: SoundingDriver,
  choices: SoundChoices = FIRST_CHOICES,
  every: Every = onTimer,
): Conductor {
  const store = createStore<SoundChoices>(() => choices)
  let current: Current | null = null
  let voice: Voice | null = null
  /** What was made last: after a pause it is there at once. */
  let kept: { readonly score: Score; readonly lesson: Lesson; readonly said: Voice | null } | null = null

  const choicesNow = (): TickChoices => {
    const { counting } = player.store.getState().session
    const { bar, beats, halves, count } = store.getState()
    const blurs = halvesBlur(player.clock().secondsPerBeat)
    return { counting, count: voice === null ? 'off' : count, bar, beats, halves: halves ?? !blurs, ands: !blurs }
  }

  const score = (): Score => {
    const { lesson } = player.store.getState()
    const { secondsPerBeat } = player.clock()
    const said = voice
    const tickChoices = choicesNow()
    const key = JSON.stringify([
      ...[
        lesson.figure.id,
        lesson.schedule.timing,
        lesson.range,
        lesson.round,
        lesson.repeats,
        lesson.steps,
        lesson.schedule.figure.role,
      ],
      ...[tickChoices, secondsPerBeat],
    ])
    const sounds = kept !== null && kept.score === current?.score
    if (kept?.score.key === key && kept.said === said && (sounds || kept.lesson === lesson)) return kept.score
    kept = { score: scoreOf(lesson, tickChoices, said, key), lesson, said }
    return kept.score
  }

  const scoreOf = (lesson: Lesson, tickChoices: TickChoices, said: Voice | null, key: string): Score => {
    const { secondsPerBeat } = player.clock()
    const sampleRate = SAMPLE_RATE
    // Danced once, it is heard to its end; the round's beats after that are not.
    const last = lesson.repeats ? lesson.round : lesson.range.to - lesson.range.from
    const ticks = ticksOf(lesson, tickChoices).filter(({ at }) => at < last - NEAR)
    const clicks = ticks.flatMap(({ at, click }) => (click === null ? [] : [at * secondsPerBeat]))
    const common = { key, repeats: lesson.repeats, clicks }
    const asked = { beats: lesson.round, secondsPerBeat, sampleRate }
    if (fitsOneBuffer(asked)) {
      const round = renderRound(ticks, asked, said)
      const lasts = round.samples.length / sampleRate
      const whole = { buffer: speaker.prepare(round.samples, sampleRate), lasts }
      const part = () => whole
      return { ...common, lasts, secondsPerBeat: round.secondsPerBeat, parts: 1, startOf: () => 0, part }
    }
    const chunks = chunksOf(ticks, { ...asked, beatsPerBar: lesson.dance.beatsPerBar }, said)
    /** The two that were made last. */
    let made: readonly { readonly index: number; readonly part: Part }[] = []
    return {
      ...common,
      ...{ lasts: chunks.length / sampleRate, secondsPerBeat: chunks.secondsPerBeat, parts: chunks.starts.length },
      startOf: (index) => (chunks.starts[index] ?? 0) / sampleRate,
      part: (index) => {
        const again = made.find((one) => one.index === index)
        if (again !== undefined) return again.part
        const samples = chunks.samplesOf(index)
        const part = { buffer: speaker.prepare(samples, sampleRate), lasts: samples.length / sampleRate }
        made = [...made.slice(-1), { index, part }]
        return part
      },
    }
  }

  /** Where in the round it is at a time, in seconds; where it is danced once it counts on after its end. */
  const intoAt = ({ lasts, secondsPerBeat }: Score, time: number): number => {
    const { lesson } = player.store.getState()
    const clock = player.clock()
    const at = beatAt({ ...clock, round: clock.round ?? lesson.round }, seconds(time))
    return modulo((at - lesson.range.from) * secondsPerBeat, lasts)
  }

  /** The part that sounds so far into a round. */
  const indexAt = ({ parts, startOf }: Score, into: number): number => {
    let index = 0
    while (index + 1 < parts && startOf(index + 1) <= into) index++
    return index
  }

  /** The parts of a long round that begin soon. @param now the sound's time */
  const queue = (now: number): void => {
    if (current === null || current.score.parts === 1) return
    const { score: its, when, into } = current
    for (;;) {
      const rounds = Math.floor(current.queued / its.parts)
      const index = current.queued % its.parts
      const begins = when - into + rounds * its.lasts + its.startOf(index)
      if (begins > now + AHEAD || (rounds > 0 && !its.repeats)) return
      const ends = begins + (index + 1 < its.parts ? its.startOf(index + 1) : its.lasts) - its.startOf(index)
      // A page that was away long does not make what is past.
      if (ends > now) {
        const { buffer } = its.part(index)
        if (buffer !== null) speaker.queue({ buffer, when: begins, into: 0, loops: false })
      }
      current.queued++
    }
  }

  const start = (its: Score, place: Place): void => {
    const when = onSample(place.when)
    const into = modulo(onSample(place.into + when - place.when), its.lasts)
    const index = indexAt(its, into)
    // Half a click is heard only as the other half of one.
    const since = sinceClick(its, into)
    const before = current === null ? null : sinceClick(current.score, intoNow(current, when))
    const goesOn = before !== null && Math.abs(before - since) <= ONE
    const quiet = since > ONE && !goesOn ? Math.max(0, CLICK - since) : 0
    current = { score: its, when, into, queued: index + 1 }
    const { buffer } = its.part(index)
    const loops = its.parts === 1 && its.repeats
    if (buffer !== null) speaker.start({ buffer, when, into: into - its.startOf(index), loops, quiet })
    queue(when)
  }

  /** The next place at which something else can be heard; null: nothing is. */
  const placeOf = (its: Score): Place | null => {
    const time = driver.next?.() ?? driver.now()
    const when = driver.toSound(time)
    return when === null ? null : { time, when, into: intoAt(its, time) }
  }

  const hush = (): void => {
    if (current === null) return
    current = null
    speaker.silence()
  }

  /** Whether what was asked for sounds at the right place. */
  const isRight = (its: Score, { when, into }: Place): boolean => {
    if (current === null || current.score !== its) return false
    const off = Math.abs(intoNow(current, when) - into)
    return Math.min(off, its.lasts - off) <= OFF
  }

  const follow = (): void => {
    speaker.look()
    if (!store.getState().on || !player.clock().playing || speaker.state !== 'sounding') {
      hush()
      return
    }
    // Making it takes its time, so it comes before the question when it can be heard.
    const its = score()
    const asked = placeOf(its)
    if (asked === null || isRight(its, asked)) {
      if (asked !== null) queue(asked.when)
      return
    }
    for (const later of [0, SOON]) its.part(indexAt(its, modulo(asked.into + later, its.lasts)))
    const place = placeOf(its)
    if (place === null || isOver(player.clock(), seconds(place.time))) hush()
    else start(its, place)
  }

  const stops = [
    every(LOOK, () => {
      if (store.getState().on) follow()
    }),
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
  follow()

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
    heard: () => ({ choices: choicesNow(), voice }),
    close() {
      for (const stop of stops) stop()
      hush()
      speaker.close()
    },
  }
}
