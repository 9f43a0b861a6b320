import { radians, share } from '../units.ts'
import type { Action, Direction } from './figure.ts'
import { usualWeights } from './usualWeights.ts'

/** An action of which nothing is said but its direction. */
export const plainAction = (direction: Direction): Action => ({
  direction,
  size: null,
  turn: radians(0),
  footTurn: null,
  placed: null,
  position: null,
  leading: null,
  alignment: null,
  footwork: '',
  note: '',
  weight: share(usualWeights[direction]),
  moments: {},
})
