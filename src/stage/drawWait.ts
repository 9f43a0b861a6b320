import type { Graphics } from 'pixi.js'
import { layOut } from '../scene/glyphs.ts'
import { MARKER_REACH } from '../scene/markerShape.ts'
import type { StagePalette } from '../scene/palette.ts'
import type { PanelPicture } from '../scene/scene.ts'
import { type Box, freeSpot } from './freeSpot.ts'
import { strokeText } from './glyphStrokes.ts'
import { labelBox } from './labelLayout.ts'
import type { PanelSpace } from './panelSpace.ts'

/** The pill's text as a part of the counts' height. */
const TEXT = 0.8
/** Air between the marker and the pill, in pixels at scale 1. */
const GAP = 6

/** What a wait's pill must not cover: labels and placements. */
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
  return [...feet, ...picture.labels.map((label) => labelBox(label, space))]
}

/**
 * How long the weight waited at a spot, with the two bars that everybody knows as a pause.
 * @param taken what is not to be covered; the pill is added to it
 */
export function drawWait(
  g: Graphics,
  waited: string,
  spot: { readonly x: number; readonly y: number },
  color: string,
  taken: Box[],
  space: PanelSpace,
  palette: StagePalette,
): void {
  const text = layOut(waited, space.textHeight * TEXT)
  const { height } = text
  const bars = height * 0.42
  const between = height * 0.34
  const size = { halfWidth: (bars + between + text.width) / 2 + height * 0.55, halfHeight: height * 0.95 }
  const reach = MARKER_REACH * space.footLength + GAP * space.widths.scale
  const panel = { halfWidth: space.width / 2, halfHeight: space.height / 2 }
  const pill = freeSpot({ ...spot, reach }, size, taken, panel)
  taken.push(pill)

  const trace = () =>
    g.roundRect(
      pill.x - size.halfWidth,
      pill.y - size.halfHeight,
      2 * size.halfWidth,
      2 * size.halfHeight,
      size.halfHeight,
    )
  trace().fill(palette.floor)
  trace().stroke({ color, width: space.widths.tick })
  const left = pill.x - (bars + between + text.width) / 2
  for (const x of [left + height * 0.08, left + bars - height * 0.08]) {
    g.moveTo(x, pill.y - height * 0.4).lineTo(x, pill.y + height * 0.4)
  }
  g.stroke({ color: palette.ink, width: height * 0.17, cap: 'round' })
  strokeText(g, text, left + bars + between + text.width / 2, pill.y, palette.ink)
}
