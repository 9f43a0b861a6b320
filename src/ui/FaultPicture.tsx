import { memo } from 'react'
import { dances } from '../dance/dances.ts'
import type { Figure } from '../figure/figure.ts'
import { strip } from '../scene/strip.ts'
import { schedule as scheduleOf } from '../timing/schedule.ts'
import type { Comparison } from '../transfer/comparison.ts'
import { type FaultKind, wayOf } from '../transfer/faults.ts'
import { perform } from '../transfer/perform.ts'
import { BOX, linePath } from './linePlaces.ts'

/** Beats of the figure that fit into a small picture. */
const BEATS = 4
/** In beats: so that what makes up for a slip hurries, and does not heal at once. */
const SHORTEST = 0.75

/** A fault as a small strip: the weight's line over the plan's, in the first steps of a figure. */
export const FaultPicture = memo(function FaultPicture({
  figure,
  kind,
}: {
  readonly figure: Figure
  readonly kind: FaultKind
}) {
  const way = wayOf(kind)
  const schedule = scheduleOf(figure)
  const ideal = perform(schedule, { kind: 'in time' })
  const range = { from: -1, to: BEATS }
  const comparison: Comparison & { range: typeof range } = {
    dance: dances[figure.dance],
    schedule,
    ideal,
    range,
    panels: [
      { way: { kind: 'in time' }, performance: ideal },
      { way, performance: perform(schedule, way, SHORTEST) },
    ],
  }
  const drawn = strip(comparison)
  return (
    <svg
      className="fault-picture"
      viewBox={`0 -12 ${BOX.width} ${BOX.height + 24}`}
      preserveAspectRatio="none"
      aria-hidden="true"
      focusable="false"
    >
      {drawn.lines.map((line) => (
        <path key={line.panel} className={line.panel === 0 ? 'fault-plan' : 'fault-line'} d={linePath(drawn, line)} />
      ))}
    </svg>
  )
})
