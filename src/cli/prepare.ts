import { dances } from '../dance/dances.ts'
import { defaultTempo } from '../dance/defaultTempo.ts'
import { playedTempoRange } from '../dance/playedTempoRange.ts'
import { secondsPerBeat } from '../dance/secondsPerBeat.ts'
import type { Figure } from '../figure/figure.ts'
import { schedule } from '../timing/schedule.ts'
import { changes } from '../transfer/changes.ts'
import type { Comparison } from '../transfer/comparison.ts'
import { perform } from '../transfer/perform.ts'
import type { Way } from '../transfer/way.ts'
import type { Seconds } from '../units.ts'
import type { CallProblem } from '../words/callSentence.ts'
import type { OfFile } from './readArguments.ts'

/** A figure with the ways that are asked for danced. */
export type Prepared = {
  readonly comparison: Comparison
  readonly barsPerMinute: number
  readonly beatLasts: Seconds
  /** The ways that do not differ from the plan in this figure; "in time" is not among them. */
  readonly without: readonly Way[]
}

/** What the figure cannot give of what is asked for. */
function wrongFor(figure: Figure, { file, timing, barsPerMinute }: OfFile, ways: readonly Way[]): CallProblem[] {
  const wrong: CallProblem[] = []
  const timings = figure.timings.length
  if (timing >= timings) wrong.push({ kind: 'timing not of figure', file, timings, value: timing + 1 })
  const steps = figure.actions.length
  const missing = ways.flatMap((way) => ('on' in way ? (way.on ?? []) : [])).filter((index) => index >= steps)
  if (missing.length > 0) {
    wrong.push({ kind: 'steps not of figure', file, steps, missing: missing.map((index) => index + 1) })
  }
  const dance = dances[figure.dance]
  const { from, to } = playedTempoRange(dance)
  if (barsPerMinute !== null && !(barsPerMinute >= from && barsPerMinute <= to)) {
    wrong.push({ kind: 'tempo not of dance', file, dance: dance.name, value: barsPerMinute, from, to })
  }
  return wrong
}

/** Dances a figure in the given ways, or says all that is wrong with what is asked of it. */
export function prepare(
  figure: Figure,
  asked: OfFile,
  ways: readonly Way[],
): { readonly ok: true; readonly prepared: Prepared } | { readonly ok: false; readonly wrong: readonly CallProblem[] } {
  const wrong = wrongFor(figure, asked, ways)
  if (wrong.length > 0) return { ok: false, wrong }
  const dance = dances[figure.dance]
  const barsPerMinute = asked.barsPerMinute ?? defaultTempo(dance).barsPerMinute
  const beatLasts = secondsPerBeat(dance, barsPerMinute)
  const shortest = asked.shortest / beatLasts
  const scheduled = schedule(figure, asked.timing)
  const comparison: Comparison = {
    dance,
    schedule: scheduled,
    ideal: perform(scheduled, { kind: 'in time' }),
    panels: ways.map((way) => ({ way, performance: perform(scheduled, way, shortest) })),
  }
  const without = ways.filter((way) => way.kind !== 'in time' && !changes(scheduled, way, shortest))
  return { ok: true, prepared: { comparison, barsPerMinute, beatLasts, without } }
}
