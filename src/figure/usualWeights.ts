import type { Direction } from './figure.ts'

/**
 * The part of the weight that an action takes when nothing is said: a step all of it, the middle step of a Latin chassé
 * half (own judgement; published for samba: IDTA revision cards), the rest none (from memory).
 */
export const usualWeights: Readonly<Record<Direction, 0 | 0.5 | 1>> = {
  forward: 1,
  back: 1,
  side: 1,
  'slightly forward': 1,
  'slightly back': 1,
  'slightly side': 1,
  'diagonally forward': 1,
  'diagonally back': 1,
  'side and slightly forward': 1,
  'side and slightly back': 1,
  'forward and slightly side': 1,
  'back and slightly side': 1,
  close: 1,
  'close slightly forward': 1,
  'close slightly back': 1,
  'half close': 0.5,
  'cross in front': 1,
  'cross behind': 1,
  'lock in front': 1,
  'lock behind': 1,
  'in place': 1,
  tap: 0,
  brush: 0,
  point: 0,
  hold: 0,
}
