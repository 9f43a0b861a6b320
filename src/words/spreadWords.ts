import { fraction } from './fraction.ts'
import { SLOW_PRACTICE } from './slowPractice.ts'

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
  caution: SLOW_PRACTICE,
} as const
