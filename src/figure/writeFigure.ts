import { stringify } from 'yaml'
import type { Source } from '../dance/dance.ts'
import { dances } from '../dance/dances.ts'
import { type BeatValue, beatValue, type Radians } from '../units.ts'
import type { Action, Alignment, Checkpoint, Direction, Figure, Timing } from './figure.ts'
import { readTiming } from './readTiming.ts'
import { usualWeights } from './usualWeights.ts'

type Written = string | readonly Written[] | { readonly [key: string]: Written }
type Mapping = { [key: string]: Written }

/** Directions that came with version 2. */
const NEW_DIRECTIONS: readonly Direction[] = [
  ...(['slightly forward', 'slightly back', 'slightly side', 'close slightly forward', 'close slightly back'] as const),
  ...(['half close', 'lock in front', 'lock behind'] as const),
]

/** The fraction with the smallest denominator that `from` makes `value` of, as text. @throws RangeError when none does */
function fractionText(value: number, from: (share: number) => number): string {
  for (let under = 1; under <= 192; under++) {
    const over = Math.round((value / from(1)) * under)
    if (from(over / under) === value) return under === 1 ? String(over) : `${over}/${under}`
  }
  throw new RangeError(`no fraction says ${value}`)
}

const turnText = (by: Radians): string =>
  by === 0 ? 'none' : `${fractionText(Math.abs(by), (share) => share * 2 * Math.PI)} ${by < 0 ? 'left' : 'right'}`

function weightText(weight: number): string {
  const percent = Math.round(weight * 100)
  return percent / 100 === weight ? `${percent} %` : fractionText(weight, (share) => share)
}

const alignmentText = ({ way, to }: Alignment): string => `${way} ${to}`
const sourceText = ({ provenance, text }: Source): string => (text === '' ? provenance : `${provenance}, ${text}`)

const PARTS: ReadonlyMap<number, string> = new Map([
  [0, ''],
  [24, ' &'],
  [36, ' a'],
])

/** A time in 1/48 beat from count 1 of the first bar as a bar and a count. @throws RangeError when it has no name */
function countText(time: number, beatsPerBar: number): { readonly bar: number; readonly count: string } {
  const beat: number = beatValue(1)
  const whole = Math.floor(time / beat)
  const part = PARTS.get(time - whole * beat)
  if (part === undefined) throw new RangeError(`no count says ${time}/${beat} beat`)
  const bar = Math.floor(whole / beatsPerBar)
  return { bar: bar + 1, count: `${whole - bar * beatsPerBar + 1}${part}` }
}

/** The values as they are written, in beats: "3/4 1/2 3/4". */
const valuesText = (values: readonly number[]): string =>
  values.map((value) => fractionText(value, (share) => share * beatValue(1))).join(' ')

const same = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((value, index) => value === b[index])

/** A timing in a unit; null when it cannot be said in it. */
function timingIn(figure: Figure, timing: Timing, unit: string | null): Written | null {
  const dance = dances[figure.dance]
  const danced = unit === null ? 1 : (dance.written?.danced ?? 1)
  const source = timing.source.provenance === 'from memory' && timing.source.text === '' ? null : timing.source
  const given = timing.values.map((value) => value / danced) as BeatValue[]
  for (const values of [null, given]) {
    const read = readTiming(timing.text, dance, values, unit)
    if (!read.ok || !same(read.values, timing.values) || read.firstCount !== timing.firstCount) continue
    if (values === null && source === null) return timing.text
    return {
      say: timing.text,
      ...(values === null ? {} : { values: valuesText(given) }),
      ...(source === null ? {} : { source: sourceText(source) }),
    }
  }
  return null
}

/** All timings in the first unit that says them. @throws RangeError when there is none */
function timingsOf(figure: Figure): Mapping {
  for (const unit of [null, dances[figure.dance].written?.timeSignature ?? null]) {
    const timings = figure.timings.map((timing) => timingIn(figure, timing, unit))
    if (timings.some((timing) => timing === null)) continue
    const [first] = timings
    const timing = timings.length === 1 && typeof first === 'string' ? first : (timings as readonly Written[])
    return { ...(unit === null ? {} : { 'written in': unit }), timing }
  }
  throw new RangeError(`the timings of "${figure.title}" cannot be written`)
}

/** @param called in 1/48 beat from count 1 of the first bar */
function actionOf(action: Action, called: number, beatsPerBar: number): Written {
  const { direction, size, turn, footTurn, placed, position, leading, alignment, weight, moments } = action
  const written: Mapping = { direction }
  if (size !== null) written.size = `${size} m`
  if (turn !== 0) written.turn = turnText(turn)
  if (footTurn !== null) written[footTurn.kind] = turnText(footTurn.by)
  if (placed !== null) written.placed = placed
  if (position !== null) written.position = position
  if (leading !== null) written.leading = `${leading} side`
  if (alignment !== null) written.alignment = alignmentText(alignment)
  if (weight !== usualWeights[direction]) written.weight = weightText(weight)
  for (const [key, moment] of Object.entries(moments)) {
    written[key] = countText(called + moment, beatsPerBar).count
  }
  if (action.footwork !== '') written.footwork = action.footwork
  if (action.note !== '') written.note = action.note
  return Object.keys(written).length === 1 ? direction : written
}

const trackOf = (
  track: readonly Checkpoint[],
  called: number,
  beatsPerBar: number,
  to: (value: number) => string,
): readonly Written[] =>
  track.map(({ at, value }) => {
    const { bar, count } = countText(called + at, beatsPerBar)
    return { at: `bar ${bar}, ${count}`, to: to(value) }
  })

const SWAYS: ReadonlyMap<number, string> = new Map([
  [-1, 'left'],
  [-0.5, 'slightly left'],
  [0, 'none'],
  [0.5, 'slightly right'],
  [1, 'right'],
])

function swayText(value: number): string {
  const text = SWAYS.get(value)
  if (text === undefined) throw new RangeError(`no sway says ${value}`)
  return text
}

/** "1–8": a dash to a count that is not the next one; 4-1 is older. */
const hasRun = (text: string): boolean =>
  [...text.matchAll(/(\d)\s*[-–]\s*(\d{1,2})/g)].some(([, from, to]) => Number(to) > Number(from) + 1)

/** Whether anything is said that version 1 could not say. */
function needsVersion2(figure: Figure, written: Mapping): boolean {
  const { ends, freeFoot, stepsSource, tracks, actions, starts, timings } = figure
  const isNew = (action: Action): boolean =>
    NEW_DIRECTIONS.includes(action.direction) ||
    [action.footTurn, action.placed, action.position, action.leading, action.alignment].some((key) => key !== null) ||
    action.footwork + action.note !== ''
  return (
    [ends, freeFoot, stepsSource].some((key) => key !== null) ||
    Object.values(tracks).some((track) => track.length > 0) ||
    starts?.way === 'pointing' ||
    'written in' in written ||
    timings.some(({ text }) => /[×x]|^\s*[&a]/i.test(text) || hasRun(text)) ||
    actions.some(isNew)
  )
}

/**
 * A figure as the text of a new file, in the lowest version that holds it. `parseFigure` gives the same figure back.
 * @throws RangeError when something in it has no words (a moment off the counts, a sway between the five)
 */
export function writeFigure(figure: Figure): string {
  const { beatsPerBar } = dances[figure.dance]
  const [timing] = figure.timings
  const first = beatValue(timing.firstCount - 1)
  const written = timingsOf(figure)
  let called: number = first
  const actions = figure.actions.map((action, index) => {
    const now = called
    called += timing.values[index] ?? 0
    return actionOf(action, now, beatsPerBar)
  })
  const { starts, ends, freeFoot, convention, stepsSource, about, tracks } = figure
  const track = (points: readonly Checkpoint[], to: (value: number) => string) =>
    trackOf(points, first, beatsPerBar, to)
  const all: Mapping = {
    overfoot: needsVersion2(figure, written) ? '2' : '1',
    title: figure.title,
    dance: figure.dance,
    role: figure.role,
    'first foot': figure.firstFoot,
    ...(starts === null ? {} : { starts: alignmentText(starts) }),
    ...(ends === null ? {} : { ends: alignmentText(ends) }),
    ...(freeFoot === null ? {} : { 'free foot': freeFoot }),
    ...(convention === dances[figure.dance].convention ? {} : { convention }),
    ...written,
    ...(stepsSource === null ? {} : { 'steps source': sourceText(stepsSource) }),
    ...(about === '' ? {} : { about }),
    actions,
    ...(tracks.bodyTurn.length === 0
      ? {}
      : { 'body turn': track(tracks.bodyTurn, (value) => turnText(value as Radians)) }),
    ...(tracks.rise.length === 0
      ? {}
      : { 'rise and fall': track(tracks.rise, (value) => `${Math.round(value * 100)} %`) }),
    ...(tracks.sway.length === 0 ? {} : { sway: track(tracks.sway, swayText) }),
  }
  return stringify(all, { lineWidth: 0, version: '1.2', schema: 'failsafe', aliasDuplicateObjects: false })
}
