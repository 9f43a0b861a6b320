import type { Alignment, RoomDirection } from './figure.ts'

/** Headings of the room in eighths of a turn; 0 = line of dance, right positive; the wall is on the right. */
export const roomEighths: Readonly<Record<RoomDirection, number>> = {
  'line of dance': 0,
  'diagonally to wall': 1,
  wall: 2,
  'diagonally to wall against line of dance': 3,
  'against line of dance': 4,
  'diagonally to centre against line of dance': -3,
  centre: -2,
  'diagonally to centre': -1,
}

/** Where the feet of one so aligned point, in eighths of a turn from the line of dance, to the right; −3 to 8. */
export const alignmentEighths = ({ way, to }: Alignment): number => roomEighths[to] + (way === 'backing' ? 4 : 0)
