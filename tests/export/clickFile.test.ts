import { parseMidi } from 'midi-file'
import { describe, expect, test } from 'vitest'
import { WaveFile } from 'wavefile'
import { clickFile } from '../../src/export/clickFile.ts'
import { lessonOf } from '../../src/session/lesson.ts'
import { newSession } from '../../src/session/session.ts'
import { beat } from '../../src/units.ts'
import { demos } from '../tools/demos.ts'

const choices = { counting: 'half beats', count: 'off', bar: true, beats: true, halves: false } as const

describe('clickFile(kind, lesson, barsPerMinute, choices, voice, rounds)', () => {
  test.each(demos.map((figure) => [figure.id, figure] as const))(
    '%s: both files are of one length and tempo',
    (_, figure) => {
      const session = newSession(figure, beat(0))
      const lesson = lessonOf(session, figure)
      const rounds = 2
      const wav = clickFile('wav', lesson, session.barsPerMinute, choices, null, rounds)
      const midi = clickFile('mid', lesson, session.barsPerMinute, choices, null, rounds)
      // Read back by independent readers: npm wavefile and midi-file.
      const sound = new WaveFile(wav.content)
      const samples = sound.getSamples(false, Float64Array)
      const lasts = samples.length / 48_000
      const { header, tracks } = parseMidi(midi.content)
      const events = tracks[0] ?? []
      const tempo = events.find((event) => event.type === 'setTempo')
      const ticks = events.reduce((sum, { deltaTime }) => sum + deltaTime, 0)
      const perQuarter = header.ticksPerBeat ?? Number.NaN
      const midiLasts = ((ticks / perQuarter) * (tempo?.type === 'setTempo' ? tempo.microsecondsPerBeat : 0)) / 1e6
      expect(midiLasts).toBeCloseTo(lasts, 3)
      expect(lasts).toBeCloseTo((rounds * lesson.round * 60) / (session.barsPerMinute * lesson.dance.beatsPerBar), 4)
      // A click for every beat of both rounds, and sound where there are clicks.
      expect(events.filter(({ type }) => type === 'noteOn').length).toBe(rounds * lesson.round)
      expect(samples.some((sample) => Math.abs(sample) > 1000)).toBe(true)
      expect([wav.name.endsWith('.wav'), midi.name.endsWith('.mid')]).toEqual([true, true])
    },
  )
})
