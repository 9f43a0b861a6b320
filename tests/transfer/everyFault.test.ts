import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Figure } from '../../src/figure/figure.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { behind, momentErrors } from '../../src/transfer/comparison.ts'
import type { Curve } from '../../src/transfer/curve.ts'
import { type FaultKind, faults, wayOf } from '../../src/transfer/faults.ts'
import { perform } from '../../src/transfer/perform.ts'
import type { Performance } from '../../src/transfer/performance.ts'
import type { Way } from '../../src/transfer/way.ts'
import { demos } from '../tools/demos.ts'
import { generatedFigure, THOUSAND } from '../tools/generateFigure.ts'
import { generatedWay } from '../tools/generateWay.ts'
import { near } from '../tools/near.ts'

const MINUTE = 60_000
const KINDS = faults.map(({ kind }) => kind)
const LATE: readonly FaultKind[] = ['late', 'hurrying', 'slip', 'foot first', 'placed', 'stops']
const EARLY: readonly FaultKind[] = ['early', 'ahead', 'gaining']
const DYNAMICS: readonly FaultKind[] = ['swelling', 'arrested']

type Danced = { readonly danced: Performance; readonly ideal: Performance; readonly grid: number }

/** A way danced beside its plan. */
function dance(figure: Figure, way: Way, least: number, timing = 0): Danced {
  const plan = schedule(figure, timing)
  return { danced: perform(plan, way, least), ideal: perform(plan, { kind: 'in time' }), grid: plan.grid }
}

const LEAST = fc.double({ min: 0.05, max: 2, noNaN: true })

/** The check on every demo in each of its timings, on all steps and on the last alone, and on 500 generated figures. */
function onAll(kind: FaultKind, check: (danced: Danced) => void): void {
  for (const figure of demos) {
    for (const timing of figure.timings.keys()) {
      for (const on of [[], [figure.actions.length - 1]]) {
        check(dance(figure, wayOf(kind, undefined, on), 0.84, timing))
      }
    }
  }
  fc.assert(
    fc.property(generatedFigure(), generatedWay(kind), LEAST, (figure, way, least) => check(dance(figure, way, least))),
    { ...THOUSAND, numRuns: 500 },
  )
}

/**
 * The two ends of the curve between two knots, seen from inside alone: the cubic through four of its points carried on.
 * So a jump or a corner at a knot cannot hide behind how a knot itself is evaluated.
 */
function pieceEnds(curve: Curve, from: number, to: number) {
  const quarter = (to - from) / 4
  const [f0, f1, f2, f3] = [0, 1, 2, 3].map((k) => curve.at(from + k * quarter)) as [number, number, number, number]
  const [d1, d2, d3] = [f1 - f0, f2 - 2 * f1 + f0, f3 - 3 * f2 + 3 * f1 - f0]
  return {
    rising: f1 >= f0 - 1e-12 && f2 >= f1 - 1e-12 && f3 >= f2 - 1e-12,
    begins: { p: f0, slope: (d1 - d2 / 2 + d3 / 3) / quarter },
    ends: { p: f0 + 4 * d1 + 6 * d2 + 4 * d3, slope: (d1 + 3.5 * d2 + (13 / 3) * d3) / quarter },
    /** What is left of a slope by the rounding of p. */
    rounding: 1e-13 / quarter,
  }
}

/** One smooth way from 0 to the last action, standing at both ends. */
function isSmooth({ curve, times }: Performance): void {
  const { knots } = curve
  near(curve.at(curve.from), 0, 0)
  near(curve.at(curve.to), times.length, 0)
  let before = { p: 0, slope: 0, rounding: 0 }
  for (const [k, knot] of knots.entries()) {
    const next = knots[k + 1]
    near(before.p, knot.p, 1e-11, 'from the left, knot', k)
    if (next === undefined) {
      near(before.slope, 0, 1e-6 + before.rounding, 'the slope at the end')
      continue
    }
    const { rising, begins, ends, rounding } = pieceEnds(curve, knot.t, next.t)
    if (!rising) expect.fail(`it goes back after knot ${k}, at ${knot.t}`)
    near(begins.p, knot.p, 1e-11, 'from the right, knot', k)
    near(begins.slope, before.slope, 1e-6 + rounding + before.rounding, 'the slope at knot', k)
    before = { ...ends, rounding }
  }
}

/** Where the plan is at `t`, straight from moment to moment: what the curve rounds off. */
function straight({ times }: Performance, t: number): number {
  let p = 0
  for (const { leaves, split, full } of times) {
    for (const [from, to] of [
      [leaves, split],
      [split, full],
    ] as const) {
      if (t <= from) return p
      if (t < to) return p + (0.5 * (t - from)) / (to - from)
      p += 0.5
    }
  }
  return p
}

/**
 * A curve that stops where the plan goes on has to brake for it: two monotone cubics over the same half of an action, one
 * ending at 0 and the other at up to twice the mean, differ by at most 4/27 · 2 · ½ of an action (exact, by calculus).
 */
const BRAKING = 4 / 27

function keepsTo({ danced, ideal, grid }: Danced, side: 1 | -1): void {
  for (const { by, moment, index } of momentErrors(danced, ideal)) {
    if (side * by < -1e-12) expect.fail(`${moment} of action ${index + 1} is off by ${by}`)
  }
  for (const { t, p } of danced.curve.knots) {
    const ahead = side * (p - straight(ideal, t))
    if (ahead > 1e-9) expect.fail(`at knot ${t} it is on the wrong side of the plan by ${ahead}`)
  }
  const from = Math.min(danced.curve.from, ideal.curve.from)
  for (let t = from; t <= danced.curve.to; t += grid / 4) {
    const ahead = side * (danced.curve.at(t) - ideal.curve.at(t))
    if (ahead > BRAKING) expect.fail(`at ${t} it is on the wrong side of the plan by ${ahead}`)
  }
}

/** Timing is not dynamics: a profile bends the path between checkpoints and leaves the checkpoints where they are. */
function keepsCheckpoints({ danced, ideal }: Danced): void {
  for (const { t, p } of ideal.curve.knots) near(danced.curve.at(t), p, 1e-12, 'at', t)
  for (const { by } of momentErrors(danced, ideal)) near(by, 0, 0)
}

describe('perform(every demo and 500 generated figures, any fault): one way, never back, smooth at every knot', {
  timeout: MINUTE,
}, () => {
  const smooth = (all: Danced) => isSmooth(all.danced)
  test.each(KINDS.filter((kind) => ![...LATE, ...EARLY, ...DYNAMICS].includes(kind)))('%s', (kind) => {
    onAll(kind, smooth)
  })
  // By the rules. Between knots by no more than it brakes.
  test.each(LATE)('%s: and no moment and no knot before the plan', (kind) => {
    onAll(kind, (all) => {
      smooth(all)
      keepsTo(all, 1)
    })
  })
  test.each(EARLY)('%s: and no moment and no knot after the plan', (kind) => {
    onAll(kind, (all) => {
      smooth(all)
      keepsTo(all, -1)
    })
  })
  test.each(DYNAMICS)('%s: and through every knot of the plan, no moment off', (kind) => {
    onAll(kind, (all) => {
      smooth(all)
      keepsCheckpoints(all)
    })
  })
})

// As it is said at a grid point: to an eighth of a beat.
test.each([...LATE, ...EARLY])('%s never reads as the other at a half beat or quarter of a demo', (kind) => {
  const side = LATE.includes(kind) ? 1 : -1
  for (const figure of demos) {
    for (const { danced, ideal, grid } of [0.3, 0.84, 1.4].map((least) => dance(figure, wayOf(kind), least))) {
      for (let t = Math.floor(danced.curve.from); t <= danced.curve.to; t += grid) {
        const said = Math.round(behind(danced, ideal, t) * 8) / 8
        if (side * said < 0) expect.fail(`${figure.id} at ${t}: ${said}`)
      }
    }
  }
})

test('late on every step is nowhere before the plan, ahead nowhere after it', () => {
  for (const [kind, side] of [
    ['late', 1],
    ['ahead', -1],
  ] as const) {
    for (const figure of demos) {
      const { danced, ideal } = dance(figure, wayOf(kind), 0.5)
      for (let t = ideal.curve.from - 1; t <= danced.curve.to + 1; t += 1 / 16) {
        const wrong = side * (danced.curve.at(t) - ideal.curve.at(t))
        if (wrong > 1e-12) expect.fail(`${kind}, ${figure.id} at ${t}: by ${wrong}`)
      }
    }
  }
})

test('half way between two knots swelling has less done than the plan, arrested more (own judgement: 30 %, 85 %)', () => {
  const at = (kind: FaultKind, t: number) => dance(demos[0] as Figure, wayOf(kind), 1).danced.curve.at(t)
  // S Q Q: a quarter of the slow is done on its count.
  expect(at('swelling', -0.25)).toBeCloseTo(0.3 * 0.25, 12)
  expect(at('arrested', -0.25)).toBeCloseTo(0.85 * 0.25, 12)
})
