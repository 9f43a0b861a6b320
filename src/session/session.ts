import type { Counting, Dance } from '../dance/dance.ts'
import { dances } from '../dance/dances.ts'
import { defaultTempo } from '../dance/defaultTempo.ts'
import { playedTempoRange } from '../dance/playedTempoRange.ts'
import { atSpeed } from '../dance/speed.ts'
import type { Figure } from '../figure/figure.ts'
import type { Seen } from '../scene/view.ts'
import { EARLIEST_PART, LATEST, type Way } from '../transfer/perform.ts'
import { type Beat, beat, type Share, share } from '../units.ts'

/** One panel: a way of dancing the figure. */
export type SessionPanel = { readonly id: string; readonly way: Way }

/** Neighbouring actions, by index, both included. */
export type Steps = { readonly first: number; readonly last: number }

/** All that a lesson is, as plain data: enough to make the same picture again. */
export type Session = {
  /** The figure's id. */
  readonly figure: string
  /** Index into the figure's timings. */
  readonly timing: number
  readonly panels: readonly SessionPanel[]
  /** The panels on the screen from left to right, by index; at least one. */
  readonly order: readonly number[]
  /** The beat at rest; while playing the clock has it. */
  readonly beat: Beat
  readonly barsPerMinute: number
  readonly loop: boolean
  /** The steps that are practised by themselves, over and over; null: the whole figure. */
  readonly steps: Steps | null
  readonly seen: Seen
  /** The other partner's part: the natural opposite of the figure as it is written. */
  readonly opposite: boolean
  readonly counting: Counting
  /** Off: "who is late?": nothing tells which panel is which. */
  readonly names: boolean
}

/** Half a beat late is what the eye and the grid see best; half of the step's time likewise. */
export const DEFAULT_LATE = beat(0.5)
export const DEFAULT_EARLY = share(0.5)

/** The parts of the step's time in which an early dancer is across. */
export const EARLY_PARTS: readonly Share[] = [share(0.25), share(0.5), share(0.75)]
/** How late can be shown, in beats. */
export const LATE_STEPS: readonly Beat[] = [0, 0.25, 0.5, 0.75, 1].map(beat)

const PANELS: readonly SessionPanel[] = [
  { id: 'in time', way: { kind: 'in time' } },
  { id: 'late', way: { kind: 'late', by: DEFAULT_LATE } },
  { id: 'early', way: { kind: 'early', part: DEFAULT_EARLY } },
]

/**
 * Counted as the steps are called. Bars and beats put a bar's number in the place of its first count, which at first sight
 * contradicts the "1" that stands at the step.
 */
const firstCounting = ({ counting }: Dance): Counting => (counting === 'bars and beats' ? 'half beats' : counting)

/** A first look at a figure: three panels, the dance's own tempo and counting. @param at the beat first shown */
export function newSession(figure: Figure, at: Beat): Session {
  const dance = dances[figure.dance]
  return {
    figure: figure.id,
    timing: 0,
    panels: PANELS,
    order: PANELS.map((_, index) => index),
    beat: at,
    barsPerMinute: defaultTempo(dance).barsPerMinute,
    loop: true,
    steps: null,
    seen: 'dancer',
    opposite: false,
    counting: firstCounting(dance),
    names: true,
  }
}

/** 0, 1, … in the panels' own order. */
const rising = (order: readonly number[]): number[] => [...order].sort((a, b) => a - b)

/**
 * Another figure in the same lesson: what is shown, how it is looked at, how late, how early and the loop stay as they
 * were set. The panels stand in their own order again, unless names are off.
 * @param speed of the dance's usual tempo, 1 = all of it
 */
export function withFigure(session: Session, figure: Figure, at: Beat, speed = 1): Session {
  return {
    ...newSession(figure, at),
    barsPerMinute: atSpeed(dances[figure.dance], speed),
    panels: session.panels,
    order: session.names ? rising(session.order) : session.order,
    loop: session.loop,
    seen: session.seen,
    names: session.names,
  }
}

export const withBeat = (session: Session, at: Beat): Session => ({ ...session, beat: at })
/** The whole figure, over and over or once. */
export const withLoop = (session: Session, loop: boolean): Session => ({ ...session, loop, steps: null })
/** @param steps null: the whole figure again */
export const withSteps = (session: Session, steps: Steps | null): Session => ({ ...session, steps })
export const withSeen = (session: Session, seen: Seen): Session => ({ ...session, seen })
export const withOpposite = (session: Session, opposite: boolean): Session => ({ ...session, opposite })
/** @param timing index into the figure's timings; held inside them */
export const withTiming = (session: Session, figure: Figure, timing: number): Session => ({
  ...session,
  timing: Math.min(figure.timings.length - 1, Math.max(0, Math.round(timing))),
})
export const withCounting = (session: Session, counting: Counting): Session => ({ ...session, counting })

/** Held inside what the dance allows (20–125 % of its default). */
export function withTempo(session: Session, figure: Figure, barsPerMinute: number): Session {
  const { from, to } = playedTempoRange(dances[figure.dance])
  return { ...session, barsPerMinute: Math.min(to, Math.max(from, barsPerMinute)) }
}

const withWay = (session: Session, kind: Way['kind'], way: Way): Session => ({
  ...session,
  panels: session.panels.map((panel) => (panel.way.kind === kind ? { ...panel, way } : panel)),
})

/** Every late panel by this much, held in [0, 1] beats. */
export const withLate = (session: Session, by: number): Session =>
  withWay(session, 'late', { kind: 'late', by: beat(Math.min(LATEST, Math.max(0, by))) })

/** Every early panel across in this part of the step's time, held in [¼, 1]. */
export const withEarly = (session: Session, part: number): Session =>
  withWay(session, 'early', { kind: 'early', part: share(Math.min(1, Math.max(EARLIEST_PART, part))) })

/**
 * Other panels on the screen, or another order.
 * @param order from left to right, by index; what names no panel, or one again, is left out
 */
export function withOrder(session: Session, order: readonly number[]): Session {
  const known = [...new Set(order)].filter((index) => session.panels[index] !== undefined)
  return known.length === 0 ? session : { ...session, order: known }
}

/** Names off: nothing tells which is which, and the panels stand in another order. @param order those shown, shuffled */
export function withNamesOff(session: Session, order: readonly number[]): Session {
  return { ...session, names: false, order }
}

/** Names on again; the panels stay where they stand, so that one sees who was who. */
export const revealed = (session: Session): Session => ({ ...session, names: true })
