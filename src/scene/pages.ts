import type { Floor } from '../pose/floor.ts'
import { pose } from '../pose/pose.ts'
import { turn } from '../pose/vector.ts'

/** A run of actions that is framed as one picture. */
export type Page = {
  readonly first: number
  readonly last: number
  /** The page stands from this beat on, until the next one's. */
  readonly from: number
}

/** Bounds on the floor as it lies in the panel, metres. */
export type Box = { readonly left: number; readonly right: number; readonly low: number; readonly high: number }

/** Feet are put down at ⅜ of an action and collected by the next one's ⅝: eighths find every place where a foot rests. */
const SAMPLES_AN_ACTION = 8

const NOTHING: Box = {
  left: Number.POSITIVE_INFINITY,
  right: Number.NEGATIVE_INFINITY,
  low: Number.POSITIVE_INFINITY,
  high: Number.NEGATIVE_INFINITY,
}

const around = (a: Box, b: Box): Box => ({
  left: Math.min(a.left, b.left),
  right: Math.max(a.right, b.right),
  low: Math.min(a.low, b.low),
  high: Math.max(a.high, b.high),
})

/**
 * What each action takes up, with the floor turned to the right by `turned` radians.
 * @returns one box an action, and before them the start's
 */
export function actionBoxes(floors: readonly Floor[], turned: number): Box[] {
  const count = floors[0]?.actions.length ?? 0
  const at = (floor: Floor, p: number): Box => {
    const { left, right } = pose(floor, p)
    return [left, right]
      .map((foot) => turn(foot, turned))
      .reduce((box, { x, y }) => around(box, { left: x, right: x, low: y, high: y }), NOTHING)
  }
  const start = floors.map((floor) => at(floor, 0)).reduce(around, NOTHING)
  const actions = Array.from({ length: count }, (_, index) => {
    let box = NOTHING
    for (const floor of floors) {
      for (let k = 0; k <= SAMPLES_AN_ACTION; k++) box = around(box, at(floor, index + k / SAMPLES_AN_ACTION))
    }
    return box
  })
  return [start, ...actions]
}

/**
 * What a page takes up. It also holds the action before its first: where one comes from, and where one is who comes late.
 * @param boxes as `actionBoxes` gives them
 * @param margin around the feet's middles, metres
 */
export function pageBox(boxes: readonly Box[], { first, last }: Pick<Page, 'first' | 'last'>, margin: number): Box {
  const { left, right, low, high } = boxes.slice(Math.max(0, first), last + 2).reduce(around, NOTHING)
  return { left: left - margin, right: right + margin, low: low - margin, high: high + margin }
}

/**
 * Cuts actions into as few pages as hold them, all about alike in length.
 * @param steps the actions, first and last included
 * @param fits whether a run of actions can be framed; a single action always stands on its own
 * @param fullAt the beat at which the plan has an action done: there the page turns
 */
export function pagesOf(
  steps: { readonly first: number; readonly last: number },
  fits: (first: number, last: number) => boolean,
  fullAt: (action: number) => number,
): Page[] {
  const cut = (most: number): { first: number; last: number }[] => {
    const runs: { first: number; last: number }[] = []
    for (let first = steps.first; first <= steps.last; ) {
      let last = first
      while (last < steps.last && last - first + 1 < most && fits(first, last + 1)) last++
      runs.push({ first, last })
      first = last + 1
    }
    return runs
  }
  const length = steps.last - steps.first + 1
  const fewest = cut(length)
  const even = cut(Math.ceil(length / fewest.length))
  const runs = even.length === fewest.length ? even : fewest
  return runs.map(({ first, last }, k) => ({
    first,
    last,
    from: k === 0 ? Number.NEGATIVE_INFINITY : fullAt(first - 1),
  }))
}

/** The page that stands at a beat. @param pages at least one */
export function pageAt(pages: readonly Page[], t: number): number {
  return Math.max(
    0,
    pages.findLastIndex(({ from }) => t >= from - 1e-9),
  )
}
