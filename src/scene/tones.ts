import type { WayKind } from '../transfer/way.ts'
import type { Tone } from './panelPicture.ts'

/** The tones that a fault can have, besides the plan's own. */
const FAULTS = ['late', 'early', 'other'] as const
type FaultTone = (typeof FAULTS)[number]

/** What a way looks like if it is free: behind like late, ahead like early, or neither. */
const WISHED: Readonly<Record<Exclude<WayKind, 'in time'>, FaultTone>> = {
  late: 'late',
  hurrying: 'late',
  early: 'early',
  ahead: 'early',
  gaining: 'early',
  'foot first': 'late',
  placed: 'late',
  'cut short': 'early',
  misplaced: 'other',
  evened: 'other',
  'no change': 'other',
  stops: 'late',
  'part weight': 'other',
  slip: 'late',
  swelling: 'other',
  arrested: 'early',
}

/**
 * How panels are told apart: the plan's is green and round; faults have the tone that means the most, and no two of them
 * the same as long as there are tones left. @param kinds of all panels, those not shown too
 */
export function tones(kinds: readonly WayKind[]): Tone[] {
  const taken = new Map<number, FaultTone>()
  const free = (): FaultTone[] => FAULTS.filter((tone) => ![...taken.values()].includes(tone))
  for (const [index, kind] of kinds.entries()) {
    if (kind !== 'in time' && free().includes(WISHED[kind])) taken.set(index, WISHED[kind])
  }
  for (const [index, kind] of kinds.entries()) {
    if (kind !== 'in time' && !taken.has(index)) taken.set(index, free()[0] ?? WISHED[kind])
  }
  return kinds.map((_, index) => taken.get(index) ?? 'in time')
}
