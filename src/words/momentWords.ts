import type { Comparison, MomentError } from '../transfer/comparison.ts'
import { beatsInWords } from './fraction.ts'
import { wayShort } from './wayName.ts'

const SAME = 1e-6

const WHAT: Readonly<Record<MomentError['moment'], string>> = {
  leaves: 'leaves',
  split: 'half way',
  full: 'fully over',
}

/** "½ beat late", "in time". */
export const errorWords = (by: number): string =>
  Math.abs(by) < SAME ? 'in time' : `${beatsInWords(Math.abs(by))} ${by > 0 ? 'late' : 'early'}`

/**
 * One moment of one performance: "Late: step 2 (Q), fully over ½ beat late (259 ms)."
 * @param secondsPerBeat at the playing tempo
 */
export function momentWords(
  { panels, schedule }: Pick<Comparison, 'panels' | 'schedule'>,
  panel: number,
  { index, moment, by }: MomentError,
  secondsPerBeat: number,
): string {
  const name = wayShort(panels[panel]?.way.kind ?? 'in time')
  const { sign = '', written = index } = schedule.actions[index] ?? {}
  const inTime = Math.abs(by) < SAME
  const milliseconds = inTime ? '' : ` (${Math.round(Math.abs(by) * secondsPerBeat * 1000)} ms)`
  return `${name}: step ${written + 1} (${sign}), ${WHAT[moment]} ${errorWords(by)}${milliseconds}.`
}
