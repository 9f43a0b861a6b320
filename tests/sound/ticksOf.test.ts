import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dances } from '../../src/dance/dances.ts'
import { secondsPerBeat } from '../../src/dance/secondsPerBeat.ts'
import { lessonOf } from '../../src/session/lesson.ts'
import { newSession, withAmount, withOrder, withPart, withSteps } from '../../src/session/session.ts'
import { halvesBlur } from '../../src/sound/halvesBlur.ts'
import { type Sounded, type TickChoices, ticksOf } from '../../src/sound/ticksOf.ts'
import { VOICE_KEYS } from '../../src/sound/voice.ts'
import { wordFor } from '../../src/sound/wordFor.ts'
import { countAt, musicPlace } from '../../src/timing/counts.ts'
import { beat } from '../../src/units.ts'
import { countNow } from '../../src/words/countWords.ts'
import { generatedFigure } from '../tools/generateFigure.ts'
import { ALL_CLICKS, walksLesson } from '../tools/soundedLesson.ts'

const SILENT: TickChoices = { counting: 'half beats', count: 'off', bar: false, beats: false, halves: false }

/** Words and when they are said: "0.5 one · 1.5 two". */
const said = (sounded: Sounded, choices: Partial<TickChoices>): string =>
  ticksOf(sounded, { ...SILENT, count: 'counting', ...choices })
    .map(({ at, say }) => `${at} ${say}`)
    .join(' · ')
const words = (sounded: Sounded, choices: Partial<TickChoices>): string =>
  ticksOf(sounded, { ...SILENT, count: 'counting', ...choices })
    .map(({ say }) => say)
    .join(' ')
const clicked = (sounded: Sounded, choices: Partial<TickChoices>): string =>
  ticksOf(sounded, { ...SILENT, ...choices })
    .map(({ at, click }) => `${at} ${click}`)
    .join(' · ')

/** Nobody but the one in time: a round is then no longer than the figure's bars. */
const inTime = (session: ReturnType<typeof newSession>) => withOrder(session, [0])

describe('ticksOf(lesson, choices): clicks', () => {
  const waltz = walksLesson('waltz', [1, 1, 1], inTime)
  test('a bar of waltz, from half a beat before its first count', () => {
    expect([waltz.range.from, waltz.round]).toEqual([-0.5, 3])
    expect(clicked(waltz, ALL_CLICKS)).toBe('0 half · 0.5 bar · 1 half · 1.5 beat · 2 half · 2.5 beat')
  })
  test('each kind off by itself; a first of the bar is then a beat like the others', () => {
    expect(clicked(waltz, { ...ALL_CLICKS, bar: false })).toBe(
      '0 half · 0.5 beat · 1 half · 1.5 beat · 2 half · 2.5 beat',
    )
    expect(clicked(waltz, { ...ALL_CLICKS, beats: false })).toBe('0 half · 0.5 bar · 1 half · 2 half')
    expect(clicked(waltz, { ...ALL_CLICKS, halves: false })).toBe('0.5 bar · 1.5 beat · 2.5 beat')
    expect(ticksOf(waltz, SILENT)).toEqual([])
  })
  test('the music’s bars, not the figure’s: rumba begins on 2, its first is the last that is called', () => {
    const rumba = walksLesson('rumba', [1, 1, 2], inTime)
    expect([rumba.range.from, rumba.round]).toEqual([-1, 4])
    expect(clicked(rumba, { bar: true, beats: true })).toBe('0 bar · 1 beat · 2 beat · 3 beat')
  })
  test('samba 1 a 2: the a, on a quarter, clicks with the halves; quarters on which nothing is called do not', () => {
    const samba = walksLesson('samba', [0.75, 0.25, 1], inTime)
    expect(samba.range.from).toBe(-1)
    expect(clicked(samba, ALL_CLICKS)).toBe('0 beat · 0.5 half · 1 bar · 1.5 half · 1.75 half')
  })
  test('samba a 1 a 2: the beats lie a quarter after the a on which the figure begins', () => {
    const samba = walksLesson('samba', [0.25, 0.75, 0.25, 0.75], inTime, 0.75)
    expect([samba.range.from, samba.round]).toEqual([-1, 4])
    expect(clicked(samba, { bar: true, beats: true })).toBe('0.25 beat · 1.25 bar · 2.25 beat · 3.25 bar')
    expect(clicked(samba, { halves: true })).toBe('0.75 half · 1 half · 1.75 half · 2 half · 2.75 half · 3.75 half')
  })
})

describe('ticksOf(lesson, choices): words', () => {
  test('slows and quicks: foxtrot S Q Q', () => {
    const lesson = walksLesson('foxtrot', [2, 1, 1], inTime)
    expect(said(lesson, { counting: 'slows and quicks' })).toBe('0.5 slow · 2.5 quick · 3.5 quick')
  })
  test('slows and quicks: the beats in which the dancers wait are counted', () => {
    const lesson = walksLesson('foxtrot', [2, 1, 1])
    expect(lesson.round).toBe(8)
    expect(words(lesson, { counting: 'slows and quicks' })).toBe('slow quick quick one two three four')
    expect(words(lesson, { counting: 'slows and quicks', count: 'steps' })).toBe('slow quick quick')
  })
  test('slows and quicks: jive Q Q Q a Q Q a Q (revision cards of IDTA theory)', () => {
    const lesson = walksLesson('jive', [1, 1, 0.75, 0.25, 1, 0.75, 0.25, 1], inTime)
    expect(words(lesson, { counting: 'slows and quicks', count: 'steps' })).toBe(
      'quick quick quick a quick quick a quick',
    )
  })
  test('slows and quicks: six beats of jive in two bars; what comes before the first call is the end of the wait', () => {
    const lesson = walksLesson('jive', [1, 1, 0.75, 0.25, 1, 0.75, 0.25, 1], inTime)
    expect([lesson.range.from, lesson.round]).toEqual([-1, 8])
    expect(words(lesson, { counting: 'slows and quicks' })).toBe('four quick quick quick a quick quick a quick three')
  })
  test('slows and quicks: tango S Q Q S & (revision cards of IDTA theory), then half a bar until the next round', () => {
    const lesson = walksLesson('tango', [2, 1, 1, 1.5, 0.5], inTime)
    expect(words(lesson, { counting: 'slows and quicks' })).toBe('slow quick quick slow and three four')
  })
  test('slows and quicks in a waltz: counted in numbers, and where a step is called on it', () => {
    const lesson = walksLesson('waltz', [1, 0.5, 0.5, 1], inTime)
    expect(said(lesson, { counting: 'slows and quicks' })).toBe('0.5 one · 1.5 two · 2 and · 2.5 three')
  })
  test('bars and beats: the bar’s number takes the place of its first count (revision cards of IDTA theory)', () => {
    const lesson = walksLesson('waltz', [1, 1, 1, 1, 1, 1, 1, 1, 1], inTime)
    expect(words(lesson, { counting: 'bars and beats' })).toBe('one two three two two three three two three')
  })
  test('bars and beats: the ninth bar is one again, in phrases of eight', () => {
    const lesson = walksLesson('paso doble', new Array(20).fill(1), inTime)
    const firsts = ticksOf(lesson, { ...SILENT, count: 'counting', counting: 'bars and beats', bar: true })
      .filter(({ click }) => click === 'bar')
      .map(({ say }) => say)
    expect(firsts.join(' ')).toBe('one two three four five six seven eight one two')
  })
  test('half beats: one and two and; without the ands where they cannot be said', () => {
    const lesson = walksLesson('waltz', [1, 1, 1], inTime)
    expect(said(lesson, { counting: 'half beats' })).toBe('0 and · 0.5 one · 1 and · 1.5 two · 2 and · 2.5 three')
    expect(words(lesson, { counting: 'half beats', ands: false })).toBe('one two three')
    const split = walksLesson('waltz', [1, 0.5, 0.5, 1], inTime)
    expect(words(split, { counting: 'half beats', ands: false })).toBe('one two and three')
  })
  test('only the step’s own timing: rumba 2 3 4-1 has no one (FAQ 19, kensclassictrax.co.uk)', () => {
    const lesson = walksLesson('rumba', [1, 1, 2], inTime)
    expect(said(lesson, { counting: 'half beats', count: 'steps' })).toBe('1 two · 2 three · 3 four')
    expect(words(lesson, { counting: 'bars and beats', count: 'counting' })).toBe('one two three four')
  })
  test('cha-cha 2 3 4 & 1 (revision cards of IDTA theory): the last call falls on the seam and is heard there', () => {
    const lesson = walksLesson('cha-cha-cha', [1, 1, 0.5, 0.5, 1], inTime)
    expect([lesson.range.from, lesson.round]).toEqual([-1, 4])
    expect(said(lesson, { counting: 'half beats', count: 'steps' })).toBe('0 one · 1 two · 2 three · 3 four · 3.5 and')
    expect(said(lesson, { counting: 'slows and quicks' })).toBe('0 quick · 1 quick · 2 quick · 3 quick · 3.5 and')
  })
  test('samba 1 a 2: the a is said where a step is called on it', () => {
    const lesson = walksLesson('samba', [0.75, 0.25, 1], inTime)
    expect(said(lesson, { counting: 'half beats', count: 'steps' })).toBe('0 two · 1 one · 1.75 a')
    expect(words(lesson, { counting: 'half beats' })).toBe('two and one and a')
  })
  test('waltz & 1 2 3: the & before the first count', () => {
    const lesson = walksLesson('waltz', [0.5, 1, 1, 1], inTime, 0.5)
    expect(words(lesson, { counting: 'half beats', count: 'steps' })).toBe('and one two three')
  })
  test('a bar by itself, with a bar to get ready: that one is counted, as on the screen', () => {
    const lesson = walksLesson('foxtrot', [2, 1, 1, 2, 1, 1, 2, 1, 1], (session) =>
      withPart(inTime(session), { from: beat(4), to: beat(8) }),
    )
    expect([lesson.round, lesson.range.from]).toEqual([8, 2.5])
    expect(words(lesson, { counting: 'slows and quicks' })).toBe('quick slow quick quick one two three')
    for (const counting of ['bars and beats', 'slows and quicks'] as const) {
      for (const { at, say } of ticksOf(lesson, { ...SILENT, counting, count: 'counting' })) {
        const { text } = countNow(lesson, counting, lesson.range.from + at)
        expect(wordFor(text)).toBe(say)
      }
    }
    expect(countNow(lesson, 'slows and quicks', 8)).toEqual({ text: '1', called: true })
    expect(countNow(lesson, 'half beats', 8.5)).toEqual({ text: '&', called: false })
  })
  test('the last steps of a figure by themselves: as those in its middle', () => {
    const walks = new Array(8).fill(1)
    const last = walksLesson('foxtrot', walks, (session) => withSteps(inTime(session), { first: 6, last: 7 }))
    const middle = walksLesson('foxtrot', walks, (session) => withSteps(inTime(session), { first: 2, last: 3 }))
    for (const lesson of [last, middle]) {
      expect(lesson.round).toBe(3)
      expect(words(lesson, { counting: 'bars and beats' })).toBe('three four')
      expect(countNow(lesson, 'bars and beats', lesson.range.from + 2.5).text).toBe('·')
    }
    // A bar, with a bar to get ready: the music's beats, and no bar's number.
    const bar = walksLesson('waltz', new Array(9).fill(1), (session) =>
      withPart(inTime(session), { from: beat(6), to: beat(9) }),
    )
    expect(words(bar, { counting: 'bars and beats' })).toBe('three three two three one two')
    expect(countNow(bar, 'bars and beats', 9).text).toBe('1')
  })
  test('a few steps by themselves: only theirs are called, and the count stops after them as it does on the screen', () => {
    const lesson = walksLesson('foxtrot', [2, 1, 1, 2, 1, 1], (session) =>
      withSteps(inTime(session), { first: 1, last: 2 }),
    )
    expect(said(lesson, { counting: 'slows and quicks', count: 'steps' })).toBe('0.5 quick · 1.5 quick')
    expect(said(lesson, { counting: 'half beats', ands: false })).toBe('0.5 three · 1.5 four')
  })
  test('a step by itself, and somebody late in it after the figure’s end: no count that the screen does not show', () => {
    const lesson = walksLesson('foxtrot', [2, 1, 1], (session) => withSteps(session, { first: 1, last: 1 }))
    expect([lesson.range.from, lesson.round, lesson.schedule.length]).toEqual([1.5, 3, 4])
    expect(said(lesson, { counting: 'slows and quicks' })).toBe('0.5 quick')
  })
  test('two steps by themselves, seen a beat late: the first is called before the picture begins, at the round’s end', () => {
    const late = (session: ReturnType<typeof newSession>) =>
      withSteps(withOrder(withAmount(session, 'late', 1), [1]), { first: 0, last: 1 })
    const lesson = walksLesson('foxtrot', [1, 1, 1, 1, 1, 1], late)
    expect([lesson.range.from, lesson.round]).toEqual([0.5, 3])
    expect(said(lesson, { counting: 'half beats', count: 'steps' })).toBe('0.5 two · 2.5 one')
  })
})

describe('ticksOf(lesson, choices) of any figure', () => {
  const choices = fc.record({
    counting: fc.constantFrom('slows and quicks' as const, 'bars and beats' as const, 'half beats' as const),
    count: fc.constantFrom('off' as const, 'counting' as const, 'steps' as const),
    bar: fc.boolean(),
    beats: fc.boolean(),
    halves: fc.boolean(),
    ands: fc.boolean(),
  })
  const lessons = fc
    .tuple(generatedFigure(), fc.integer({ min: 0, max: 4 }), fc.option(fc.tuple(fc.nat(9), fc.nat(9)), { nil: null }))
    .map(([figure, quarters, some]) => {
      const session = withAmount(newSession(figure, beat(0)), 'late', quarters / 4)
      const steps = some === null ? null : { first: Math.min(...some), last: Math.max(...some) }
      return lessonOf(withSteps(session, steps), figure)
    })
  const RUNS = { numRuns: 200, seed: 20261125 } as const

  test('in order, inside the round, no two at one time, none empty', () => {
    fc.assert(
      fc.property(lessons, choices, (lesson, chosen) => {
        const ticks = ticksOf(lesson, chosen)
        let before = -1
        for (const { at, click, say } of ticks) {
          if (say !== null) expect(VOICE_KEYS).toContain(say)
          const fits = at >= 0 && at > before + 1e-6 && at < lesson.round && (click ?? say) !== null
          if (!fits) expect.fail(`${at} ${click} ${say} after ${before} in a round of ${lesson.round}`)
          before = at
        }
      }),
      RUNS,
    )
  })
  test('with all clicks on: every beat and half of the music, by its place in the bar', () => {
    fc.assert(
      fc.property(lessons, (lesson) => {
        const ticks = ticksOf(lesson, ALL_CLICKS)
        const kinds = new Map(ticks.map(({ at, click }) => [Math.round(at * 48), click]))
        const beats = { bar: 0, beat: 0, half: 0 }
        for (let part = 0; part < lesson.round * 48; part++) {
          const { count, part: rest } = musicPlace(lesson.schedule, lesson.range.from + part / 48)
          if (rest > 1e-6 && Math.abs(rest - 0.5) > 1e-6) continue
          const kind = rest > 1e-6 ? 'half' : count === 1 ? 'bar' : 'beat'
          expect(kinds.get(part)).toBe(kind)
          beats[kind]++
        }
        expect(beats.bar + beats.beat).toBe(lesson.round)
        expect(beats.half).toBe(lesson.round)
      }),
      RUNS,
    )
  })
  test('every call of a step that is danced is heard once, a whole number of rounds from where it is called', () => {
    fc.assert(
      fc.property(lessons, choices, (lesson, chosen) => {
        const { schedule, range, round, steps, dance } = lesson
        const ticks = ticksOf(lesson, { ...chosen, count: 'steps' })
        const danced = schedule.actions.slice(steps.first, steps.last + 1)
        const heard = danced.filter(({ called }) =>
          ticks.some(({ at, say }) => {
            const rounds = (called - range.from - at) / round
            return say !== null && Math.abs(rounds - Math.round(rounds)) < 1e-9
          }),
        )
        // The first quarter of a beat has no word in the trade, but in slows and quicks.
        const sayable = danced.filter(({ called }) => countAt(schedule, dance, chosen.counting, called).text !== '·')
        expect(heard.map(({ index }) => index)).toEqual(sayable.map(({ index }) => index))
        expect(ticks.filter(({ say }) => say !== null).length).toBe(heard.length)
      }),
      RUNS,
    )
  })
  test('a round of no length is refused', () => {
    const lesson = walksLesson('waltz', [1, 1, 1])
    expect(() => ticksOf({ ...lesson, round: 0 }, ALL_CLICKS)).toThrow(RangeError)
  })
})

describe('halvesBlur(secondsPerBeat)', () => {
  test('a quickstep’s at 50 bars a minute are 150 ms apart, a slow waltz’s at 28 are 357 (60 / beats a minute / 2)', () => {
    expect(halvesBlur(secondsPerBeat(dances.quickstep, 50))).toBe(true)
    expect(halvesBlur(secondsPerBeat(dances['viennese waltz'], 60))).toBe(true)
    expect(halvesBlur(secondsPerBeat(dances.waltz, 28))).toBe(false)
    expect([0.399, 0.4].map(halvesBlur)).toEqual([true, false])
  })
})
