import type { Graphics } from 'pixi.js'
import { type Box, freeSpot } from '../scene/freeSpot.ts'
import { type LaidOutText, layOut } from '../scene/glyphs.ts'
import { MARKER_REACH } from '../scene/markerOutline.ts'
import type { StagePalette } from '../scene/palette.ts'
import type { PanelPicture } from '../scene/panelPicture.ts'
import { labelBox } from './labelLayout.ts'
import type { PanelSpace } from './panelSpace.ts'
import { scaleBarBox } from './scaleBar.ts'
import { strokeText } from './strokeText.ts'

/** The pill's text as a part of the counts' height. */
const TEXT = 0.8
/** Air between the marker and the pill, in pixels at scale 1. */
const GAP = 6
/** The two bars, the space between them and the text, and the pill's ends, in heights of the text. */
const BARS = 0.42
const BETWEEN = 0.34
const ENDS = 0.55

/** The weight's way counts as a row of boxes this far apart and this large, in pixels at scale 1. */
const WAY_STEP = 10
const WAY_HALF = 5

/** What a wait's pill must not cover: placements, labels, scale bar and the weight's way. */
export function takenSpots(picture: PanelPicture, space: PanelSpace): Box[] {
  const feet = picture.placements.map(({ x, y, heading }): Box => {
    const [along, across] = [space.footLength / 2, (picture.footBreadth * space.pixelsPerMetre) / 2]
    const [cos, sin] = [Math.abs(Math.cos(heading)), Math.abs(Math.sin(heading))]
    return {
      x: x * space.pixelsPerMetre,
      y: -y * space.pixelsPerMetre,
      halfWidth: across * cos + along * sin,
      halfHeight: across * sin + along * cos,
    }
  })
  const labels = picture.labels.map((label) => labelBox(label, space))
  return [...feet, ...labels, scaleBarBox(picture, space), ...wayBoxes(picture, space)]
}

function wayBoxes({ wholePath }: PanelPicture, space: PanelSpace): Box[] {
  const half = WAY_HALF * space.widths.scale
  const boxes: Box[] = []
  for (let i = 0; i + 1 < wholePath.length; i += 2) {
    const x = (wholePath[i] as number) * space.pixelsPerMetre
    const y = -(wholePath[i + 1] as number) * space.pixelsPerMetre
    const last = boxes[boxes.length - 1]
    if (last !== undefined && Math.hypot(x - last.x, y - last.y) < WAY_STEP * space.widths.scale) continue
    boxes.push({ x, y, halfWidth: half, halfHeight: half })
  }
  return boxes
}

/** A wait's pill: its text, and where it lies. */
export type WaitPill = { readonly text: LaidOutText; readonly box: Box }

/**
 * Finds a place beside a spot where the weight waited.
 * @param taken what is not to be covered; the pill is added to it
 */
export function placeWait(
  waited: string,
  spot: { readonly x: number; readonly y: number },
  taken: Box[],
  space: PanelSpace,
): WaitPill {
  const text = layOut(waited, space.textHeight * TEXT)
  const size = {
    halfWidth: text.width / 2 + ((BARS + BETWEEN) / 2 + ENDS) * text.height,
    halfHeight: text.height * 0.95,
  }
  const reach = MARKER_REACH * space.footLength + GAP * space.widths.scale
  const panel = { halfWidth: space.width / 2, halfHeight: space.height / 2 }
  const box = freeSpot({ ...spot, reaches: [reach] }, size, taken, panel)
  taken.push(box)
  return { text, box }
}

/** How long the weight waited, with the two bars that everybody knows as a pause. */
export function drawWait(
  g: Graphics,
  { text, box }: WaitPill,
  color: string,
  space: PanelSpace,
  palette: StagePalette,
): void {
  const { height } = text
  const trace = () =>
    g.roundRect(box.x - box.halfWidth, box.y - box.halfHeight, 2 * box.halfWidth, 2 * box.halfHeight, box.halfHeight)
  trace().fill(palette.floor)
  trace().stroke({ color, width: space.widths.tick })
  const left = box.x - box.halfWidth + ENDS * height
  for (const x of [left + height * 0.08, left + (BARS - 0.08) * height]) {
    g.moveTo(x, box.y - height * 0.4).lineTo(x, box.y + height * 0.4)
  }
  g.stroke({ color: palette.ink, width: height * 0.17, cap: 'round' })
  strokeText(g, text, left + (BARS + BETWEEN) * height + text.width / 2, box.y, palette.ink)
}
