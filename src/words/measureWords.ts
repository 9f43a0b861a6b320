import type { MomentError } from '../transfer/comparison.ts'

const MOMENTS: Readonly<Record<MomentError['moment'], string>> = {
  leaves: 'Weight leaves',
  split: 'Half way',
  full: 'Fully over',
}

/** What is said around the numbers of a performance. */
export const measureWords = {
  open: 'The numbers',
  title: (name: string) => `${name}: the numbers`,
  step: 'Step',
  moment: (moment: MomentError['moment']) => MOMENTS[moment],
  /** Of one moment, in milliseconds at the playing tempo. */
  milliseconds: (value: number) => `${Math.round(value)} ms`,
  at: (tempo: string) => `Late and early by the plan of this figure; milliseconds at ${tempo}.`,
  tolerance:
    'The eye sees a quarter of a beat, or a tenth of a second. A dancer is judged over eight steps and more, never by one.',
} as const
