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

/** Between what is said of the feet and the bar, in text heights: beside it, and over it. */
const FEET_GAP = 1.6
const LINE_GAP = 0.5
/** In a panel narrower than this the two stand one over the other: the figure stands in the middle. In pixels at scale 1. */
const NARROW = 400

/** Both texts, the bar's width, and the sizes of the part that has the bar and of all, in px. */
function measured({ scaleBar }: PanelPicture, space: PanelSpace) {
  const { scale } = space.widths
  const size = TEXT_HEIGHT * scale
  const text = layOut(scaleBar.text, size)
  const feet = layOut(scaleBar.feet, size)
  const bar = scaleBar.length * space.pixelsPerMetre
  const right = Math.max(bar, text.width)
  const over = space.width < NARROW * scale
  const said = scaleBar.feet !== ''
  return {
    ...{ text, feet, bar, right, over },
    width: over ? Math.max(right, feet.width) : right + (said ? feet.width + FEET_GAP * size : 0),
    height: (TEXT_HEIGHT + END_HEIGHT + TEXT_GAP) * scale + (over && said ? (1 + LINE_GAP) * size : 0),
  }
}

/** What the scale bar takes of the panel, in its lower right corner. */
export function scaleBarBox(picture: PanelPicture, space: PanelSpace): Box {
  const { width, height } = measured(picture, space)
  const margin = CORNER_MARGIN * space.widths.scale
  return {
    x: space.width / 2 - margin - width / 2,
    y: space.height / 2 - margin - height / 2,
    halfWidth: width / 2,
    halfHeight: height / 2,
  }
}

/** The floor's scale over a bar, and to the left of it or over it how much larger the feet are, where they are. */
export function drawScaleBar(
  g: GraphicsContext,
  picture: PanelPicture,
  space: PanelSpace,
  palette: StagePalette,
): void {
  const { scale } = space.widths
  const { text, feet, bar, right, over } = measured(picture, space)
  const box = scaleBarBox(picture, space)
  const x = box.x + box.halfWidth - right / 2
  const y = box.y + box.halfHeight
  const end = END_HEIGHT * scale
  g.moveTo(x - bar / 2, y - end)
    .lineTo(x - bar / 2, y)
    .lineTo(x + bar / 2, y)
    .lineTo(x + bar / 2, y - end)
  g.stroke({ color: palette.quietInk, width: 1.6 * scale, cap: 'round', join: 'round' })
  const line = y - (END_HEIGHT + TEXT_GAP) * scale - text.height / 2
  const feetAt = over
    ? { x: box.x + box.halfWidth - feet.width / 2, y: box.y - box.halfHeight + feet.height / 2 }
    : { x: box.x - box.halfWidth + feet.width / 2, y: line }
  for (const [written, at] of [
    [text, { x, y: line }],
    [feet, feetAt],
  ] as const) {
    strokeText(g, written, at.x, at.y, palette.floor, 2.5 * scale)
    strokeText(g, written, at.x, at.y, palette.quietInk)
  }
}
