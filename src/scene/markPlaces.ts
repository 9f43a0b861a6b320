import { type Box, freeSpot } from './freeSpot.ts'
import { MARKER_REACH } from './markerOutline.ts'
import type { FootNow, PanelFrame, PanelPicture, Point } from './panelPicture.ts'
import { labelHalfWidth } from './placementLabels.ts'

/** A mark in the picture that can be explained. */
export type Mark = 'weight' | 'carries' | 'air' | 'bead' | 'coming' | 'ghost' | 'fault' | 'tick' | 'wait'

/** Where a mark is, and where its explanation goes, in CSS px from the panel's upper left corner. */
export type MarkPlace = {
  readonly mark: Mark
  readonly at: Point
  /** The explanation's middle and half its size. */
  readonly box: Box
}

/** How large an explanation will be, CSS px. */
export type TextSize = (mark: Mark) => { readonly width: number; readonly height: number }

/** How far an explanation may stand off, CSS px, the nearest first. */
const REACHES = [10, 26, 50, 84, 124, 170]
/** About how far a wait's text reaches from its bead, CSS px. */
const WAIT_REACH = 84
/** A ghost nearer to the marker than this part of the foot needs no word. */
const APART = 0.35

/** Half the box of a foot, whichever way it points, in metres. */
const footBox = ({ heading }: { readonly heading: number }, { footLength, footBreadth }: PanelPicture) => {
  const [cos, sin] = [Math.abs(Math.cos(heading)), Math.abs(Math.sin(heading))]
  return {
    halfWidth: (footBreadth * cos + footLength * sin) / 2,
    halfHeight: (footLength * cos + footBreadth * sin) / 2,
  }
}

/** The toes' tip. */
const toes = ({ x, y, heading }: FootNow, { footLength }: PanelPicture): Point => ({
  x: x + (Math.sin(heading) * footLength) / 2.3,
  y: y + (Math.cos(heading) * footLength) / 2.3,
})

/** What there is to explain now, the most important first, in view metres. */
function marksNow(picture: PanelPicture, frame: PanelFrame): { readonly mark: Mark; readonly at: Point }[] {
  const { left, right, marker, ghost, beads } = frame
  const found: { mark: Mark; at: Point }[] = [{ mark: 'weight', at: marker }]
  if (ghost !== null && Math.hypot(ghost.x - marker.x, ghost.y - marker.y) > APART * picture.footLength) {
    found.push({ mark: 'ghost', at: ghost })
    found.push({ mark: 'fault', at: { x: (ghost.x + marker.x) / 2, y: (ghost.y + marker.y) / 2 } })
  }
  const waited = beads.findLast(({ waited: halves }) => halves !== '')
  if (waited !== undefined) found.push({ mark: 'wait', at: waited })
  const lifted = [left, right].find(({ onFloor }) => !onFloor)
  if (lifted !== undefined) found.push({ mark: 'air', at: toes(lifted, picture) })
  const carrying = [left, right].find(({ onFloor, load }) => onFloor && load > 0.5)
  if (carrying !== undefined) found.push({ mark: 'carries', at: toes(carrying, picture) })
  const away = (point: Point) => Math.hypot(point.x - marker.x, point.y - marker.y) > MARKER_REACH * picture.footLength
  const bead = beads.findLast((one) => away(one))
  if (bead !== undefined) {
    const { tick } = bead
    found.push(tick === null ? { mark: 'bead', at: bead } : { mark: 'tick', at: tick })
  }
  const coming = picture.placements.at(-1)
  if (ghost === null && coming !== undefined && away(coming)) found.push({ mark: 'coming', at: coming })
  return found
}

/**
 * Where the marks of one panel are, and where the words for them go so that they hide least: the feet, what is written
 * on the floor, and each other. A mark for which there is no room is left out.
 * @param skip marks that another panel has explained already
 */
export function markPlaces(
  picture: PanelPicture,
  frame: PanelFrame,
  panel: { readonly width: number; readonly height: number },
  textSize: TextSize,
  skip: ReadonlySet<Mark> = new Set(),
): MarkPlace[] {
  const scale = picture.pixelsPerMetre
  const [halfWidth, halfHeight] = [panel.width / 2, panel.height / 2]
  const inPixels = ({ x, y }: Point): Point => ({ x: x * scale, y: -y * scale })
  const taken: Box[] = [...picture.placements, frame.left, frame.right].map((foot) => {
    const half = footBox(foot, picture)
    return { ...inPixels(foot), halfWidth: half.halfWidth * scale, halfHeight: half.halfHeight * scale }
  })
  for (const label of picture.labels) {
    const half = labelHalfWidth(label.count) * picture.textHeight * scale
    taken.push({ ...inPixels(label), halfWidth: half, halfHeight: 0.7 * picture.textHeight * scale })
  }
  // The text of a wait stands beside its bead, on whichever side was free.
  for (const { x, y, waited } of frame.beads) {
    if (waited !== '') taken.push({ ...inPixels({ x, y }), halfWidth: WAIT_REACH, halfHeight: 12 })
  }
  const ring = MARKER_REACH * picture.footLength * scale
  taken.push({ ...inPixels(frame.marker), halfWidth: ring, halfHeight: ring })

  const places: MarkPlace[] = []
  for (const { mark, at } of marksNow(picture, frame)) {
    if (skip.has(mark)) continue
    const { width, height } = textSize(mark)
    const spot = inPixels(at)
    const size = { halfWidth: width / 2, halfHeight: height / 2 }
    const box = freeSpot({ ...spot, reaches: REACHES }, size, taken, {
      halfWidth: halfWidth - 4,
      halfHeight: halfHeight - 4,
    })
    const hides = taken.some(
      (other) =>
        Math.abs(other.x - box.x) < other.halfWidth + box.halfWidth - 6 &&
        Math.abs(other.y - box.y) < other.halfHeight + box.halfHeight - 6,
    )
    const outside = Math.abs(box.x) + box.halfWidth > halfWidth || Math.abs(box.y) + box.halfHeight > halfHeight
    if (outside || (hides && mark !== 'weight')) continue
    taken.push(box)
    const moved = ({ x, y }: Point): Point => ({ x: x + halfWidth, y: y + halfHeight })
    places.push({ mark, at: moved(spot), box: { ...box, ...moved(box) } })
  }
  return places
}
