import type { Counting, Dance } from '../dance/dance.ts'
import { toBeat } from '../units.ts'
import type { Schedule, ScheduledAction } from './schedule.ts'

/** Where a time lies in the music. */
export type MusicPlace = {
  /** 1 = the bar of the figure's first count, 0 and below before it: the & or a before a first count 1 lies in bar 0. */
  readonly bar: number
  /** 1 … beats per bar. */
  readonly count: number
  /** The part of the beat gone by: 0, ¼, ½, ¾ on the grid. */
  readonly part: number
}

export function musicPlace({ firstCount, beatsPerBar }: Schedule, t: number): MusicPlace {
  const fromBar = t + firstCount - 1
  const whole = Math.floor(fromBar + 1e-9)
  const bar = Math.floor(whole / beatsPerBar)
  return { bar: bar + 1, count: whole - bar * beatsPerBar + 1, part: Math.max(0, fromBar - whole) }
}

/** How a part of a beat is said: & for the half, a for the last quarter; the first quarter has no word in the trade. */
export function partSign(part: number): '' | '&' | 'a' | '·' {
  if (part < 1e-9) return ''
  if (Math.abs(part - 0.5) < 1e-9) return '&'
  return Math.abs(part - 0.75) < 1e-9 ? 'a' : '·'
}

/** The action that was called last at `t`; null before the first. */
export function calledAt({ actions }: Schedule, t: number): ScheduledAction | null {
  let found: ScheduledAction | null = null
  for (const action of actions) {
    if (action.called > t + 1e-9) break
    found = action
  }
  return found
}

/** An action's length read as slows and quicks; null in a dance that is counted in numbers only. */
function slowOrQuick(schedule: Schedule, { sign, called, value }: ScheduledAction, { signs }: Dance): string | null {
  if (signs.S === null || signs.Q === null) return null
  if (sign === 'S' || sign === 'Q') return sign
  if (value <= toBeat(signs.a)) return 'a'
  if (value < toBeat(signs.Q) && musicPlace(schedule, called).part === 0.5) return '&'
  // An & or a that follows has been taken out of it: a beat and a half is a slow, three quarters a quick.
  return value > toBeat(signs.Q) ? 'S' : 'Q'
}

/** The count at a grid point. `called` is false where nothing is said aloud: the beat goes on under a longer step. */
export type Count = { readonly text: string; readonly called: boolean }

/**
 * The count at a grid point, read in one of three ways. Slows and quicks fall back on bars and beats where the dance has
 * none, and after the figure's end.
 */
export function countAt(schedule: Schedule, dance: Dance, counting: Counting, t: number): Count {
  const { bar, count, part } = musicPlace(schedule, t)
  const sign = partSign(part)
  if (counting === 'slows and quicks' && t >= 0 && t < schedule.length) {
    const action = calledAt(schedule, t)
    const text = action === null ? null : slowOrQuick(schedule, action, dance)
    if (action !== null && text !== null) return { text, called: Math.abs(t - action.called) < 1e-9 }
  }
  if (counting === 'half beats') return { text: sign === '' ? String(count) : sign, called: true }
  const isCalled = schedule.actions.some((action) => Math.abs(action.called - t) < 1e-9)
  if (sign !== '') return { text: sign, called: isCalled }
  return { text: String(count === 1 && bar >= 1 && counting === 'bars and beats' ? bar : count), called: true }
}
