import type { Floor } from '../pose/floor.ts'
import { type FootPose, pose } from '../pose/pose.ts'
import type { Comparison } from '../transfer/comparison.ts'
import type { Way } from '../transfer/perform.ts'
import type { Performance } from '../transfer/performance.ts'
import { beadRow } from './beads.ts'
import type { Bead, FootNow, PanelFrame, PanelPicture, Placement, Tone } from './panelPicture.ts'
import { distinctPlacements, placementLabels } from './placementLabels.ts'
import { inView, textPixels, type View } from './view.ts'

/** One panel: what stays, and what it looks like at a beat. */
export type PanelView = { readonly picture: PanelPicture; frameAt(t: number): PanelFrame }

const TRAIL_A_BEAT = 16
/** What must be written in any panel (a wait's half beats), CSS px. */
const SMALLEST_TEXT = 9
const GRID_SPACING = 0.25
/** The scale bar: half a metre, or a quarter where that is long already (CSS px a metre). */
const LARGE_SCALE = 200

/** Feet larger than the floor's scale are said to be so. */
const LARGER: Readonly<Record<string, string>> = { '1.25': '×1¼', '1.5': '×1½' }

function scaleBar({ pixelsPerMetre, body }: View, written: boolean): PanelPicture['scaleBar'] {
  const length = pixelsPerMetre > LARGE_SCALE ? 0.25 : 0.5
  const larger = LARGER[String(body.times)]
  const feet = written && larger !== undefined ? `  feet ${larger}` : ''
  return { length, text: `${length * 100} cm${feet}` }
}

const toneOf = ({ kind }: Way): Tone => kind

/** Where each action's foot comes to stand; null where the feet stay and nothing is put down. */
function placementsOf(floor: Floor, { schedule }: Comparison, view: View): (Placement | null)[] {
  return floor.actions.map(({ foot, place }, index) => {
    if (schedule.actions[index]?.action.direction === 'hold') return null
    return { foot, ...inView(view, place), heading: place.heading + view.turned }
  })
}

function trailOf(performance: Performance, floor: Floor, view: View, from: number, to: number): Float64Array {
  const points = Math.floor((to - from) * TRAIL_A_BEAT + 1e-9) + 1
  const trail = new Float64Array(2 * points)
  for (let k = 0; k < points; k++) {
    const { x, y } = inView(view, pose(floor, performance.curve.at(from + k / TRAIL_A_BEAT)).weight)
    trail[2 * k] = x
    trail[2 * k + 1] = y
  }
  return trail
}

function footNow(foot: FootPose, view: View): FootNow {
  const { height, onFloor, load } = foot
  return { ...inView(view, foot), heading: foot.heading + view.turned, height, onFloor, load }
}

/**
 * The panel of one performance.
 * @param panel index into the comparison's panels
 * @param names false: nothing tells which performance it is
 */
export function panelView(
  comparison: Comparison & { readonly range: { readonly from: number; readonly to: number } },
  panel: number,
  view: View,
  names: boolean,
): PanelView {
  const { schedule, ideal, range } = comparison
  const { way, performance } = comparison.panels[panel] as Comparison['panels'][number]
  const floor = view.floors[panel] as Floor
  const compared = names && way.kind !== 'in time'
  const row = beadRow(comparison, performance, floor, view, range, compared)
  const trail = trailOf(performance, floor, view, range.from, range.to)
  const wholePath = trailOf(performance, floor, view, performance.curve.from, performance.curve.to)
  const textHeight = Math.max(SMALLEST_TEXT, textPixels(view.height)) / view.pixelsPerMetre
  const written = textPixels(view.height) > 0
  const placements = placementsOf(floor, comparison, view)
  const start = (['left', 'right'] as const).map((foot) => ({
    foot,
    ...inView(view, floor.start[foot]),
    heading: floor.start[foot].heading + view.turned,
  }))

  const beadsUntil = new Map<number, readonly Bead[]>()
  const beadsAt = (t: number): readonly Bead[] => {
    const count = Math.min(row.length, Math.floor((t - range.from) / schedule.grid + 1e-9) + 1)
    let beads = beadsUntil.get(count)
    if (beads === undefined) {
      beads = row.slice(0, count)
      beadsUntil.set(count, beads)
    }
    return beads
  }

  return {
    picture: {
      tone: names ? toneOf(way) : 'plain',
      pixelsPerMetre: view.pixelsPerMetre,
      footLength: view.body.footLength,
      footBreadth: view.body.footBreadth,
      textHeight,
      gridSpacing: GRID_SPACING,
      gridThrough: inView(view, { x: 0, y: 0 }),
      scaleBar: scaleBar(view, written),
      lineOfDance: schedule.figure.starts === null ? null : view.turned,
      placements: distinctPlacements([...start, ...placements.filter((placement) => placement !== null)]),
      labels: written
        ? placementLabels(placements, schedule, {
            footLength: view.body.footLength,
            footBreadth: view.body.footBreadth,
            textHeight,
            halfWidth: view.width / 2 / view.pixelsPerMetre,
            halfHeight: view.height / 2 / view.pixelsPerMetre,
            lineOfDance: schedule.figure.starts !== null,
            // The plan's, so that the labels stand alike in all panels.
            path: trailOf(ideal, view.idealFloor, view, ideal.curve.from, ideal.curve.to),
          })
        : [],
      wholePath,
    },
    frameAt(t) {
      const now = pose(floor, performance.curve.at(t))
      return {
        left: footNow(now.left, view),
        right: footNow(now.right, view),
        marker: inView(view, now.weight),
        ghost: compared ? inView(view, pose(view.idealFloor, ideal.curve.at(t)).weight) : null,
        trail,
        trailPoints: Math.min(trail.length / 2, Math.max(1, Math.floor((t - range.from) * TRAIL_A_BEAT + 1e-9) + 1)),
        beads: beadsAt(t),
      }
    },
  }
}
