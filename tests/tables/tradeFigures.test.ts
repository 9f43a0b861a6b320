import { describe, expect, test } from 'vitest'
import type { Convention } from '../../src/dance/dance.ts'
import type { Direction, Figure, Foot } from '../../src/figure/figure.ts'
import { readTiming } from '../../src/figure/readTiming.ts'
import { bodyWithFeet } from '../../src/pose/body.ts'
import { layOutFloor } from '../../src/pose/floor.ts'
import { pose } from '../../src/pose/pose.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { perform } from '../../src/transfer/perform.ts'
import { share, sumOfValues, toBeat } from '../../src/units.ts'
import { type ExampleAction, exampleFigure } from '../tools/exampleFigure.ts'
import { type TradeRow, tradeRows } from './tradeRows.ts'

// Sources of the rows: sources.md, beside the table.
const FEET = ['left', 'right'] as const
const named = tradeRows.map((row) => [`${row.dance.name}, ${row.figure}`, row] as const)

/** "3/2" for 72 and 48. */
function fraction(numerator: number, denominator: number): string {
  let [a, b] = [numerator, denominator]
  while (b > 0) [a, b] = [b, a % b]
  return denominator === a ? String(numerator / a) : `${numerator / a}/${denominator / a}`
}

/** Samba's runs: "the one pattern with no S/Q spelling" (ISTD-derived notes on samba); beat values must be given. */
const NAMES_ONLY: readonly string[] = ['PP to CPP Runs']

function readingOf({ figure, timing, dance, values }: TradeRow) {
  const reading = readTiming(timing, dance, NAMES_ONLY.includes(figure) ? values : null)
  if (!reading.ok) throw new Error(`${timing}: ${JSON.stringify(reading.faults)}`)
  return reading
}

describe('the trade’s figures: their timings, as charted', () => {
  test('146 rows of ten dances', () => {
    expect(tradeRows).toHaveLength(146)
    expect(new Set(tradeRows.map(({ dance }) => dance.id)).size).toBe(10)
  })

  test.each(named)('%s: beat values, sum and bars', (_, row) => {
    const { signs, values } = readingOf(row)
    expect(signs).toHaveLength(row.counts)
    expect(values).toEqual(row.values)
    expect(String(row.dance.beatsPerBar)).toBe(row.beatsPerBar)
    const sum = sumOfValues(values)
    expect(fraction(sum, 48)).toBe(row.sum)
    const bars = fraction(sum, 48 * row.dance.beatsPerBar)
    expect(bars).toBe(row.bars)
    expect(bars.includes('/') ? 'no' : 'yes').toBe(row.wholeBars)
  })

  test('each says its timing by its signs, but for samba’s runs', () => {
    const unread = tradeRows.filter(({ timing, dance }) => !readTiming(timing, dance).ok)
    expect(unread.map(({ figure }) => figure)).toEqual(NAMES_ONLY)
  })
})

/** Counts that carry no weight, or part of it, by the row's note: from 0. */
const NOTED: Readonly<Record<string, Readonly<Record<number, ExampleAction>>>> = {
  'Hesitation Change': { 5: 'brush' },
  'Cross Hesitation (from PP)': { 1: { direction: 'close', weight: share(0) }, 2: 'hold' },
  'Drag Hesitation': { 2: { direction: 'close', weight: share(0) } },
  'Double Reverse Spin – leader': { 2: { direction: 'close', weight: share(0) } },
  'Promenade Link': { 2: 'tap' },
  'Brush Tap': { 2: 'brush', 3: 'tap' },
  'Natural Twist Turn': { 4: { direction: 'in place', weight: share(0.5) } },
  'Natural Turn with Hesitation': { 5: 'brush' },
  // The foot is drawn to the other one before it takes the weight.
  Drag: { 2: 'brush' },
  'Rock with step-tap chassés (variant)': { 3: 'tap', 5: 'tap' },
}

/** "fewer weight changes than counts", and the table does not say how many. */
const CHANGES_NOT_SAID: readonly string[] = ['Drag']

/** Steps as they might be danced, first step first and over again; & and a are half closed, closed in the waltz. */
const USUAL_STEPS: Readonly<Record<string, readonly Direction[]>> = {
  waltz: ['forward', 'side', 'close'],
  'viennese waltz': ['forward', 'side', 'cross in front', 'back', 'side', 'close'],
  tango: ['forward', 'side', 'close'],
  foxtrot: ['forward'],
  quickstep: ['forward', 'side', 'close', 'side'],
  samba: ['forward', 'in place', 'side'],
  'cha-cha-cha': ['forward', 'in place', 'side'],
  rumba: ['forward', 'in place', 'side'],
  'paso doble': ['in place', 'side', 'close', 'forward'],
  jive: ['back', 'in place', 'side'],
}

function actionsOf({ dance, figure, firstWay }: TradeRow, signs: readonly string[]): readonly ExampleAction[] {
  const usual = USUAL_STEPS[dance.id] ?? []
  const splits = (index: number): boolean => signs[index] === '&' || signs[index] === 'a'
  return signs.map((_, index) => {
    const noted = NOTED[figure]?.[index]
    if (noted) return noted
    if (index === 0 && firstWay !== '') return firstWay === 'back' ? 'back' : 'cross behind'
    if (splits(index)) return dance.convention === 'split on the count' ? 'close' : 'half close'
    // A chassé begins and ends to the side.
    if (splits(index + 1) || splits(index - 1)) return 'side'
    return usual[index % usual.length] as Direction
  })
}

const danced = tradeRows.flatMap((row) =>
  row.firstFeet.map((foot) => {
    const { signs } = readingOf(row)
    const options = { firstFoot: foot, role: row.role }
    const figure = exampleFigure(row.dance.id, row.values.map(toBeat), actionsOf(row, signs), options)
    return [`${row.dance.name}, ${row.figure}, ${foot} foot first`, row, figure] as const
  }),
)

/**
 * When a step of each length leaves, is split and is full, in beats from its count: the table of the convention "split
 * on the count" (common practice), a beat and a half and longer by our own judgement.
 */
const SPLIT_ON_COUNT: Readonly<Record<string, readonly [number, number, number]>> = {
  '1/2': [-0.5, -0.25, 0],
  '1': [-0.5, 0, 0.5],
  '2': [-0.5, 0.5, 1.5],
}
/** Full on the count, and a beat later in 4-1 (FAQ 19, the 2 beat in rumba and cha-cha). */
const FULL_ON_COUNT: Readonly<Record<string, number>> = { '1/4': 0, '1/2': 0, '3/4': 0, '1': 0, '2': 1 }

function checkSlots(figure: Figure, convention: Convention): void {
  const { actions } = schedule(figure)
  let called = 0
  let fullBefore = -1
  for (const { moments, value } of actions) {
    const { leaves, split, full } = moments
    const length = fraction(value * 48, 48)
    if (convention === 'split on the count') {
      expect([leaves, split, full].map((t) => t - called)).toEqual(SPLIT_ON_COUNT[length])
      if (called > 0) expect(leaves, 'slots abut').toBe(fullBefore)
    } else if (convention === 'full on the count') {
      expect([leaves, full - called]).toEqual([fullBefore, FULL_ON_COUNT[length]])
      expect(split - leaves).toBe(full - split)
    } else {
      expect([leaves, split, full].map((t) => t - called)).toEqual([-0.5, -0.25, 0])
      if (called > 0) expect(leaves - fullBefore, 'half a beat of stillness').toBe(0.5)
    }
    called += value
    fullBefore = full
  }
}

const FINE = 1 / 32

function checkPoses(figure: Figure, standsAtEnd: Foot | null): void {
  const { curve, carried, times } = perform(schedule(figure), { kind: 'in time' })
  const untouched = figure.actions.map(() => null)
  const floor = layOutFloor(figure, carried, untouched, bodyWithFeet(1))
  const n = figure.actions.length
  const [from, to] = [times[0]?.leaves ?? 0, times.at(-1)?.full ?? 0]
  let before = pose(floor, 0)
  let pBefore = 0
  for (let t = from; t <= to + 0.5; t += FINE) {
    const p = curve.at(t)
    const now = pose(floor, p)
    if (p < pBefore) expect.fail(`progress falls from ${pBefore} to ${p} at ${t}`)
    if (Math.abs(now.left.load + now.right.load - 1) > 1e-12) expect.fail(`loads do not add up to 1 at ${t}`)
    for (const foot of FEET) {
      const [a, b] = [before[foot], now[foot]]
      if (b.load < 0 || b.load > 1 || (!b.onFloor && b.load !== 0)) expect.fail(`${foot}: a load of ${b.load} at ${t}`)
      const moved = Math.hypot(b.x - a.x, b.y - a.y) + Math.abs(b.heading - a.heading)
      if (a.load > 0 && b.load > 0 && moved > 1e-12) expect.fail(`the ${foot} foot moves under load at ${t}`)
    }
    before = now
    pBefore = p
  }
  expect([curve.at(from), pBefore]).toEqual([0, n])
  if (standsAtEnd !== null) expect(before[standsAtEnd].load).toBe(1)
}

describe('the trade’s figures, scheduled and posed with steps as they might be danced', () => {
  test('164 ways: those danced from either foot twice', () => {
    expect(danced).toHaveLength(164)
  })

  test.each(danced)('%s: each step has its time, and they abut or rest', (_, row, figure) => {
    checkSlots(figure, row.dance.convention)
    expect(fraction(schedule(figure).length * 48, 48)).toBe(row.sum)
  })

  test.each(danced)('%s: the weight goes on, and nothing that carries it moves', (_, row, figure) => {
    const other = figure.firstFoot === 'left' ? 'right' : 'left'
    const changes = figure.actions.filter(({ weight }) => weight > 0).length
    if (CHANGES_NOT_SAID.includes(row.figure)) expect(changes).toBeLessThan(row.counts)
    else expect(changes).toBe(row.changes)
    checkPoses(figure, changes % 2 === 1 ? figure.firstFoot : other)
  })

  test.each(danced)('%s: the foot that steps changes with the weight, not with the count', (_, __, figure) => {
    const carried = figure.actions.map(({ weight }) => weight)
    const untouched = figure.actions.map(() => null)
    const { actions } = layOutFloor(figure, carried, untouched, bodyWithFeet(1))
    const other = figure.firstFoot === 'left' ? 'right' : 'left'
    let changes = 0
    for (const [index, { foot }] of actions.entries()) {
      expect(foot).toBe(changes % 2 === 0 ? figure.firstFoot : other)
      if ((carried[index] ?? 0) > 0) changes++
    }
  })
})
