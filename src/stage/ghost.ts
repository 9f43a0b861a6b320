import type { Graphics } from 'pixi.js'
import { markerCircle } from '../scene/markerOutline.ts'
import type { StagePalette } from '../scene/palette.ts'
import type { Point } from '../scene/panelPicture.ts'
import { dashes } from './dashes.ts'
import type { GraphicsPool } from './graphicsPool.ts'
import type { PanelSpace } from './panelSpace.ts'
import { traceLine } from './traceLine.ts'

export type Ghost = {
  /** Below the marker. */
  readonly hollow: Graphics
  /** Above the marker, or a short fault would vanish under its ring. */
  readonly line: Graphics
  readonly staticShapes: number
  show(ghost: Point | null, marker: Point): void
}

/** Where the weight should be now, hollow and dashed, and the line whose length is the fault. */
export function createGhost(space: PanelSpace, palette: StagePalette, pool: GraphicsPool): Ghost {
  const { ghost: width, fault, halo } = space.widths
  const hollow = pool.takeShared(['ghost', space.footLength, width, palette.page].join(), (context) => {
    const circle = markerCircle().map((value) => value * space.footLength)
    traceLine(context, circle, true)
    context.stroke({ color: palette.floor, width: width + 2 * halo, alpha: 0.85 })
    for (const dash of dashes(circle, true, 2.6 * width, 2 * width)) traceLine(context, dash)
    context.stroke({ color: palette.ink, width, cap: 'butt', join: 'miter' })
  })

  const line = pool.take()

  const show = (at: Point | null, marker: Point): void => {
    hollow.visible = at !== null
    line.visible = at !== null
    if (at === null) return
    const [x, y] = [at.x * space.pixelsPerMetre, -at.y * space.pixelsPerMetre]
    const [toX, toY] = [marker.x * space.pixelsPerMetre, -marker.y * space.pixelsPerMetre]
    hollow.position.set(x, y)
    line.clear()
    line
      .moveTo(x, y)
      .lineTo(toX, toY)
      .stroke({ color: palette.floor, width: fault + 2 * halo, cap: 'round' })
    line.circle(x, y, fault * 1.15 + halo).fill(palette.floor)
    line.moveTo(x, y).lineTo(toX, toY).stroke({ color: palette.ink, width: fault, cap: 'round' })
    line.circle(x, y, fault * 1.15).fill(palette.ink)
  }
  return { hollow, line, staticShapes: 1, show }
}
