import { TimeClass } from 'tone/build/esm/core/type/Time.js'
import { describe, expect, test } from 'vitest'
import type { DanceId } from '../../src/dance/dance.ts'
import { dances } from '../../src/dance/dances.ts'
import { secondsPerBeat } from '../../src/dance/secondsPerBeat.ts'
import { roundTime } from '../../src/sound/roundTime.ts'
import { ticksOf } from '../../src/sound/ticksOf.ts'
import { near } from '../tools/near.ts'
import { ALL_CLICKS, playedTempi, walksLesson } from '../tools/soundedLesson.ts'

/** Seconds of "bars:quarters:sixteenths" as Tone.js 15.5.44 reckons them, which reckons in beats a minute. */
function toneSeconds(beatsAMinute: number, beatsPerBar: number, place: string): number {
  const context = {
    transport: { bpm: { value: beatsAMinute }, timeSignature: beatsPerBar, PPQ: 192 },
    now: () => 0,
    sampleRate: 48_000,
  }
  return new TimeClass(context as unknown as ConstructorParameters<typeof TimeClass>[0], place).toSeconds()
}

const DANCES = Object.values(dances).filter(({ id }) => id !== 'exercise')

describe('the times of clicks against Tone.js 15.5.44, to 1e-9 s', () => {
  test.each(DANCES.map(({ id }) => id))('%s: each bar, beat and half of the round, and nothing else', (dance) => {
    const { beatsPerBar } = dances[dance]
    const lesson = walksLesson(dance, [1, 1, 1, 1, 1, 0.5, 0.5])
    const ticks = ticksOf(lesson, ALL_CLICKS)
    // From the round's start back to the first of the bar in which the figure begins, in beats.
    const lead = lesson.range.from + lesson.schedule.firstCount - 1
    for (const tempo of playedTempi(dance, [0, 0.31, 0.77, 1])) {
      const beat = secondsPerBeat(dances[dance], tempo)
      const whole = roundTime({ beats: lesson.round, secondsPerBeat: beat, sampleRate: 44_100 })
      // As asked for, and as it is played: the round's own beat.
      for (const [seconds, beatsAMinute] of [
        [beat, tempo * beatsPerBar],
        [whole.secondsPerBeat, 60 / whole.secondsPerBeat],
      ] as const) {
        const heard = ticks
          .map(({ at, click }) => ({ time: (at + lead) * seconds, click }))
          .filter(({ time }) => time > -1e-9)
        const reckoned: { time: number; click: string }[] = []
        for (let bar = 0; bar * beatsPerBar < lead + lesson.round; bar++)
          for (let quarter = 0; quarter < beatsPerBar; quarter++)
            for (const sixteenth of [0, 2]) {
              const time = toneSeconds(beatsAMinute, beatsPerBar, `${bar}:${quarter}:${sixteenth}`)
              const click = sixteenth === 2 ? 'half' : quarter === 0 ? 'bar' : 'beat'
              const inRound = time > lead * seconds - 1e-9 && time < (lead + lesson.round) * seconds - 1e-9
              if (inRound) reckoned.push({ time, click })
            }
        expect(heard.map(({ click }) => click)).toEqual(reckoned.map(({ click }) => click))
        for (const [k, { time }] of heard.entries()) near(time, reckoned[k]!.time, 1e-9, dance, tempo, 'click', k)
      }
    }
  })
})

describe('the times of clicks against a table (60 / beats a minute, reckoned apart; Tone.js gives the same)', () => {
  const table: readonly (readonly [DanceId, number, string, number])[] = [
    ['foxtrot', 30, '1:2:3', 3.375],
    ['foxtrot', 30, '0:1:2', 0.75],
    ['waltz', 28, '1:0:0', 2.142857143],
    ['waltz', 28, '0:1:0', 0.714285714],
    ['waltz', 28, '0:0:2', 0.357142857],
    ['waltz', 28, '2:2:2', 6.071428571],
    ['waltz', 30, '1:0:0', 2],
    ['quickstep', 50, '1:0:0', 1.2],
    ['quickstep', 50, '0:1:2', 0.45],
    ['quickstep', 50, '3:3:2', 4.65],
    ['viennese waltz', 58, '1:0:0', 1.034482759],
  ]
  test.each(table)('%s at %d bars a minute, %s: %d s', (dance, tempo, place, seconds) => {
    const { beatsPerBar } = dances[dance]
    const [bars = 0, quarters = 0, sixteenths = 0] = place.split(':').map(Number)
    const at = bars * beatsPerBar + quarters + sixteenths / 4
    // Four bars; a step is called at the place, so that a quarter clicks as well.
    const values = at % 1 === 0 ? new Array(beatsPerBar * 4).fill(1) : [at, beatsPerBar * 4 - at]
    const lesson = walksLesson(dance, values, undefined, 1)
    const beat = secondsPerBeat(dances[dance], tempo)
    const times = ticksOf(lesson, ALL_CLICKS).map((tick) => (tick.at + lesson.range.from) * beat)
    expect(times.filter((time) => Math.abs(time - seconds) < 1e-9).length).toBe(1)
    near(toneSeconds(tempo * beatsPerBar, beatsPerBar, place), seconds, 1e-9, 'Tone.js')
  })
})
