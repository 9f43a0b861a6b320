import type { GraphicsContext } from 'pixi.js'
import type { Box } from '../scene/freeSpot.ts'
import { layOut } from '../scene/glyphs.ts'
import type { StagePalette } from '../scene/palette.ts'
import type { PanelPicture } from '../scene/panelPicture.ts'
import { CORNER_MARGIN, type PanelSpace } from './panelSpace.ts'
import { strokeText } from './strokeText.ts'

/** In pixels at scale 1. */
const TEXT_HEIGHT = 11
const END_HEIGHT = 4
const TEXT_GAP = 3

/** What the scale bar takes of the panel, in its lower right corner. */
export function scaleBarBox(picture: PanelPicture, space: PanelSpace): Box {
  const { scale } = space.widths
  const text = layOut(picture.scaleBar.text, TEXT_HEIGHT * scale)
  const halfWidth = Math.max(picture.scaleBar.length * space.pixelsPerMetre, text.width) / 2
  const halfHeight = ((TEXT_HEIGHT + END_HEIGHT + TEXT_GAP) / 2) * scale
  return {
    x: space.width / 2 - CORNER_MARGIN * scale - halfWidth,
    y: space.height / 2 - CORNER_MARGIN * scale - halfHeight,
    halfWidth,
    halfHeight,
  }
}

export function drawScaleBar(
  g: GraphicsContext,
  picture: PanelPicture,
  space: PanelSpace,
  palette: StagePalette,
): void {
  const { scale } = space.widths
  const box = scaleBarBox(picture, space)
  const half = (picture.scaleBar.length * space.pixelsPerMetre) / 2
  const y = box.y + box.halfHeight
  const end = END_HEIGHT * scale
  g.moveTo(box.x - half, y - end)
    .lineTo(box.x - half, y)
    .lineTo(box.x + half, y)
    .lineTo(box.x + half, y - end)
  g.stroke({ color: palette.quietInk, width: 1.6 * scale, cap: 'round', join: 'round' })
  const text = layOut(picture.scaleBar.text, TEXT_HEIGHT * scale)
  const middle = box.y - box.halfHeight + text.height / 2
  strokeText(g, text, box.x, middle, palette.floor, 2.5 * scale)
  strokeText(g, text, box.x, middle, palette.quietInk)
}
