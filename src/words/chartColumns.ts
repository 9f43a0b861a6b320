import type { Figure } from '../figure/figure.ts'
import type { Way } from '../transfer/way.ts'
import type { ChartFoot, ChartRow } from './chartRows.ts'
import { type Column, column, grouped } from './column.ts'
import { shownLine } from './shownLine.ts'
import { wayName } from './wayName.ts'

const footColumns = (group: string, foot: (row: ChartRow) => ChartFoot): readonly Column<ChartRow>[] =>
  grouped(group, [
    column('x m', (row) => foot(row).x),
    column('y m', (row) => foot(row).y),
    column('heading deg', (row) => foot(row).heading),
    column('load', (row) => foot(row).load),
    column('on floor', (row) => foot(row).onFloor),
  ])

const track = (name: string, value: (row: ChartRow) => number | undefined, [first]: readonly ChartRow[]) =>
  first === undefined || value(first) === undefined ? [] : [column<ChartRow>(name, (row) => value(row) ?? 0)]

/** The columns of a chart, with those of the tracks that the figure has; the long texts come last. */
export const chartColumns = (rows: readonly ChartRow[]): readonly Column<ChartRow>[] => [
  column('beat', ({ beat }) => beat),
  column('bar', ({ bar }) => bar, true),
  column('count', ({ count }) => count),
  column('action', ({ action }) => action, true),
  column('sign', ({ sign }) => sign),
  column('progress', ({ progress }) => progress),
  ...footColumns('left foot', ({ left }) => left),
  ...footColumns('right foot', ({ right }) => right),
  ...grouped<ChartRow>('weight', [column('x m', ({ weight }) => weight.x), column('y m', ({ weight }) => weight.y)]),
  ...track('body turn deg', ({ bodyTurn }) => bodyTurn, rows),
  ...track('rise', ({ rise }) => rise, rows),
  ...track('sway', ({ sway }) => sway, rows),
  column('stage', ({ stage }) => stage),
  column('says', ({ says }) => says),
]

/**
 * What the numbers of a row mean, by the row's keys. In a figure that is not tied to the room, y is the way the dancer
 * faces at the start.
 */
export const chartUnits = {
  beat: 'beats from the count of the first action',
  progress: 'actions done',
  x: 'metres, to the right of y',
  y: 'metres, along the line of dance, or the way faced at the start',
  heading: 'degrees from y, to the right positive',
  load: 'share of the weight, 0 to 1',
  bodyTurn: 'degrees since the start, to the right positive',
  rise: '0 down to 1 up',
  sway: '-1 left to 1 right',
} as const

/** What stands over a chart: "Three walks, slow quick quick: In time". */
export const chartTitle = ({ title, convention }: Figure, way: Way): string =>
  `${shownLine(title)}: ${wayName(way, convention)}`
