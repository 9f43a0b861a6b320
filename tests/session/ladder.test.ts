import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { DanceId } from '../../src/dance/dance.ts'
import { danceList, dances } from '../../src/dance/dances.ts'
import { defaultTempo } from '../../src/dance/defaultTempo.ts'
import { secondsPerBeat } from '../../src/dance/secondsPerBeat.ts'
import { atSpeed } from '../../src/dance/speed.ts'
import {
  afterLoop,
  back,
  hold,
  type Ladder,
  type LadderWishes,
  newLadder,
  remembered,
  restored,
  rungOf,
  shortestStep,
  speedsOf,
  startSpeed,
  up,
} from '../../src/session/ladder.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { demos } from '../tools/demos.ts'
import { walks } from '../tools/exampleFigure.ts'
import { near } from '../tools/near.ts'

const THOUSAND = { numRuns: 1000, seed: 20261202 } as const
const anyDance = fc.constantFrom(...danceList)
const anyNumber = fc.oneof(
  fc.double({ min: -1, max: 3, noNaN: true }),
  fc.integer({ min: -5, max: 200 }),
  fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0.5, 1),
)
const maybe = fc.option(anyNumber, { nil: undefined, freq: 3 })
const anyWishes: fc.Arbitrary<LadderWishes> = fc
  .record({ from: maybe, to: maybe, steps: maybe, loops: maybe, countIn: maybe, onTap: fc.boolean() })
  .map((wishes) => Object.fromEntries(Object.entries(wishes).filter(([, value]) => value !== undefined)))
const anyLadder = fc.tuple(anyDance, anyWishes).map(([dance, wishes]) => newLadder(dance, wishes))

const ACTS: Readonly<Record<string, (ladder: Ladder) => Ladder>> = {
  afterLoop,
  hold: (ladder) => hold(ladder, true),
  release: (ladder) => hold(ladder, false),
  back,
  up,
}
const anyActs = fc.array(fc.constantFrom(...Object.keys(ACTS)), { maxLength: 80 })
const acted = (ladder: Ladder, acts: readonly string[]): Ladder =>
  acts.reduce((now, act) => (ACTS[act] as (ladder: Ladder) => Ladder)(now), ladder)
const times = (count: number, ladder: Ladder, act: (ladder: Ladder) => Ladder): Ladder =>
  Array.from({ length: count }).reduce<Ladder>((now) => act(now), ladder)

const foxtrot = (wishes: LadderWishes = {}) =>
  newLadder(dances.foxtrot, { from: 0.5, to: 1, steps: 6, loops: 4, ...wishes })

describe('newLadder(dance, wishes)', () => {
  test('from half to full in six: 50, 60, … 100 %', () => {
    expect(speedsOf(foxtrot()).map((speed) => Math.round(speed * 1e9) / 1e9)).toEqual([0.5, 0.6, 0.7, 0.8, 0.9, 1])
  })
  test('each dance as usual: first speed with a step of a beat, of half of one, of a quarter; bars counted in', () => {
    const table = danceList.map((dance) => {
      const { to, steps, loops, countIn, onTap } = newLadder(dance)
      expect([to, steps, loops, onTap]).toEqual([1, 6, 4, false])
      const starts = [1, 0.5, 0.25].map((shortest) => Math.round(newLadder(dance, { shortest }).from * 100))
      return `${dance.id}: ${starts.join(' ')}; ${countIn}`
    })
    // Seconds a beat × its part / 0.42 s, cut to 5 %, in 30 to 70: cha-cha-cha ½ beat 0.242 / 0.42 = 0.58; samba ¼ 0.147 / 0.42.
    expect(table).toEqual([
      'waltz: 70 70 40; 1',
      'tango: 70 55 30; 1',
      'viennese waltz: 70 40 30; 2',
      'foxtrot: 70 60 30; 1',
      'quickstep: 70 35 30; 2',
      'samba: 70 70 35; 2',
      'cha-cha-cha: 70 55 30; 1',
      'rumba: 70 65 30; 1',
      'paso doble: 70 55 30; 2',
      'jive: 70 40 30; 2',
      'exercise: 70 70 55; 1',
    ])
  })
  test('where it is not held, the step that it went by lasts 0.42 s at the first speed, and 5 % faster less', () => {
    for (const dance of danceList) {
      for (const beats of [0.25, 0.5, 0.75, 1]) {
        const from = startSpeed(dance, beats)
        const lasts = (speed: number) => (beats * secondsPerBeat(dance, defaultTempo(dance).barsPerMinute)) / speed
        if (from > 0.3) expect(lasts(from)).toBeGreaterThan(0.42 - 1e-6)
        if (from < 0.7) expect(lasts(from + 0.05)).toBeLessThan(0.42)
      }
    }
  })
  test('shortestStep(schedule): a run of quicks has a beat, a chassé’s & half a beat, a samba’s 2 a quarter', () => {
    const of = (part: string) => {
      const figure = demos.find(({ id }) => id.includes(part))
      return figure === undefined ? null : shortestStep(schedule(figure))
    }
    expect(['quick-run', 'waltz-chasse', 'samba-whisks'].map(of)).toEqual([1, 0.5, 0.25])
    expect(startSpeed(dances.jive, shortestStep(schedule(walks('jive', [1, 1, 0.75, 0.25, 1]))))).toBe(0.3)
  })
  test('any wishes: within what can be played, strictly rising, from first to last exactly', () => {
    fc.assert(
      fc.property(anyDance, anyWishes, (dance, wishes) => {
        const ladder = newLadder(dance, wishes)
        const speeds = speedsOf(ladder)
        expect(speeds).toHaveLength(ladder.steps)
        expect(speeds.at(-1)).toBe(ladder.to)
        if (ladder.steps > 1) expect(speeds[0]).toBe(ladder.from)
        for (const [k, speed] of speeds.entries()) {
          if (k > 0) expect(speed).toBeGreaterThan(speeds[k - 1] as number)
          near(atSpeed(dance, speed), speed * defaultTempo(dance).barsPerMinute, 1e-9)
        }
        expect([1, 2]).toContain(ladder.countIn)
        for (const whole of [ladder.steps, ladder.loops]) expect(Number.isInteger(whole) && whole >= 1).toBe(true)
      }),
      THOUSAND,
    )
  })
  test('from at or above to: one speed', () => {
    expect(speedsOf(foxtrot({ from: 1.1, to: 0.8 }))).toEqual([0.8])
  })
})

describe('going up', () => {
  test('loop for loop, with a count-in before each speed only', () => {
    const seen: string[] = []
    let ladder = foxtrot({ steps: 2, loops: 2 })
    for (let k = 0; k < 6; k++) {
      const { number, of, loop, loops, countIn, isThrough } = rungOf(ladder)
      seen.push(`${number}/${of} ${loop}/${loops} ${countIn} ${isThrough}`)
      ladder = afterLoop(ladder)
    }
    expect(seen).toEqual([
      '1/2 1/2 1 false',
      '1/2 2/2 0 false',
      '2/2 1/2 1 false',
      '2/2 2/2 0 false',
      '2/2 2/2 0 true',
      '2/2 2/2 0 true',
    ])
  })
  test('through after steps × loops, not a loop sooner', () => {
    fc.assert(
      fc.property(anyLadder, (made) => {
        const ladder = { ...made, onTap: false }
        const all = ladder.steps * ladder.loops
        expect(rungOf(times(all - 1, ladder, afterLoop)).isThrough).toBe(false)
        const end = rungOf(times(all, ladder, afterLoop))
        expect([end.isThrough, end.speed, end.number]).toEqual([true, ladder.to, ladder.steps])
      }),
      { ...THOUSAND, numRuns: 200 },
    )
  })
  test('any sequence of acts keeps it in range, and only the rung, the loops and the hold change', () => {
    fc.assert(
      fc.property(anyLadder, anyActs, (ladder, acts) => {
        const now = acted(ladder, acts)
        expect(now.rung >= 0 && now.rung < now.steps && Number.isInteger(now.rung)).toBe(true)
        expect(now.done >= 0 && now.done <= now.loops && Number.isInteger(now.done)).toBe(true)
        expect({ ...now, rung: 0, done: 0, held: false }).toEqual(ladder)
        const { speed, loop, loops, countIn } = rungOf(now)
        expect(speed).toBe(speedsOf(ladder)[now.rung])
        expect(loop >= 1 && loop <= loops).toBe(true)
        expect(countIn > 0).toBe(now.done === 0)
      }),
      THOUSAND,
    )
  })
  test('held, it never climbs by itself; let go, it climbs after the next loop if all are done', () => {
    fc.assert(
      fc.property(anyLadder, anyActs, fc.integer({ min: 1, max: 300 }), (ladder, acts, loops) => {
        const held = hold(acted(ladder, acts), true)
        const later = times(loops, held, afterLoop)
        expect(later.rung).toBe(held.rung)
        if (later.done < later.loops || later.onTap || later.rung === later.steps - 1) return
        expect(afterLoop(hold(later, false)).rung).toBe(held.rung + 1)
      }),
      THOUSAND,
    )
  })
  test('on a tap only: waits with all loops done, and goes up by `up` alone', () => {
    fc.assert(
      fc.property(anyLadder, fc.integer({ min: 0, max: 300 }), (made, loops) => {
        const ladder = { ...made, onTap: true }
        const later = times(loops, ladder, afterLoop)
        expect(later.rung).toBe(0)
        expect(rungOf(later).waits).toBe(loops >= ladder.loops && ladder.steps > 1)
        expect(up(later).rung).toBe(Math.min(1, ladder.steps - 1))
      }),
      THOUSAND,
    )
  })
  test('back after up is the same speed again, from its first loop on; back at the lowest begins it anew', () => {
    fc.assert(
      fc.property(anyLadder, anyActs, (ladder, acts) => {
        const now = acted(ladder, acts)
        if (now.rung < now.steps - 1) expect(back(up(now))).toEqual({ ...now, done: 0 })
        expect(times(now.steps, now, back)).toEqual({ ...now, rung: 0, done: 0 })
      }),
      THOUSAND,
    )
  })
})

describe('remembered(ladder) and restored(dance, kept)', () => {
  const json = (value: unknown): unknown => JSON.parse(JSON.stringify(value))
  test('through JSON: the same ladder at the same rung, from its first loop on, not held', () => {
    fc.assert(
      fc.property(anyDance, anyWishes, anyActs, (dance, wishes, acts) => {
        const now = acted(newLadder(dance, wishes), acts)
        expect(restored(dance, json(remembered(now)))).toEqual({ ...now, done: 0, held: false })
      }),
      THOUSAND,
    )
  })
  test.each([
    [null],
    [undefined],
    [7],
    ['ladder'],
    [[]],
    [{}],
    [{ ...remembered(foxtrot()), rung: '2' }],
    [{ ...remembered(foxtrot()), to: null }],
    [{ ...remembered(foxtrot()), onTap: 1 }],
    [{ ...remembered(foxtrot()), steps: Number.NaN }],
    [Object.create(remembered(foxtrot()))],
  ])('%j is none: a new one', (kept) => {
    expect(restored(dances.foxtrot, kept, { shortest: 0.5 })).toEqual(newLadder(dances.foxtrot, { shortest: 0.5 }))
  })
  test('out of range: held in it', () => {
    const kept = { from: 0, to: 9, steps: 1e9, loops: -4, countIn: 77, onTap: false, rung: 4000 }
    const ladder = restored(dances.foxtrot, kept)
    expect(ladder).toMatchObject({ to: 1.25, steps: 20, loops: 1, countIn: 2, rung: 19 })
    expect(ladder.from).toBeCloseTo(0.2, 9)
  })
  test('another dance’s ladder can be played in this one', () => {
    fc.assert(
      fc.property(anyDance, anyDance, anyWishes, (one, other, wishes) => {
        const id: DanceId = other.id
        const ladder = restored(dances[id], json(remembered(newLadder(one, wishes))))
        for (const speed of speedsOf(ladder)) {
          near(atSpeed(other, speed), speed * defaultTempo(other).barsPerMinute, 1e-9)
        }
      }),
      THOUSAND,
    )
  })
})
