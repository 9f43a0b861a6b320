import type { Figure } from '../figure/figure.ts'
import type { Smoothness } from '../transfer/smoothness.ts'
import type { Way } from '../transfer/way.ts'
import { type Column, column, grouped } from './column.ts'
import type { Measure, MeasuredMoment, MeasuredStretch } from './measureOf.ts'
import { shownLine } from './shownLine.ts'
import { wayName } from './wayName.ts'

/** Of each moment of each action. */
export const momentColumns: readonly Column<MeasuredMoment>[] = [
  column('action', ({ action }) => action, true),
  column('sign', ({ sign }) => sign),
  column('moment', ({ moment }) => moment),
  column('planned beat', ({ planned }) => planned),
  column('danced beat', ({ danced }) => danced),
  column('late beats', ({ beats }) => beats),
  column('late ms', ({ milliseconds }) => milliseconds, true),
]

type Named = MeasuredStretch & { readonly what: 'waits' | 'rushes' }

/** Waits and rushes in one list, as they begin. */
export const stretchesOf = ({ waits, rushes }: Pick<Measure, 'waits' | 'rushes'>): readonly Named[] =>
  [
    ...waits.map((wait): Named => ({ ...wait, what: 'waits' })),
    ...rushes.map((rush): Named => ({ ...rush, what: 'rushes' })),
  ].sort((a, b) => a.from - b.from)

/** Of each wait and rush. */
export const stretchColumns: readonly Column<Named>[] = [
  column('weight', ({ what }) => what),
  column('from beat', ({ from }) => from),
  column('to beat', ({ to }) => to),
  column('beats', ({ beats }) => beats),
  column('ms', ({ milliseconds }) => milliseconds, true),
]

/** Of the whole, for experts. */
export const smoothnessColumns: readonly Column<Smoothness | null>[] = [
  column('peak over mean', (smooth) => smooth?.peakOverMean ?? ''),
  column('SPARC', (smooth) => smooth?.sparc ?? ''),
  column('LDLJ', (smooth) => smooth?.ldlj ?? ''),
]

/** A moment with what begins there and what is true of the whole, so that a spreadsheet has it all in one table. */
type MomentOfWhole = MeasuredMoment & { readonly waits: number; readonly rushes: number; readonly whole: Measure }

/** From so close together, in beats, on two times are one. */
const SAME = 1e-9

const ofWhole = <Row>(columns: readonly Column<Smoothness | null>[], whole: (row: Row) => Measure): Column<Row>[] =>
  columns.map(({ cell, ...rest }) => ({ ...rest, cell: (row) => cell(whole(row).smoothness) }))

/** Every moment; a wait stands with the moment after which it begins, a rush with the one with which it does. */
export function momentsOfWhole(whole: Measure): readonly MomentOfWhole[] {
  const beginning = (stretches: readonly MeasuredStretch[], first: boolean): number[] => {
    const sums = whole.moments.map(() => 0)
    for (const { from, beats } of stretches) {
      const last = whole.moments.findLastIndex(({ danced }) => danced <= from + SAME)
      const time = whole.moments[last]?.danced ?? from
      const at = first ? whole.moments.findIndex(({ danced }) => danced >= time - SAME) : last
      sums[at] = (sums[at] ?? 0) + beats
    }
    return sums
  }
  const [waits, rushes] = [beginning(whole.waits, true), beginning(whole.rushes, false)]
  return whole.moments.map((moment, k) => ({
    ...{ ...moment, waits: waits[k] as number, rushes: rushes[k] as number, whole },
  }))
}

/** Of one performance in a spreadsheet: a row for each moment. */
export const momentOfWholeColumns: readonly Column<MomentOfWhole>[] = [
  ...momentColumns,
  column('then waits beats', ({ waits }) => waits),
  column('then rushes beats', ({ rushes }) => rushes),
  ...ofWhole<MomentOfWhole>(smoothnessColumns, ({ whole }) => whole),
  column('says', ({ whole }) => whole.says),
]

const sumOf = (stretches: readonly MeasuredStretch[], key: 'beats' | 'milliseconds'): number =>
  stretches.reduce((sum, one) => sum + one[key], 0)

/** The error that is largest, early or late. */
const worst = ({ moments }: Measure, key: 'beats' | 'milliseconds'): number =>
  moments.reduce((most, one) => (Math.abs(one[key]) > Math.abs(most) ? one[key] : most), 0)

const stretchSums = (name: string, of: (measure: Measure) => readonly MeasuredStretch[]): readonly Column<Measure>[] =>
  grouped(name, [
    column('number', (measure) => of(measure).length, true),
    column('beats', (measure) => sumOf(of(measure), 'beats')),
    column('ms', (measure) => sumOf(of(measure), 'milliseconds'), true),
  ])

/** Of several performances in a spreadsheet: a row for each. */
export const measureColumns: readonly Column<Measure>[] = [
  column('kind', ({ way }) => way.kind),
  column('name', ({ way }) => wayName(way)),
  column('most late beats', (measure) => worst(measure, 'beats')),
  column('most late ms', (measure) => worst(measure, 'milliseconds'), true),
  ...stretchSums('waits', ({ waits }) => waits),
  ...stretchSums('rushes', ({ rushes }) => rushes),
  ...ofWhole<Measure>(smoothnessColumns, (measure) => measure),
  column('says', ({ says }) => says),
]

/** What the numbers mean, by their keys. */
export const measureUnits = {
  planned: 'beats from the count of the first action',
  danced: 'beats from the count of the first action',
  from: 'beats from the count of the first action',
  to: 'beats from the count of the first action',
  beats: 'beats; of a moment how late, early is negative',
  milliseconds: 'thousandths of a second at the tempo; of a moment how late, early is negative',
  peakOverMean: 'no unit, at least 1: highest over mean speed of the weight along the floor',
  sparc: 'no unit, at most -1: spectral arc length of that speed, less negative is smoother',
  ldlj: 'no unit: log dimensionless jerk of that speed, higher is smoother',
} as const

/** "Three walks, slow quick quick: Early: across in half the step’s time, at 29 bars a minute". */
export const measureTitle = ({ title }: Figure, way: Way, barsPerMinute: number): string =>
  `${shownLine(title)}: ${wayName(way)}, at ${Number(barsPerMinute.toFixed(3))} bars a minute`

/** Said where a list is empty. */
export const measureLabels = {
  noStretches: 'no waits, no rushes',
  noMovement: 'too little movement to tell how smooth it is',
} as const
