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

/** Between what is said of the feet and the bar, in text heights. */
const FEET_GAP = 1.6

/** Both texts and the widths of the bar's part and of all, in px. */
function measured({ scaleBar }: PanelPicture, space: PanelSpace) {
  const size = TEXT_HEIGHT * space.widths.scale
  const text = layOut(scaleBar.text, size)
  const feet = layOut(scaleBar.feet, size)
  const bar = scaleBar.length * space.pixelsPerMetre
  const right = Math.max(bar, text.width)
  return { text, feet, bar, right, all: right + (scaleBar.feet === '' ? 0 : feet.width + FEET_GAP * size) }
}

/** What the scale bar takes of the panel, in its lower right corner. */
export function scaleBarBox(picture: PanelPicture, space: PanelSpace): Box {
  const { scale } = space.widths
  const halfWidth = measured(picture, space).all / 2
  const halfHeight = ((TEXT_HEIGHT + END_HEIGHT + TEXT_GAP) / 2) * scale
  return {
    x: space.width / 2 - CORNER_MARGIN * scale - halfWidth,
    y: space.height / 2 - CORNER_MARGIN * scale - halfHeight,
    halfWidth,
    halfHeight,
  }
}

/** The floor's scale over a bar, and to the left of it how much larger the feet are, where they are. */
export function drawScaleBar(
  g: GraphicsContext,
  picture: PanelPicture,
  space: PanelSpace,
  palette: StagePalette,
): void {
  const { scale } = space.widths
  const { text, feet, bar, right } = measured(picture, space)
  const box = scaleBarBox(picture, space)
  const x = box.x + box.halfWidth - right / 2
  const y = box.y + box.halfHeight
  const end = END_HEIGHT * scale
  g.moveTo(x - bar / 2, y - end)
    .lineTo(x - bar / 2, y)
    .lineTo(x + bar / 2, y)
    .lineTo(x + bar / 2, y - end)
  g.stroke({ color: palette.quietInk, width: 1.6 * scale, cap: 'round', join: 'round' })
  const middle = box.y - box.halfHeight + text.height / 2
  for (const [line, at] of [
    [text, x],
    [feet, box.x - box.halfWidth + feet.width / 2],
  ] as const) {
    strokeText(g, line, at, middle, palette.floor, 2.5 * scale)
    strokeText(g, line, at, middle, palette.quietInk)
  }
}
