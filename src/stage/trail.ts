import { Container, type Graphics } from 'pixi.js'
import type { StagePalette } from '../scene/palette.ts'
import type { Bead, PanelFrame, PanelPicture, Point } from '../scene/panelPicture.ts'
import { drawBeads } from './drawBeads.ts'
import type { GraphicsPool } from './graphicsPool.ts'
import type { PanelSpace } from './panelSpace.ts'

export type Trail = {
  readonly container: Container
  /** @returns whether beads and the older part of the line were drawn anew */
  show(frame: PanelFrame): boolean
}

/** Points closer than this many pixels add nothing that can be seen. */
const CLOSE = 0.8
/** Keeps the line apart from a foot filled in the same colour. */
const HALO = 1.2

/**
 * The line that the weight has drawn, with its beads. The part up to the last bead is drawn anew only when a bead is
 * added or taken away; each frame draws the end, from that bead to the marker.
 */
export function createTrail(
  picture: PanelPicture,
  space: PanelSpace,
  palette: StagePalette,
  pool: GraphicsPool,
): Trail {
  const older = pool.take()
  const end = pool.take()
  const beadLayer = pool.take()
  const container = new Container()
  container.addChild(older, end, beadLayer)
  const color = palette.accent[picture.tone]

  let shownBeads: readonly Bead[] | null = null
  let shownTrail: Float64Array | null = null
  let joint = 0

  /** @param tip where the line ends, beyond the last sample; null: at the last sample */
  const trace = (g: Graphics, trail: Float64Array, from: number, to: number, tip: Point | null): void => {
    g.clear()
    if (to < from || (to === from && tip === null)) return
    line(g, trail, from, to, tip)
    g.stroke({
      color: palette.floor,
      width: space.widths.trail + 2 * HALO * space.widths.scale,
      cap: 'round',
      join: 'round',
    })
    line(g, trail, from, to, tip)
    g.stroke({ color, width: space.widths.trail, cap: 'round', join: 'round' })
  }

  const line = (g: Graphics, trail: Float64Array, from: number, to: number, tip: Point | null): void => {
    let lastX = Number.NaN
    let lastY = Number.NaN
    for (let i = from; i <= to; i++) {
      const x = (trail[2 * i] as number) * space.pixelsPerMetre
      const y = -(trail[2 * i + 1] as number) * space.pixelsPerMetre
      if (i === from) g.moveTo(x, y)
      else if (i < to && Math.hypot(x - lastX, y - lastY) < CLOSE) continue
      else g.lineTo(x, y)
      lastX = x
      lastY = y
    }
    if (tip !== null) g.lineTo(tip.x * space.pixelsPerMetre, -tip.y * space.pixelsPerMetre)
  }

  const show = (frame: PanelFrame): boolean => {
    const last = frame.trailPoints - 1
    const anew = frame.beads !== shownBeads || frame.trail !== shownTrail || joint > Math.max(0, last)
    if (anew) {
      shownBeads = frame.beads
      shownTrail = frame.trail
      joint = jointOf(frame)
      trace(older, frame.trail, 0, joint, null)
      beadLayer.clear()
      drawBeads(beadLayer, frame.beads, picture, space, palette)
    }
    trace(end, frame.trail, joint, last, frame.marker)
    return anew
  }
  return { container, show }
}

/** The first of the trail's points that lie on the last bead; 0 when the trail does not pass exactly through it. */
function jointOf({ beads, trail, trailPoints }: PanelFrame): number {
  const bead = beads[beads.length - 1]
  if (bead === undefined) return 0
  const on = (i: number) =>
    Math.abs((trail[2 * i] as number) - bead.x) < 1e-6 && Math.abs((trail[2 * i + 1] as number) - bead.y) < 1e-6
  let i = trailPoints - 1
  while (i > 0 && !on(i)) i--
  while (i > 0 && on(i - 1)) i--
  return Math.max(0, i)
}
