import { readFileSync } from 'node:fs'
import type { Dance } from '../../src/dance/dance.ts'
import { danceList } from '../../src/dance/dances.ts'
import type { Foot, Role } from '../../src/figure/figure.ts'
import { type BeatValue, beatValue } from '../../src/units.ts'

/** A figure of the trade as it is charted, one line of trade_figures.tsv; its sources: sources.md. */
export type TradeRow = {
  readonly dance: Dance
  readonly figure: string
  readonly role: Role
  /** One, or both where the figure is danced either way. */
  readonly firstFeet: readonly Foot[]
  /** How the first foot goes: "back", "behind", or nothing said. */
  readonly firstWay: 'back' | 'behind' | ''
  readonly counts: number
  /** The changes of weight among the counts. */
  readonly changes: number
  readonly timing: string
  readonly values: readonly BeatValue[]
  /** Exact fractions, as written: "3/2". */
  readonly sum: string
  readonly beatsPerBar: string
  readonly bars: string
  readonly wholeBars: string
  readonly note: string
  readonly source: string
}

const COLUMNS =
  'dance figure first_foot charted_counts weight_changes_if_different timing beat_values sum_beats beats_per_bar bars whole_bars note source'

function exactValue(text: string): BeatValue {
  const [numerator, denominator = 1] = text.split('/').map(Number)
  return beatValue(numerator as number, denominator)
}

function rowOf(line: string): TradeRow {
  const cells = line.split('\t')
  const cell = (name: string): string => cells[COLUMNS.split(' ').indexOf(name)] ?? ''
  const dance = danceList.find(({ name }) => name === cell('dance'))
  if (!dance || cells.length !== COLUMNS.split(' ').length) throw new Error(`cannot read the row: ${line}`)
  const first = cell('first_foot')
  const feet: Foot[] = []
  if (/\bL\b|—/.test(first)) feet.push('left')
  if (/\bR\b|—/.test(first)) feet.push('right')
  const counts = Number(cell('charted_counts'))
  return {
    dance,
    figure: cell('figure'),
    role: first.includes('follower') ? 'follower' : 'leader',
    firstFeet: feet,
    firstWay: /\bback\b/.test(first) ? 'back' : first.includes('behind') ? 'behind' : '',
    counts,
    changes: Number(cell('weight_changes_if_different') || counts),
    timing: cell('timing'),
    values: cell('beat_values').split(' ').map(exactValue),
    sum: cell('sum_beats'),
    beatsPerBar: cell('beats_per_bar'),
    bars: cell('bars'),
    wholeBars: cell('whole_bars'),
    note: cell('note'),
    source: cell('source'),
  }
}

const lines = readFileSync(new URL('trade_figures.tsv', import.meta.url), 'utf8')
  .trimEnd()
  .split('\n')
if (lines[0] !== COLUMNS.replaceAll(' ', '\t')) throw new Error(`other columns than expected: ${lines[0]}`)

export const tradeRows: readonly TradeRow[] = lines.slice(1).map(rowOf)
