import type { Graphics, GraphicsContext } from 'pixi.js'
import type { StagePalette } from '../scene/palette.ts'
import type { PanelPicture } from '../scene/panelPicture.ts'
import { dashes } from './dashes.ts'
import { CORNER_MARGIN, type PanelSpace } from './panelSpace.ts'
import { drawScaleBar } from './scaleBar.ts'
import { traceLine } from './traceLine.ts'

/** A dot of the way to come, and the gap between two, in pixels at scale 1. */
const DOT = 2.3
const DOTS_APART = 4.4

/** The floor itself: ground, grid, scale bar and the line of dance. */
export function drawFloor(g: GraphicsContext, picture: PanelPicture, space: PanelSpace, palette: StagePalette): void {
  g.rect(-space.width / 2, -space.height / 2, space.width, space.height).fill(palette.floor)
  drawGrid(g, picture, space, palette)
  drawScaleBar(g, picture, space, palette)
  if (picture.lineOfDance !== null) drawLineOfDance(g, picture.lineOfDance, space, palette)
}

function drawGrid(g: GraphicsContext, picture: PanelPicture, space: PanelSpace, palette: StagePalette): void {
  const spacing = picture.gridSpacing * space.pixelsPerMetre
  if (!(spacing >= 4)) return // closer lines would be a grey wash
  const [halfWidth, halfHeight] = [space.width / 2, space.height / 2]
  const throughX = picture.gridThrough.x * space.pixelsPerMetre
  const throughY = -picture.gridThrough.y * space.pixelsPerMetre
  // On the middle of a pixel, or a one-pixel line is smeared over two.
  const crisp = (value: number, half: number) => Math.round(value + half) + 0.5 - half
  for (let k = Math.ceil((-halfWidth - throughX) / spacing); throughX + k * spacing < halfWidth; k++) {
    const x = crisp(throughX + k * spacing, halfWidth)
    g.moveTo(x, -halfHeight).lineTo(x, halfHeight)
  }
  for (let k = Math.ceil((-halfHeight - throughY) / spacing); throughY + k * spacing < halfHeight; k++) {
    const y = crisp(throughY + k * spacing, halfHeight)
    g.moveTo(-halfWidth, y).lineTo(halfWidth, y)
  }
  g.stroke({ color: palette.floorLine, width: space.widths.grid })
}

/** The weight's way that is still to come, as dots: square ones, for round ones cost many times as many triangles. */
export function drawPathToCome(g: Graphics, picture: PanelPicture, space: PanelSpace, palette: StagePalette): void {
  if (picture.wholePath.length < 4) return
  const dot = DOT * space.widths.scale
  const points = Array.from(picture.wholePath, (value, i) => (i % 2 === 0 ? value : -value) * space.pixelsPerMetre)
  for (const dash of dashes(points, false, dot, DOTS_APART * space.widths.scale)) traceLine(g, dash)
  g.stroke({ color: palette.pathToCome, width: dot, cap: 'butt', join: 'miter' })
}

function drawLineOfDance(g: GraphicsContext, heading: number, space: PanelSpace, palette: StagePalette): void {
  const { scale } = space.widths
  const half = 19 * scale
  const [dx, dy] = [Math.sin(heading), -Math.cos(heading)]
  const x = space.width / 2 - CORNER_MARGIN * scale - half
  const y = -space.height / 2 + CORNER_MARGIN * scale + half
  const head = 9 * scale
  const [tipX, tipY] = [x + dx * half, y + dy * half]
  g.moveTo(x - dx * half, y - dy * half).lineTo(tipX, tipY)
  g.moveTo(tipX - dx * head + dy * head * 0.7, tipY - dy * head - dx * head * 0.7).lineTo(tipX, tipY)
  g.lineTo(tipX - dx * head - dy * head * 0.7, tipY - dy * head + dx * head * 0.7)
  g.stroke({ color: palette.quietInk, width: 2.2 * scale, cap: 'round', join: 'round' })
}
