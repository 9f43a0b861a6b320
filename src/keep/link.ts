import type { Counting } from '../dance/dance.ts'
import { dances } from '../dance/dances.ts'
import { playedTempoRange } from '../dance/playedTempoRange.ts'
import type { Figure } from '../figure/figure.ts'
import type { Seen } from '../scene/view.ts'
import { lessonOf } from '../session/lesson.ts'
import { loopRange } from '../session/loopRange.ts'
import { MOST_PANELS, newSession, type Session, withAmount, withPanelMore, withShortest } from '../session/session.ts'
import { COUNT_IN_BARS } from '../timing/countIn.ts'
import { schedule } from '../timing/schedule.ts'
import { amountOf, faultOf, wayOf } from '../transfer/faults.ts'
import type { Way, WayKind } from '../transfer/way.ts'
import { beat } from '../units.ts'
import { checksum } from './checksum.ts'

/** Longer addresses are cut by some of the programs that pass them on. */
export const LONGEST_LINK = 1800

const VERSION = '1'

/** Which figure: one that every page has, or one that travels along as packed text. */
export type LinkedFigure = { readonly demo: string } | { readonly packed: string }

/** What a link says, its form and checksum in order, its values not yet looked at. */
export type LinkContent = { readonly figure: LinkedFigure; readonly fields: ReadonlyMap<string, string> }

/** `newer`: written by a version that is not known here; `damaged`: cut, changed, or no link at all. */
export type LinkReading =
  | { readonly ok: true; readonly content: LinkContent }
  | { readonly ok: false; readonly reason: 'damaged' | 'newer' }

const COUNTINGS: Readonly<Record<string, Counting>> = { s: 'slows and quicks', b: 'bars and beats', h: 'half beats' }
const countingKey = (counting: Counting): string =>
  Object.keys(COUNTINGS).find((key) => COUNTINGS[key] === counting) as string

const SEEN: Readonly<Record<string, Seen>> = { d: 'dancer', c: 'class', m: 'mirror', r: 'room' }
const seenKey = (seen: Seen): string => Object.keys(SEEN).find((key) => SEEN[key] === seen) as string

/** 5.8 as 5p8: a full stop parts the fields. */
const numberText = (value: number): string => String(value).replace('.', 'p')

/** null unless it is a number as `numberText` writes it. */
function readNumber(text: string): number | null {
  const value = Number(text.replace('p', '.'))
  return Number.isFinite(value) && numberText(value) === text ? value : null
}

const SHORTENED: Readonly<Record<WayKind, string>> = {
  'in time': 'i',
  late: 'l',
  hurrying: 'h',
  early: 'e',
  ahead: 'a',
  gaining: 'g',
  'foot first': 'f',
  placed: 'p',
  'cut short': 'c',
  misplaced: 'm',
  evened: 'v',
  'no change': 'n',
  stops: 's',
  'part weight': 'w',
  slip: 'k',
  swelling: 'u',
  arrested: 'r',
}
const KINDS = Object.keys(SHORTENED) as WayKind[]

/** One panel: its kind's letter, its amount where that is not the usual one, and s1s2 for steps 2 and 3. */
function panelText(way: Way): string {
  const amount = amountOf(way)
  const usual = way.kind === 'in time' ? null : faultOf(way.kind).amount?.usual
  const on = 'on' in way ? (way.on ?? []) : []
  return [SHORTENED[way.kind] + (amount === null || amount === usual ? '' : numberText(amount)), ...on].join('s')
}

/** null unless it is a panel that this figure can have. */
function readPanel(text: string, { actions }: Figure): Way | null {
  const kind = KINDS.find((one) => SHORTENED[one] === text.slice(0, 1))
  if (kind === undefined) return null
  const [written = '', ...steps] = text.slice(1).split('s')
  const fault = kind === 'in time' ? null : faultOf(kind)
  const amount = written === '' ? undefined : readNumber(written)
  const range = fault?.amount ?? null
  if (amount === null || (amount !== undefined && (range === null || amount < range.from || amount > range.to)))
    return null
  const on = steps.map((step) => readNumber(step))
  const fits = on.every((index) => index !== null && Number.isInteger(index) && index >= 0 && index < actions.length)
  const way = fits ? wayOf(kind, amount, on as number[]) : null
  // What is written otherwise than we write it has been changed by hand.
  return way !== null && panelText(way) === text ? way : null
}

/** The fields by their keys; null: as it is from the start, so not written. */
function fieldsOf(session: Session, figure: Figure): Readonly<Record<string, string | null>> {
  const usual = newSession(figure, session.beat)
  const unless = (same: boolean, text: string): string | null => (same ? null : text)
  // As it lies in the timing at hand.
  const { part, range } = lessonOf(session, figure)
  const panels = ({ panels: all }: Session): string => all.map(({ way }) => panelText(way)).join('_')
  return {
    t: unless(session.timing === 0, numberText(session.timing)),
    b: unless(session.beat === range.from, numberText(session.beat)),
    v: unless(session.barsPerMinute === usual.barsPerMinute, numberText(session.barsPerMinute)),
    // Before the order, which is of these panels.
    f: unless(panels(session) === panels(usual), panels(session)),
    m: unless(session.shortest === usual.shortest, numberText(session.shortest)),
    o: unless(session.order.join() === usual.order.join(), session.order.join('')),
    c: unless(session.counting === usual.counting, countingKey(session.counting)),
    n: unless(session.names, '0'),
    r: unless(session.loop, '0'),
    s: session.steps === null ? null : `${session.steps.first}-${session.steps.last}`,
    d: part === null ? null : `${numberText(part.from)}-${numberText(part.to)}`,
    j: unless(!session.joined, '1'),
    i: unless(session.countIn === 0, String(session.countIn)),
    w: unless(session.seen === usual.seen, seenKey(session.seen)),
    p: unless(!session.opposite, '1'),
  }
}

/**
 * A view as the fragment of an address, without its #: version, fields, checksum, parted by full stops. Only letters,
 * digits, - and _ besides, which every mail and chat program leaves alone. No file name and no one's name is in it.
 * @param linked the session's figure
 */
export function writeLink(session: Session, figure: Figure, linked: LinkedFigure): string {
  const first = 'demo' in linked ? `f${linked.demo}` : `x${linked.packed}`
  const fields = Object.entries(fieldsOf(session, figure)).flatMap(([key, text]) =>
    text === null ? [] : [`${key}${text}`],
  )
  const body = [VERSION, first, ...fields].join('.')
  return `${body}.${checksum(body)}`
}

/** @param fragment of the address, without its # */
export function readLink(fragment: string): LinkReading {
  const damaged = { ok: false, reason: 'damaged' } as const
  if (fragment.length > LONGEST_LINK || !/^[\w.-]+$/.test(fragment)) return damaged
  const end = fragment.lastIndexOf('.')
  const body = fragment.slice(0, Math.max(0, end))
  if (checksum(body) !== fragment.slice(end + 1)) return damaged
  const [version, first = '', ...rest] = body.split('.')
  if (version !== VERSION) return { ok: false, reason: 'newer' }
  const fields = new Map(rest.map((field) => [field.slice(0, 1), field.slice(1)]))
  const named = first.slice(1)
  if (named === '' || !/^[fx]$/.test(first.slice(0, 1)) || fields.size < rest.length) return damaged
  return { ok: true, content: { figure: first.startsWith('f') ? { demo: named } : { packed: named }, fields } }
}

/** null: no number, or one out of the fault's range. */
function withRead(session: Session, kind: 'late' | 'early', text: string): Session | null {
  const amount = readNumber(text)
  const range = faultOf(kind).amount
  if (amount === null || range === null || amount < range.from || amount > range.to) return null
  return withAmount(session, kind, amount)
}

/** What each field means, put into the session; null: a value that cannot be. The beat comes last: it depends on them. */
const FIELDS: Readonly<Record<string, (session: Session, text: string, figure: Figure) => Session | null>> = {
  t: (session, text, figure) => {
    const timing = readNumber(text)
    return timing !== null && figure.timings[timing] !== undefined ? { ...session, timing } : null
  },
  v: (session, text, figure) => {
    const barsPerMinute = readNumber(text)
    const { from, to } = playedTempoRange(dances[figure.dance])
    const fits = barsPerMinute !== null && barsPerMinute >= from && barsPerMinute <= to
    return fits ? { ...session, barsPerMinute } : null
  },
  // Links of before there were other faults: how late, how early.
  l: (session, text) => withRead(session, 'late', text),
  e: (session, text) => withRead(session, 'early', text),
  f: (session, text, figure) => {
    const ways = text.split('_').map((panel) => readPanel(panel, figure))
    const [first, ...others] = ways
    if (first?.kind !== 'in time' || ways.length > MOST_PANELS) return null
    let next: Session = { ...session, panels: session.panels.slice(0, 1), order: [0] }
    for (const way of others) {
      if (way === null || way.kind === 'in time') return null
      next = withPanelMore(next, way)
    }
    return next
  },
  m: (session, text) => {
    const shortest = readNumber(text)
    const next = shortest === null ? null : withShortest(session, shortest)
    return next?.shortest === shortest ? next : null
  },
  o: (session, text) => {
    const order = [...text].map(Number)
    const known = order.every((index) => session.panels[index] !== undefined)
    return known && order.length > 0 && new Set(order).size === order.length ? { ...session, order } : null
  },
  c: (session, text, figure) => {
    const counting = Object.hasOwn(COUNTINGS, text) ? COUNTINGS[text] : undefined
    if (counting === undefined || (counting === 'slows and quicks' && dances[figure.dance].signs.S === null))
      return null
    return { ...session, counting }
  },
  n: (session, text) => (text === '0' ? { ...session, names: false } : null),
  r: (session, text) => (text === '0' ? { ...session, loop: false } : null),
  s: (session, text, figure) => {
    const [first, last, ...more] = text.split('-').map((part) => readNumber(part))
    const whole = Number.isInteger(first) && Number.isInteger(last) && more.length === 0
    if (!whole || typeof first !== 'number' || typeof last !== 'number') return null
    return first >= 0 && first <= last && last < figure.actions.length ? { ...session, steps: { first, last } } : null
  },
  d: (session, text, figure) => {
    const [from, to, ...more] = text.split('-').map((part) => readNumber(part))
    if (typeof from !== 'number' || typeof to !== 'number' || more.length > 0) return null
    const part = { from: beat(from), to: beat(to) }
    const held = loopRange(schedule(figure, session.timing), from, to).part
    return held.from === from && held.to === to ? { ...session, part } : null
  },
  j: (session, text) => (text === '1' ? { ...session, joined: true } : null),
  i: (session, text) => {
    const countIn = COUNT_IN_BARS.find((bars) => bars > 0 && String(bars) === text)
    return countIn === undefined ? null : { ...session, countIn }
  },
  w: (session, text) => {
    const seen = Object.hasOwn(SEEN, text) ? SEEN[text] : undefined
    return seen === undefined ? null : { ...session, seen }
  },
  p: (session, text) => (text === '1' ? { ...session, opposite: true } : null),
}

/**
 * The view that a link's fields say of a figure.
 * @returns null when a field is not known, or its value not possible with this figure
 */
export function linkedSession(fields: LinkContent['fields'], figure: Figure): Session | null {
  let session: Session = newSession(figure, beat(0))
  for (const [key, text] of fields) {
    if (key === 'b') continue
    const next = Object.hasOwn(FIELDS, key) ? FIELDS[key]?.(session, text, figure) : null
    if (!next) return null
    session = next
  }
  const { range, schedule } = lessonOf(session, figure)
  const written = fields.get('b')
  const at = written === undefined ? range.from : readNumber(written)
  if (at === null || at < range.from || at > range.to || !Number.isInteger(at / schedule.grid)) return null
  return { ...session, beat: beat(at) }
}
