import type { Foot } from '../figure/figure.ts'
import type { Floor } from '../pose/floor.ts'
import type { Place } from '../pose/footPosition.ts'
import { type FootPose, pose } from '../pose/pose.ts'
import type { Comparison } from '../transfer/comparison.ts'
import type { Performance } from '../transfer/performance.ts'
import { beadRow } from './beads.ts'
import type { Bead, FootNow, PanelFrame, PanelPicture, Placement, Tone } from './panelPicture.ts'
import { distinctPlacements, placementLabels } from './placementLabels.ts'
import { tones } from './tones.ts'
import { type Framed, headingInView, inView, textPixels, type View } from './view.ts'

/** One panel: what stays, and what it looks like at a beat. */
export type PanelView = { readonly picture: PanelPicture; frameAt(t: number): PanelFrame }

/** What is shown, and the beats that can be. */
export type Shown = Framed & { readonly range: Beats }
type Beats = { readonly from: number; readonly to: number }

/** A time that is on a sample but for rounding is on it. */
const ROUNDING = 1e-9
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
  return { length, text: `${length * 100} cm`, feet: written && larger !== undefined ? `feet ${larger}` : '' }
}

const toneOf = ({ panels }: Comparison, panel: number): Tone =>
  tones(panels.map(({ way }) => way.kind))[panel] ?? 'in time'

const inPanel = (foot: Foot, place: Place, view: View): Placement => ({
  foot,
  ...inView(view, place),
  heading: headingInView(view, place.heading),
})

/**
 * Where each action's foot comes to stand; null where the feet stay and nothing is put down, and for actions of other
 * pages. The two actions before a page say where one stands as it begins.
 */
function placementsOf(floor: Floor, { schedule }: Comparison, view: View): (Placement | null)[] {
  const { first, last } = view.page
  return floor.actions.map(({ foot, place }, index) => {
    if (index < first - 2 || index > last || schedule.actions[index]?.action.direction === 'hold') return null
    return inPanel(foot, place, view)
  })
}

/** The beats in which a page stands, as far as they can be shown. */
function timeOf({ pages, pageIndex, page }: View, { range }: Shown): Beats {
  const to = pages[pageIndex + 1]?.from ?? Number.POSITIVE_INFINITY
  return { from: Math.max(range.from, page.from), to: Math.min(range.to, to) }
}

/** The beats of a page's actions: the way that there is to go on it. */
function wayOf({ page }: View, { times }: Performance, { from }: Beats): Beats {
  const first = times[page.first]?.leaves ?? from
  return { from: Number.isFinite(page.from) ? from : first, to: times[page.last]?.full ?? first }
}

function trailOf(performance: Performance, floor: Floor, view: View, { from, to }: Beats): Float64Array {
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
  return { ...inView(view, foot), heading: headingInView(view, foot.heading), height, onFloor, load }
}

/**
 * The panel of one performance.
 * @param panel index into the comparison's panels
 * @param names false: nothing tells which performance it is
 */
export function panelView(comparison: Shown, panel: number, view: View, names: boolean): PanelView {
  const { schedule, ideal } = comparison
  const { way, performance } = comparison.panels[panel] as Comparison['panels'][number]
  const floor = view.floors[panel] as Floor
  const compared = names && way.kind !== 'in time'
  const beats = timeOf(view, comparison)
  const row = beadRow(comparison, performance, floor, view, beats, compared)
  const firstBead = Math.ceil(beats.from / schedule.grid - ROUNDING) * schedule.grid
  const trail = trailOf(performance, floor, view, beats)
  const wholePath = trailOf(performance, floor, view, wayOf(view, performance, beats))
  const textHeight = Math.max(SMALLEST_TEXT, textPixels(view.height)) / view.pixelsPerMetre
  const written = textPixels(view.height) > 0
  const placements = placementsOf(floor, comparison, view)
  // The one action before a page that begins with the second tells of one foot only.
  const start =
    view.page.first > 1 ? [] : (['left', 'right'] as const).map((foot) => inPanel(foot, floor.start[foot], view))

  // Of the actions before the page only the last: the one on which one comes in.
  const labelled = placements.map((placement, index) => (index < view.page.first - 1 ? null : placement))

  const beadsUntil = new Map<number, readonly Bead[]>()
  const beadsAt = (t: number): readonly Bead[] => {
    const count = Math.min(row.length, Math.floor((t - firstBead) / schedule.grid + ROUNDING) + 1)
    let beads = beadsUntil.get(count)
    if (beads === undefined) {
      beads = row.slice(0, Math.max(0, count))
      beadsUntil.set(count, beads)
    }
    return beads
  }

  return {
    picture: {
      tone: names ? toneOf(comparison, panel) : 'plain',
      pixelsPerMetre: view.pixelsPerMetre,
      footLength: view.body.footLength,
      footBreadth: view.body.footBreadth,
      textHeight,
      gridSpacing: GRID_SPACING,
      gridThrough: inView(view, { x: 0, y: 0 }),
      scaleBar: scaleBar(view, written),
      lineOfDance: schedule.figure.starts === null ? null : headingInView(view, 0),
      mirrored: view.mirrored,
      page: { index: view.pageIndex, count: view.pages.length },
      placements: distinctPlacements([...start, ...placements.filter((placement) => placement !== null)]),
      labels: written
        ? placementLabels(labelled, schedule, {
            footLength: view.body.footLength,
            footBreadth: view.body.footBreadth,
            textHeight,
            halfWidth: view.width / 2 / view.pixelsPerMetre,
            halfHeight: view.height / 2 / view.pixelsPerMetre,
            lineOfDance: schedule.figure.starts !== null,
            // The plan's, so that the labels stand alike in all panels.
            path: trailOf(ideal, view.idealFloor, view, wayOf(view, ideal, beats)),
            mirrored: view.mirrored,
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
        trailPoints: Math.min(
          trail.length / 2,
          Math.max(1, Math.floor((t - beats.from) * TRAIL_A_BEAT + ROUNDING) + 1),
        ),
        beads: beadsAt(t),
      }
    },
  }
}
