import type { Convention } from '../dance/dance.ts'
import { dances } from '../dance/dances.ts'
import type { Action, Figure, OwnMoments, Timing } from '../figure/figure.ts'
import { type Beat, beat, sumOfValues, toBeat } from '../units.ts'

/** When an action happens, in beats. leaves < split < full; leaves ≤ touches ≤ split. */
export type Moments = {
  /** The weight leaves the foot it stood on. */
  readonly leaves: Beat
  /** The foot comes to rest in its new place, where somebody has set it; null = as usual, a little before the split. */
  readonly touches: Beat | null
  /** The weight is half way. */
  readonly split: Beat
  /** The weight is over the new foot: the other one could be lifted. */
  readonly full: Beat
}

export type ScheduledAction = {
  readonly index: number
  /** Which action of the figure as it is written: another one only where the figure is danced several times in a row. */
  readonly written: number
  readonly action: Action
  /** As charted: "S", "&", "4-1". */
  readonly sign: string
  /** The count on which it is called. */
  readonly called: Beat
  /** Until the next is called. */
  readonly value: Beat
  readonly moments: Moments
}

export type Schedule = {
  readonly figure: Figure
  readonly timing: Timing
  readonly convention: Convention
  readonly beatsPerBar: number
  /** The count of the bar on which t = 0 lies, 1-based; below 1 where bars are counted from a later round on. */
  readonly firstCount: number
  /** Distance of the grid's points: ½, or ¼ where a call or a moment needs it. */
  readonly grid: Beat
  /** The sum of the beat values. */
  readonly length: Beat
  readonly actions: readonly ScheduledAction[]
}

const HALF = 0.5
const ROUNDING = 1e-9
/** No moment follows another sooner than this, in beats: a curve needs room to rise. */
const SHORTEST = 1 / 48

type Before = { readonly called: number; readonly full: number } | null
type Plan = { leaves: number; split: number; full: number }

const middle = (from: number, to: number): number => (from + to) / 2

/**
 * The plan of one action by its convention, before anything a teacher has set.
 * Split on the count, full on the count: common practice and own judgement; struck: common practice (paso doble).
 */
function planByConvention(convention: Convention, called: number, value: number, before: Before): Plan {
  const close = before !== null && called - before.called < HALF
  switch (convention) {
    case 'split on the count': {
      const usual = called - HALF
      // Longer than a slow: a slow's transfer, then a held line.
      const full = usual + Math.min(value, 2)
      const leaves = close ? before.full : usual
      // A beat and a half is split where a slow is; one that follows an a keeps its own count.
      const split = value === 1.5 ? called + HALF : close && value > HALF ? called : middle(usual, full)
      return { leaves, split, full }
    }
    case 'full on the count': {
      const leaves = before === null ? called - 1 : before.full
      const full = called + Math.max(0, value - 1)
      return { leaves, split: middle(leaves, full), full }
    }
    case 'struck': {
      const leaves = close ? before.full : called - HALF
      return { leaves, split: middle(leaves, called), full: called }
    }
  }
}

/** The plan with what the teacher has set, in order and clear of the action before. */
function withOwnMoments(plan: Plan, called: number, own: OwnMoments, before: Before): Moments {
  const at = (moment: OwnMoments[keyof OwnMoments]) => (moment === undefined ? undefined : called + toBeat(moment))
  const leaves = Math.max(at(own.leaves) ?? plan.leaves, before?.full ?? Number.NEGATIVE_INFINITY)
  const ownSplit = at(own.split)
  const full = Math.max(at(own.full) ?? plan.full, leaves + 2 * SHORTEST, (ownSplit ?? leaves) + SHORTEST)
  const wanted = ownSplit ?? plan.split
  // By more than rounding.
  const fits = wanted - leaves > ROUNDING && full - wanted > ROUNDING
  const split = fits ? wanted : ownSplit === undefined ? middle(leaves, full) : leaves + SHORTEST
  const touches = at(own.touches)
  return {
    leaves: beat(leaves),
    touches: touches === undefined ? null : beat(Math.min(split, Math.max(leaves, touches))),
    split: beat(split),
    full: beat(full),
  }
}

const onHalves = (time: number): boolean => Number.isInteger(time * 2)
const onQuarters = (time: number): boolean => Number.isInteger(time * 4)

/** Quarters are offered where something is called, or set to happen, on them; halves otherwise. */
function gridFor(actions: readonly ScheduledAction[]): Beat {
  const needsQuarters = actions.some(({ called, value, action, moments }) => {
    const set = Object.keys(action.moments).length > 0 ? [moments.leaves, moments.split, moments.full] : []
    return [called, called + value, ...set].some((time) => !onHalves(time) && onQuarters(time))
  })
  return beat(needsQuarters ? 0.25 : 0.5)
}

/**
 * The actions of a figure with their moments.
 * @param timing index into the figure's timings
 * @throws RangeError when there is no such timing
 */
export function schedule(figure: Figure, timing = 0): Schedule {
  const chosen = figure.timings[timing]
  if (chosen === undefined) throw new RangeError(`timing must be in [0, ${figure.timings.length}), got ${timing}`)
  const actions: ScheduledAction[] = []
  let called = 0
  let before: Before = null
  for (const [index, action] of figure.actions.entries()) {
    const exact = chosen.values[index]
    const sign = chosen.signs[index]
    if (exact === undefined || sign === undefined)
      throw new RangeError(`the timing "${chosen.text}" ends before action ${index + 1}`)
    const value = toBeat(exact)
    const moments = withOwnMoments(
      planByConvention(figure.convention, called, value, before),
      called,
      action.moments,
      before,
    )
    actions.push({ index, written: index, action, sign, called: beat(called), value, moments })
    before = { called, full: moments.full }
    called = toBeat(sumOfValues(chosen.values.slice(0, index + 1)))
  }
  return {
    figure,
    timing: chosen,
    convention: figure.convention,
    beatsPerBar: dances[figure.dance].beatsPerBar,
    firstCount: chosen.firstCount,
    grid: gridFor(actions),
    length: beat(called),
    actions,
  }
}
