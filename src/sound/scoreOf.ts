import { BEFORE_THE_BEAT } from '../clock/riseBefore.ts'
import type { Lesson } from '../session/lesson.ts'
import { SAMPLE_RATE } from './beatLasts.ts'
import { chunksOf } from './chunksOf.ts'
import { countInTicks } from './countInTicks.ts'
import { renderCountIn } from './renderCountIn.ts'
import { fitsOneBuffer, renderRound } from './renderRound.ts'
import { roundTime } from './roundTime.ts'
import { type TickChoices, ticksOf } from './ticksOf.ts'
import type { Voice } from './voice.ts'

/** Something to be played, as the device wants it, and how long it lasts, in seconds. */
export type Part<Buffer> = { readonly buffer: Buffer; readonly lasts: number }

/** What is counted in: it ends where the round begins. */
export type CountInPart<Buffer> = Part<Buffer> & {
  /** Where clicks begin, in seconds from the round's start: all below 0. */
  readonly clicks: readonly number[]
}

/** What can be heard of a round: one part that loops, or several after one another; each is made when it is asked for. */
export type Score<Buffer> = {
  /** Seconds. */
  readonly lasts: number
  readonly secondsPerBeat: number
  /** How many parts; 1: it can loop by itself. */
  readonly parts: number
  /** Over and over, or once. */
  readonly repeats: boolean
  /** Where clicks begin, in seconds from the round's start. */
  readonly clicks: readonly number[]
  /** Seconds from the round's start. */
  readonly startOf: (index: number) => number
  readonly part: (index: number) => Part<Buffer>
  /** Before the round. @param beats that are counted in, 0 or more */
  readonly countIn: (beats: number) => CountInPart<Buffer>
}

/** Beats that are one but for rounding. */
const NEAR = 1e-9

/** The last few things made, by what they were made for. */
function remembering<Made>(count: number, make: (key: number) => Made): (key: number) => Made {
  let made: readonly { readonly key: number; readonly it: Made }[] = []
  return (key) => {
    const again = made.find((one) => one.key === key)
    if (again !== undefined) return again.it
    const it = make(key)
    made = [...made, { key, it }].slice(-count)
    return it
  }
}

/**
 * What is heard of a lesson at a tempo.
 * @param prepare gives samples the shape that the device wants
 */
export function scoreOf<Buffer>(
  lesson: Lesson,
  secondsPerBeat: number,
  choices: TickChoices,
  voice: Voice | null,
  prepare: (samples: Float32Array) => Buffer,
): Score<Buffer> {
  const asked = { beats: lesson.round, secondsPerBeat, sampleRate: SAMPLE_RATE }
  const time = roundTime(asked)
  // Danced once, it is heard to its end; the round's beats after that are not.
  const last = lesson.repeats ? lesson.round : lesson.range.to - lesson.range.from
  const ticks = ticksOf(lesson, choices).filter(({ at }) => at < last - NEAR)
  const made = (samples: Float32Array): Part<Buffer> => ({
    ...{ buffer: prepare(samples), lasts: samples.length / SAMPLE_RATE },
  })
  const common = {
    lasts: time.length / SAMPLE_RATE,
    secondsPerBeat: time.secondsPerBeat,
    repeats: lesson.repeats,
    clicks: ticks.flatMap(({ at, click }) => (click === null ? [] : [at * time.secondsPerBeat])),
    countIn: remembering(1, (beats) => {
      const before = countInTicks(lesson, lesson.range.from - beats, choices)
      const lead = Math.round(BEFORE_THE_BEAT * SAMPLE_RATE)
      const clicks = before.flatMap(({ at, click }) => (click === null ? [] : [(at - beats) * time.secondsPerBeat]))
      return { ...made(renderCountIn(before, beats, { ticks, asked }, lead, voice)), clicks }
    }),
  }
  if (fitsOneBuffer(asked)) {
    const part = remembering(1, () => made(renderRound(ticks, asked, voice).samples))
    return { ...common, parts: 1, startOf: () => 0, part: () => part(0) }
  }
  const chunks = chunksOf(ticks, { ...asked, beatsPerBar: lesson.dance.beatsPerBar }, voice)
  return {
    ...common,
    parts: chunks.starts.length,
    startOf: (index) => (chunks.starts[index] ?? 0) / SAMPLE_RATE,
    part: remembering(2, (index) => made(chunks.samplesOf(index))),
  }
}
