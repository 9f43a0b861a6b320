import type { Range } from '../clock/clock.ts'
import type { Counting, Dance } from '../dance/dance.ts'
import { dances } from '../dance/dances.ts'
import { defaultTempo } from '../dance/defaultTempo.ts'
import { playedTempoRange } from '../dance/playedTempoRange.ts'
import { atSpeed } from '../dance/speed.ts'
import type { Figure } from '../figure/figure.ts'
import type { Seen } from '../scene/view.ts'
import type { CountInBars } from '../timing/countIn.ts'
import { amountOf, wayOf } from '../transfer/faults.ts'
import { shortestTimes } from '../transfer/shortestTimes.ts'
import type { Way, WayKind } from '../transfer/way.ts'
import { type Beat, type Seconds, seconds } from '../units.ts'

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
  /** The first is in time: what the others are held against; up to `MOST_PANELS`. */
  readonly panels: readonly SessionPanel[]
  /** The panels on the screen from left to right, by index; at least one. */
  readonly order: readonly number[]
  /** The beat at rest; while playing the clock has it. */
  readonly beat: Beat
  readonly barsPerMinute: number
  /** The shortest time in which this dancer carries the weight across. */
  readonly shortest: Seconds
  readonly loop: boolean
  /** The steps that are practised by themselves, over and over; null: the whole figure, or a part of it. */
  readonly steps: Steps | null
  /** From beat to beat, over and over; null: the whole figure, or some steps. */
  readonly part: Range | null
  /** The whole figure follows itself without a stop, where it can. */
  readonly joined: boolean
  /** Bars that are counted in before it begins. */
  readonly countIn: CountInBars
  readonly seen: Seen
  /** The other partner's part: the natural opposite of the figure as it is written. */
  readonly opposite: boolean
  readonly counting: Counting
  /** Off: "who is late?": nothing tells which panel is which. */
  readonly names: boolean
}

/** Side by side there is room for so many. */
export const MOST_PANELS = 4

const PANELS: readonly SessionPanel[] = [
  { id: 'in time', way: { kind: 'in time' } },
  { id: 'late', way: wayOf('late') },
  { id: 'early', way: wayOf('early') },
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
    shortest: shortestTimes.comfortable,
    loop: true,
    steps: null,
    part: null,
    joined: false,
    countIn: 0,
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
    shortest: session.shortest,
    // Chosen steps are steps of the figure that was.
    panels: session.panels.map(({ id, way }) => ({ id, way: wayOf(way.kind, amountOf(way) ?? undefined) })),
    order: session.names ? rising(session.order) : session.order,
    loop: session.loop,
    joined: session.joined,
    countIn: session.countIn,
    seen: session.seen,
    names: session.names,
  }
}

export const withBeat = (session: Session, at: Beat): Session => ({ ...session, beat: at })
/** The whole figure, over and over or once. */
export const withLoop = (session: Session, loop: boolean): Session => ({ ...session, loop, steps: null, part: null })
/** @param steps null: the whole figure again */
export const withSteps = (session: Session, steps: Steps | null): Session => ({ ...session, steps, part: null })
/** From beat to beat, over and over. @param part null: the whole figure again */
export const withPart = (session: Session, part: Range | null): Session => ({ ...session, part, steps: null })
/** The whole figure, without a stop where it can follow itself, or with one. */
export const withJoined = (session: Session, joined: boolean): Session => ({
  ...(joined ? withLoop(session, true) : session),
  joined,
})
export const withCountIn = (session: Session, countIn: CountInBars): Session => ({ ...session, countIn })
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

/** How much of a fault every panel with it shows: held in its range (beats late, or the part of the step's time). */
export const withAmount = (session: Session, kind: WayKind, amount: number): Session => ({
  ...session,
  panels: session.panels.map((panel) =>
    panel.way.kind === kind ? { ...panel, way: wayOf(kind, amount, chosenIn(panel.way)) } : panel,
  ),
})

const chosenIn = (way: Way): readonly number[] => ('on' in way ? (way.on ?? []) : [])

/** Held between the two of `shortestTimes`. */
export const withShortest = (session: Session, shortest: number): Session => ({
  ...session,
  shortest: seconds(Math.min(shortestTimes.comfortable, Math.max(shortestTimes.quickest, shortest))),
})

/** A panel's id: its kind, and a number where that is taken. */
function newId({ panels }: Session, kind: WayKind): string {
  const taken = new Set(panels.map(({ id }) => id))
  for (let k = 1; ; k++) {
    const id = k === 1 ? kind : `${kind} ${k}`
    if (!taken.has(id)) return id
  }
}

/** Another way of dancing in a panel; the first stays in time. @param panel index into the panels */
export function withPanel(session: Session, panel: number, way: Way): Session {
  if (panel < 1 || session.panels[panel] === undefined) return session
  const id = session.panels[panel]?.way.kind === way.kind ? session.panels[panel].id : newId(session, way.kind)
  return { ...session, panels: session.panels.map((one, index) => (index === panel ? { id, way } : one)) }
}

/** One panel more, on the screen at once; with `MOST_PANELS` nothing changes. */
export function withPanelMore(session: Session, way: Way): Session {
  if (session.panels.length >= MOST_PANELS) return session
  const panels = [...session.panels, { id: newId(session, way.kind), way }]
  return { ...session, panels, order: [...session.order, panels.length - 1] }
}

/** One panel less; the first stays, and one is always on the screen. @param panel index into the panels */
export function withPanelLess(session: Session, panel: number): Session {
  if (panel < 1 || session.panels[panel] === undefined) return session
  const order = session.order.flatMap((index) => (index === panel ? [] : [index > panel ? index - 1 : index]))
  return {
    ...session,
    panels: session.panels.filter((_, index) => index !== panel),
    order: order.length > 0 ? order : [0],
  }
}

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
