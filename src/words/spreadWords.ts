import { fraction } from './fraction.ts'

const EIGHTHS = 8

/** What is said around the chart of steps and tempi. */
export const spreadWords = {
  chart: 'Steps and tempo',
  caption: 'How late each step is at its end, in beats; empty: in time. A tempo can be pressed.',
  tempo: 'Bars a minute',
  bars: (tempo: number) => String(Number(tempo.toFixed(1))),
  /** In eighths; '' in time. */
  late: (beats: number) => {
    if (beats === 0) return ''
    const eighths = Math.round(beats * EIGHTHS)
    return eighths === 0 ? '<⅛' : fraction(eighths / EIGHTHS)
  },
  caution:
    'Very slowly, below about half the tempo, there is no swing to carry you and balance is hard: use it for placing and timing only. Usual advice; your teacher has the last word.',
} as const
