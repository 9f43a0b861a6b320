import { fault } from '../problem.ts'
import { alignmentEighths, roomEighths } from './alignmentEighths.ts'
import type { Action, Alignment, Figure, RoomDirection } from './figure.ts'
import type { Finding } from './finding.ts'
import { alignmentText } from './readAlignment.ts'

/** Of an eighth: less is a rounding. */
const SAME = 1e-6

const eighths = (angle: number): number => (angle * 4) / Math.PI

/** From −4 (not included) to 4. */
const between = (angle: number): number => angle - 8 * Math.ceil((angle - 4) / 8)

/** The direction of the room nearest to a heading for one who stands in this way to it. */
function nearestTo(heading: number, way: Alignment['way']): { readonly words: string; readonly off: number } {
  let best = { words: '', off: Number.POSITIVE_INFINITY }
  for (const to of Object.keys(roomEighths) as RoomDirection[]) {
    const off = Math.abs(between(heading - alignmentEighths({ way, to })))
    if (off < best.off) best = { words: alignmentText({ way, to }), off }
  }
  return best
}

/** Made before the foot is placed: between the steps, or while the other foot closes or the count takes no weight. */
const turnBefore = ({ turn, footTurn, weight }: Action): number =>
  turn + (footTurn !== null && (footTurn.kind === 'heel turn' || weight === 0) ? footTurn.by : 0)

/**
 * What a chart says of the feet's alignment against what its start and its turns lead to. Warnings: charts have slips,
 * and the turns are what is danced. Without a start nothing can be said.
 */
export function checkAlignments({
  starts,
  ends,
  actions,
}: Pick<Figure, 'starts' | 'ends' | 'actions'>): readonly Finding[] {
  if (starts === null) return []
  const findings: Finding[] = []
  let heading = alignmentEighths(starts)
  const check = (said: Alignment | null, key: string, path: Finding['path']): void => {
    if (said === null || Math.abs(between(heading - alignmentEighths(said))) < SAME) return
    const { words, off } = nearestTo(heading, said.way)
    const value = alignmentText(said)
    const values = { key, value, expected: off < SAME ? words : '', nearest: words }
    findings.push({ fault: fault('alignment-disagrees', values), path, severity: 'warning' })
  }
  for (const [index, action] of actions.entries()) {
    const before = turnBefore(action)
    heading += eighths(before)
    check(action.alignment, 'alignment', ['actions', index, 'alignment'])
    heading += eighths(action.turn + (action.footTurn?.by ?? 0) - before)
  }
  check(ends, 'ends', ['ends'])
  return findings
}
