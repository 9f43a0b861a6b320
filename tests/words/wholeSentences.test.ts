import { describe, expect, test } from 'vitest'
import { bodyWithFeet } from '../../src/pose/body.ts'
import { type Floor, layOutFloor } from '../../src/pose/floor.ts'
import { pose } from '../../src/pose/pose.ts'
import { touchParts } from '../../src/scene/view.ts'
import { faults, wayOf } from '../../src/transfer/faults.ts'
import type { Performance } from '../../src/transfer/performance.ts'
import { performanceWords } from '../../src/words/performanceWords.ts'
import { wayName } from '../../src/words/wayName.ts'
import { type Danced, dancedWay, footOf } from '../tools/dancedWay.ts'
import { demos } from '../tools/demos.ts'
import { beatsOf, sizeOf, stepsOf } from '../tools/readSizes.ts'
import { waysOf } from '../tools/waysOf.ts'

/*
 * What is said of a whole performance is read back by a grammar of its own, written here, and held against the times of its
 * moments, against where the marker stands, and against the weight that is taken. Each clause takes away what it says.
 */

const EXACT = 1e-6
/** Sizes are said to eighths of a beat; less than half of one is not said. */
const HALF_EIGHTH = 1 / 16

/** Where the marker stands between two moves: in beats of the curve, and how far the dancer has got. */
function standing(floor: Floor, { curve: { knots } }: Performance): { lasts: number; from: number; to: number }[] {
  const found: { lasts: number; from: number; to: number }[] = []
  let isUnderWay = false
  let last: { lasts: number; from: number; to: number } | null = null
  for (const [k, { t, p }] of knots.entries()) {
    const next = knots[k + 1]
    if (next === undefined) break
    const [a, b, c] = [p, (p + next.p) / 2, next.p].map((at) => pose(floor, at).weight)
    if (a === undefined || b === undefined || c === undefined) break
    const way = Math.hypot(b.x - a.x, b.y - a.y) + Math.hypot(c.x - b.x, c.y - b.y)
    if (way > 1e-9) {
      if (last !== null && isUnderWay) found.push(last)
      last = null
      isUnderWay = true
    } else if (last === null) last = { lasts: next.t - t, from: p, to: next.p }
    else last = { lasts: last.lasts + next.t - t, from: last.from, to: next.p }
  }
  return found
}

type Wait = { readonly step: number; readonly where: string; readonly lasts: number }

/** What stands longer than the plan does on the same way. */
function waitsOf({ comparison, performance, floor }: Danced): Wait[] {
  const { schedule: planned, ideal } = comparison
  const plan = layOutFloor(planned.figure, ideal.carried, touchParts(comparison), bodyWithFeet(1))
  const rests = standing(plan, ideal)
  return standing(floor, performance).flatMap(({ lasts, from, to }) => {
    const rest = rests.filter((one) => one.from >= from - EXACT && one.to <= to + EXACT)
    const longer = lasts - rest.reduce((sum, one) => sum + one.lasts, 0)
    const isBetween = Math.abs(from - Math.round(from)) < EXACT
    const step = isBetween ? Math.round(from) - 1 : Math.floor(from)
    return longer < HALF_EIGHTH - 1e-9 ? [] : [{ step, where: isBetween ? 'after' : 'in', lasts: longer }]
  })
}

const sizesFit = (said: number, is: number): boolean => Math.abs(said - Math.abs(is)) <= HALF_EIGHTH + 1e-9

/** Each clause takes away what it says from what there is to say; a clause that says nothing, or it twice, is none. */
function checkWhole(one: Danced, at: string): void {
  const { comparison, performance } = one
  const { ideal, schedule: planned } = comparison
  const text = performanceWords(comparison, 0)
  const where = `${at}: ${text}`
  expect(text, where).toMatch(/^[A-Z0-9⅛¼⅜½⅝¾⅞][^.]*\.$/)
  const clauses = text.slice(0, -1).split('; ')
  const first = clauses[0] as string
  clauses[0] = first.slice(0, 1).toLowerCase() + first.slice(1)

  const all = performance.times.map((_, index) => index)
  const ends = all.map((k) => (performance.times[k]?.full ?? 0) - (ideal.times[k]?.full ?? 0))
  const starts = all.map((k) => (performance.times[k]?.leaves ?? 0) - (ideal.times[k]?.leaves ?? 0))
  const is = (by: number): boolean => Math.abs(by) >= HALF_EIGHTH
  const errors = new Set(all.filter((k) => is(ends[k] as number)))
  const begun = new Set(all.filter((k) => (starts[k] as number) >= HALF_EIGHTH && !is(ends[k] as number)))
  const taken = (k: number, performed: Performance): number => performed.carried[k] as number
  const none = new Set(all.filter((k) => taken(k, performance) === 0 && taken(k, ideal) > 0))
  const less = new Set(all.filter((k) => taken(k, performance) > 0 && taken(k, performance) < taken(k, ideal)))
  const wrong = new Set(
    all.filter((k) => footOf(planned.figure, performance.carried, k) !== footOf(planned.figure, ideal.carried, k)),
  )
  // A wait before a step that begins so late is said once, with that step.
  const isSaidLater = ({ where: place, step, lasts }: Wait): boolean =>
    place === 'after' && begun.has(step + 1) && Math.abs((starts[step + 1] as number) - lasts) < EXACT
  const waits = new Map(
    waitsOf(one).flatMap((wait) => (isSaidLater(wait) ? [] : [[`${wait.where} ${wait.step}`, wait.lasts] as const])),
  )
  const isInTime = errors.size + begun.size === 0

  const take = (from: Set<number>, steps: readonly number[], fits: (step: number) => boolean = () => true): void => {
    for (const step of steps) if (!from.delete(step) || !fits(step)) expect.fail(`${where}: step ${step + 1}`)
  }
  const on = (written: string): readonly number[] => {
    const steps = written === 'throughout' ? all : stepsOf(written.replace(/^on /, ''))
    if (written !== 'throughout' && steps.length === all.length && all.length > 1) expect.fail(`${where}: throughout`)
    return steps
  }
  const said: string[] = []
  const grammar: readonly [RegExp, (...said: string[]) => void][] = [
    [/^no change of weight on (steps? .+)$/, (steps = '') => take(none, stepsOf(steps))],
    [/^(steps? .+) with the wrong foot$/, (steps = '') => take(wrong, stepsOf(steps))],
    [
      /^(\S+) of the weight (throughout|on steps? .+)$/,
      (part = '', steps = '') => take(less, on(steps), (k) => taken(k, performance) === sizeOf(part)),
    ],
    [
      /^waits (\S+ beats?) (in|after) (steps? .+)$/,
      (size = '', place = '', steps = '') => {
        for (const step of stepsOf(steps)) {
          const lasts = waits.get(`${place} ${step}`)
          if (lasts === undefined || !sizesFit(beatsOf(size), lasts))
            expect.fail(`${where}: ${place} ${step + 1} ${lasts}`)
          waits.delete(`${place} ${step}`)
        }
      },
    ],
    [
      /^(steps? .+) (begins?) (\S+ beats?) late and (hurr(?:y|ies))$/,
      (steps = '', begins, size = '', hurries) => {
        const indices = stepsOf(steps)
        expect([begins, hurries], where).toEqual(indices.length === 1 ? ['begins', 'hurries'] : ['begin', 'hurry'])
        take(begun, indices, (k) => sizesFit(beatsOf(size), starts[k] as number))
      },
    ],
    [
      /^(?:(\S+) to )?(\S+ beats?) (late|early) (throughout|on steps? .+)$/,
      (least = '', most = '', side = '', steps = '') => {
        const indices = on(steps)
        const sizes = indices.map((k) => Math.abs(ends[k] as number))
        const [from, to] = [least === '' ? beatsOf(most) : sizeOf(least), beatsOf(most)]
        if (!sizesFit(from, Math.min(...sizes)) || !sizesFit(to, Math.max(...sizes))) expect.fail(`${where}: ${sizes}`)
        if (least !== '') expect(from, where).toBeLessThan(to)
        take(errors, indices, (k) => (ends[k] as number) > 0 === (side === 'late'))
      },
    ],
    [/^(hurries, and is in time at the end|otherwise in time|in time throughout)$/, (end = '') => said.push(end)],
  ]
  for (const clause of clauses) {
    const fitting = grammar.flatMap(([says, read]) => {
      const found = says.exec(clause)
      return found === null ? [] : [() => read(...found.slice(1))]
    })
    if (fitting.length !== 1) expect.fail(`${where}: "${clause}" is no clause`)
    fitting[0]?.()
  }
  expect(
    [none, wrong, less, errors, begun].flatMap((left) => [...left]),
    `${where}: left unsaid`,
  ).toEqual([])
  expect([...waits], `${where}: left unsaid`).toEqual([])
  const hurries = isInTime && mostHurried(one) >= 1.25 - EXACT
  const nothing = clauses.length === said.length
  const end = hurries
    ? ['hurries, and is in time at the end']
    : nothing
      ? ['in time throughout']
      : ['otherwise in time']
  expect(said, where).toEqual(isInTime ? end : [])
}

/** How many times quicker than planned the half of an action that is hurried most goes while it goes. */
function mostHurried({ performance, comparison: { ideal } }: Danced): number {
  return Math.max(
    ...performance.times.flatMap(({ leaves, split, full, stands: stop }, k) => {
      const plan = ideal.times[k] as Performance['times'][number]
      const stood = stop === undefined ? 0 : stop.to - stop.from
      const inFirst = stop !== undefined && stop.at < 0.5
      return [
        (plan.split - plan.leaves) / (split - leaves - (inFirst ? stood : 0)),
        (plan.full - plan.split) / (full - split - (inFirst ? 0 : stood)),
      ]
    }),
  )
}

describe('what is said of a whole performance is so, of every demo', () => {
  test.each(faults)('$kind', ({ kind, on }) => {
    for (const figure of demos) {
      for (const way of waysOf(kind, on)) checkWhole(dancedWay(figure, way), `${figure.id}, ${wayName(way)}`)
    }
  })

  test('in time', () => {
    for (const figure of demos) {
      const { comparison } = dancedWay(figure, { kind: 'in time' })
      expect(performanceWords(comparison, 0)).toBe('In time throughout.')
    }
  })
})

describe('wayName: what a picture is called', () => {
  const GRAMMAR =
    /^[A-Z][a-z, ]+?(?: by (?<by>\S+ beats?))?(?:: (?:begins (?<late>\S+ beats?) late|across in (?:a quarter of|half|three quarters of) the step’s time|(?<more>\S+ beats?) more each step|the body waits (?<waits>\S+ beats?)|(?<part>\S+) of the weight|in time))?(?:(?:: |, )(?<steps>steps? [\d, and]+))?$/
  test.each(faults.filter(({ kind }) => kind !== 'gaining'))(
    '$kind: of every amount on offer',
    ({ kind, amount, on }) => {
      for (const much of amount?.choices.filter((choice) => choice > 0) ?? [undefined]) {
        for (const steps of on === 'all' ? [[]] : on === 'one' ? [[2]] : [[], [1], [1, 2], [0, 2, 3]]) {
          const name = wayName(wayOf(kind, much, steps))
          const said = GRAMMAR.exec(name)?.groups
          if (said === undefined) expect.fail(name)
          const { by, late, more, waits, part } = said
          const beats = by ?? late ?? more ?? waits
          if (beats !== undefined) expect(beatsOf(beats), name).toBe(much)
          if (part !== undefined) expect(sizeOf(part), name).toBe(much)
          if (steps.length > 0) expect(stepsOf(said.steps ?? ''), name).toEqual(steps)
        }
      }
    },
  )
  test('nothing of a fault is said to be in time', () => {
    for (const { kind, amount } of faults) {
      if (amount === null) continue
      const none = amount.key === 'by' ? 0 : 1
      expect(wayName(wayOf(kind, none))).toMatch(/by nothing: in time/)
    }
  })
})
