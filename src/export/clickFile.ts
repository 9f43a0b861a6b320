import { beatsPerMinute } from '../dance/beatsPerMinute.ts'
import type { Lesson } from '../session/lesson.ts'
import { beatLasts, SAMPLE_RATE } from '../sound/beatLasts.ts'
import { chunksOf } from '../sound/chunksOf.ts'
import { type TickChoices, ticksOf } from '../sound/ticksOf.ts'
import type { Voice } from '../sound/voice.ts'
import { clickFileName } from './clickFileName.ts'
import { midiFile } from './midiFile.ts'
import { wavFile } from './wavFile.ts'

export type ClickFile = { readonly name: string; readonly content: Uint8Array<ArrayBuffer>; readonly type: string }

/**
 * What is heard of a lesson, as a file for other equipment: as WAV with clicks and words, as MIDI the clicks alone.
 * @param rounds how often the loop is in it, 1 or more
 * @throws RangeError when it would be larger than such files can be
 */
export function clickFile(
  kind: 'wav' | 'mid',
  lesson: Lesson,
  barsPerMinute: number,
  choices: TickChoices,
  voice: Voice | null,
  rounds: number,
): ClickFile {
  const { dance, figure, round } = lesson
  const ticks = ticksOf(lesson, choices)
  const name = clickFileName(figure.title, barsPerMinute, kind)
  if (kind === 'mid') {
    const content = midiFile({
      ...{ title: figure.title, timeSignature: dance.timeSignature, ticks, length: round, rounds },
      quartersPerMinute: beatsPerMinute(dance, barsPerMinute),
    })
    return { name, content, type: 'audio/midi' }
  }
  const secondsPerBeat = beatLasts(lesson, barsPerMinute)
  const asked = { beats: round, secondsPerBeat, sampleRate: SAMPLE_RATE, beatsPerBar: dance.beatsPerBar }
  const chunks = chunksOf(ticks, asked, voice)
  const samples = new Float32Array(chunks.length)
  for (const [index, start] of chunks.starts.entries()) samples.set(chunks.samplesOf(index), start)
  const whole = { samples, sampleRate: SAMPLE_RATE, secondsPerBeat: chunks.secondsPerBeat }
  return { name, content: wavFile(whole, rounds), type: 'audio/wav' }
}
