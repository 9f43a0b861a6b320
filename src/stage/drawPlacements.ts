import type { GraphicsContext } from 'pixi.js'
import { footprintOutline, heelLine, shapeOf } from '../scene/footprint.ts'
import type { StagePalette } from '../scene/palette.ts'
import type { PanelPicture, Placement, PlacementLabel } from '../scene/panelPicture.ts'
import { layOutLabel } from './labelLayout.ts'
import type { PanelSpace } from './panelSpace.ts'
import { strokeText } from './strokeText.ts'
import { traceLine } from './traceLine.ts'

/** Where feet come to stand, past and coming, as faint outlines. */
export function drawPlacements(
  g: GraphicsContext,
  picture: PanelPicture,
  space: PanelSpace,
  palette: StagePalette,
): void {
  for (const placement of picture.placements) {
    traceLine(g, placed(footprintOutline(shapeOf(placement.foot, picture.mirrored)), placement, space), true)
  }
  g.fill({ color: palette.foot, alpha: 0.45 }).stroke({ color: palette.placement, width: space.widths.placement })
  for (const placement of picture.placements)
    traceLine(g, placed(heelLine(shapeOf(placement.foot, picture.mirrored)), placement, space))
  g.stroke({ color: palette.placement, width: space.widths.placement * 0.8 })
}

/** The numbers and counts beside them. */
export function drawLabels(g: GraphicsContext, picture: PanelPicture, space: PanelSpace, palette: StagePalette): void {
  for (const label of picture.labels) drawLabel(g, label, space, palette)
}

function placed(points: readonly number[], { x, y, heading }: Placement, space: PanelSpace): number[] {
  const [cos, sin] = [Math.cos(heading) * space.footLength, Math.sin(heading) * space.footLength]
  const moved: number[] = []
  for (let i = 0; i < points.length; i += 2) {
    const [px, py] = [points[i] as number, -(points[i + 1] as number)]
    moved.push(x * space.pixelsPerMetre + px * cos - py * sin, -y * space.pixelsPerMetre + px * sin + py * cos)
  }
  return moved
}

function drawLabel(g: GraphicsContext, label: PlacementLabel, space: PanelSpace, palette: StagePalette): void {
  const { number, count, radius, ringX, countX, y } = layOutLabel(label, space)
  strokeText(g, count, countX, y, palette.floor, 2.2 * space.widths.scale)
  strokeText(g, count, countX, y, palette.ink)
  if (radius === 0) return
  g.circle(ringX, y, radius).fill(palette.floor)
  g.circle(ringX, y, radius).stroke({ color: palette.placement, width: space.widths.placement })
  strokeText(g, number, ringX, y, palette.quietInk)
}
