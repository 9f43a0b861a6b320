import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Counting } from '../../src/dance/dance.ts'
import { dances } from '../../src/dance/dances.ts'
import { playedTempoRange } from '../../src/dance/playedTempoRange.ts'
import type { Figure } from '../../src/figure/figure.ts'
import { checksum } from '../../src/keep/checksum.ts'
import { LONGEST_LINK, linkedSession, readLink, writeLink } from '../../src/keep/link.ts'
import type { Seen } from '../../src/scene/view.ts'
import { lessonOf } from '../../src/session/lesson.ts'
import { loopRange } from '../../src/session/loopRange.ts'
import {
  newSession,
  type Session,
  withAmount,
  withBeat,
  withCountIn,
  withCounting,
  withLoop,
  withNamesOff,
  withOpposite,
  withPart,
  withSeen,
  withSteps,
  withTempo,
  withTiming,
} from '../../src/session/session.ts'
import { COUNT_IN_BARS } from '../../src/timing/countIn.ts'
import { gridPoints } from '../../src/timing/grid.ts'
import { schedule as scheduleOf } from '../../src/timing/schedule.ts'
import { beat } from '../../src/units.ts'
import { demos } from '../tools/demos.ts'
import { walks } from '../tools/exampleFigure.ts'

const SEED = { seed: 20261125, numRuns: 300 }

/** With a second timing, so that the choice of one has something to say. */
const SQQ = walks('foxtrot', [2, 1, 1], { id: 'sqq' })
const TWO_TIMINGS: Figure = { ...SQQ, id: 'two', timings: [SQQ.timings[0], walks('foxtrot', [1, 1, 2]).timings[0]] }
const FIGURES: readonly Figure[] = [...demos, TWO_TIMINGS]

/** A view that people can bring about. */
const anyView: fc.Arbitrary<{ figure: Figure; session: Session }> = fc
  .record({
    figure: fc.constantFrom(...FIGURES),
    timing: fc.nat(1),
    late: fc.double({ min: 0, max: 1, noNaN: true }).map(Math.abs),
    early: fc.double({ min: 0.25, max: 1, noNaN: true }),
    tempo: fc.double({ min: 0, max: 1, noNaN: true }),
    order: fc.shuffledSubarray([0, 1, 2], { minLength: 1 }),
    seen: fc.constantFrom<Seen>('room', 'dancer', 'class', 'mirror'),
    opposite: fc.boolean(),
    steps: fc.option(fc.tuple(fc.nat(5), fc.nat(5))),
    part: fc.option(fc.tuple(fc.nat(20), fc.nat(20))),
    joined: fc.boolean(),
    countIn: fc.constantFrom(...COUNT_IN_BARS),
    counting: fc.constantFrom<Counting>('slows and quicks', 'bars and beats', 'half beats'),
    names: fc.boolean(),
    loop: fc.boolean(),
    usual: fc.boolean(),
    at: fc.nat(1000),
  })
  .map(({ figure, usual, ...set }) => {
    const { from, to } = playedTempoRange(dances[figure.dance])
    let session = newSession(figure, beat(0))
    if (!usual) {
      session = withAmount(withAmount(withTiming(session, figure, set.timing), 'late', set.late), 'early', set.early)
      session = withTempo(session, figure, from + set.tempo * (to - from))
      session = { ...withNamesOff(session, set.order), names: set.names }
      session = withOpposite(withSeen(session, set.seen), set.opposite)
      const noSlows = set.counting === 'slows and quicks' && dances[figure.dance].signs.S === null
      if (!noSlows) session = withCounting(session, set.counting)
    }
    session = withLoop(session, set.loop)
    if (!usual && set.steps !== null) {
      const [first, last] = set.steps.map((index) => index % figure.actions.length).sort((a, b) => a - b)
      session = withSteps(session, { first: first ?? 0, last: last ?? 0 })
    }
    if (!usual) session = withCountIn({ ...session, joined: set.joined }, set.countIn)
    if (!usual && set.part !== null && session.steps === null) {
      const [one, other] = set.part
      session = withPart(session, loopRange(scheduleOf(figure, session.timing), one / 2, other / 2).part)
    }
    const { range, schedule } = lessonOf(session, figure)
    const points = gridPoints(range.from, range.to, schedule.grid)
    return { figure, session: withBeat(session, beat((points[set.at % points.length] ?? 0) + 0)) }
  })

const written = ({ figure, session }: { figure: Figure; session: Session }): string =>
  writeLink(session, figure, { demo: session.figure })

describe('checksum(text)', () => {
  test('is CRC-32: "123456789" gives CBF43926 (the check value of the catalogue of parametrised CRC algorithms)', () => {
    expect(Number.parseInt(checksum('123456789'), 36)).toBe(0xcbf43926)
  })
})

describe('writeLink and readLink', () => {
  test('linkedSession(readLink(writeLink(x))) = x', () => {
    fc.assert(
      fc.property(anyView, (view) => {
        const reading = readLink(written(view))
        if (!reading.ok) throw new Error(reading.reason)
        expect(reading.content.figure).toEqual({ demo: view.figure.id })
        expect(linkedSession(reading.content.fields, view.figure)).toEqual(view.session)
      }),
      SEED,
    )
  })

  test('a packed figure comes out as it went in', () => {
    const link = writeLink(newSession(SQQ, beat(-0.5)), SQQ, { packed: 'q1Zy-_9' })
    expect(readLink(link)).toEqual({ ok: true, content: { figure: { packed: 'q1Zy-_9' }, fields: new Map() } })
  })

  test('every prefix is refused', () => {
    fc.assert(
      fc.property(anyView, (view) => {
        const link = written(view)
        for (let length = 0; length < link.length; length++) expect(readLink(link.slice(0, length)).ok).toBe(false)
      }),
      { ...SEED, numRuns: 60 },
    )
  })

  test('every change of one character is refused', () => {
    const sign = fc.oneof(
      fc.constantFrom(...'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_.%~#é'),
      fc.string({ minLength: 1, maxLength: 1 }),
    )
    fc.assert(
      fc.property(anyView, sign, (view, other) => {
        const link = written(view)
        for (let at = 0; at < link.length; at++) {
          if (link[at] === other) continue
          expect(readLink(link.slice(0, at) + other + link.slice(at + 1)).ok).toBe(false)
        }
      }),
      SEED,
    )
  })

  test('whatever else is refused, and never throws', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 60 }), (text) => {
        expect(readLink(text).ok).toBe(false)
      }),
      SEED,
    )
    expect(readLink('1'.repeat(LONGEST_LINK + 1))).toEqual({ ok: false, reason: 'damaged' })
  })

  test('all in order but the version: newer', () => {
    const body = '2.fsqq'
    expect(readLink(`${body}.${checksum(body)}`)).toEqual({ ok: false, reason: 'newer' })
  })

  test('the demos’ links: short, of signs that every mail program leaves alone', () => {
    const lengths = demos.map((figure) => {
      const link = writeLink(newSession(figure, lessonOf(newSession(figure, beat(0)), figure).range.from), figure, {
        demo: figure.id,
      })
      expect(link).toMatch(/^1\.f[a-z0-9-]+\.[a-z0-9]{7}$/)
      expect(link).toBe(`1.f${figure.id}.${link.slice(-7)}`)
      return link.length
    })
    expect(Math.max(...lengths)).toBeLessThanOrEqual(64)
  })

  test('a busy view of a demo stays far below what is passed on safely', () => {
    fc.assert(
      fc.property(anyView, (view) => {
        expect(written(view).length).toBeLessThanOrEqual(180)
      }),
      SEED,
    )
  })
})

describe('linkedSession(fields, figure): a value that cannot be is refused', () => {
  test.each([
    ['t', '1'],
    ['t', '-1'],
    ['t', '0p5'],
    ['b', '0p3'],
    ['b', '999'],
    ['b', '-5'],
    ['b', 'NaN'],
    ['b', 'Infinity'],
    ['b', '01'],
    ['b', ''],
    ['v', '1'],
    ['v', '999'],
    ['l', '1p5'],
    ['l', '-0p5'],
    ['e', '0p1'],
    ['e', '2'],
    ['o', '001'],
    ['o', ''],
    ['o', '013'],
    ['s', '0-3'],
    ['s', '1-0'],
    ['s', '0'],
    ['w', 'q'],
    ['p', '0'],
    ['c', 'q'],
    ['c', 'constructor'],
    ['n', '1'],
    ['r', ''],
    ['z', '1'],
    ['toString', ''],
  ])('%s %s', (key, text) => {
    expect(linkedSession(new Map([[key, text]]), SQQ)).toBeNull()
  })
  test('slows and quicks in a dance that is counted in numbers', () => {
    expect(linkedSession(new Map([['c', 's']]), walks('waltz', [1, 1, 1]))).toBeNull()
  })
  test('no field: the figure as it is first shown', () => {
    expect(linkedSession(new Map(), SQQ)).toEqual(newSession(SQQ, beat(-0.5)))
  })
})
