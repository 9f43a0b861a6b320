import { Container, type Graphics, type GraphicsContext } from 'pixi.js'
import { footprintOutline, heelLine, loadedPart, SOLE_MIDDLE_Y, shapeOf } from '../scene/footprint.ts'
import { layOut } from '../scene/glyphs.ts'
import type { StagePalette } from '../scene/palette.ts'
import type { FootNow, Placement } from '../scene/panelPicture.ts'
import { dashes } from './dashes.ts'
import type { GraphicsPool } from './graphicsPool.ts'
import type { PanelSpace } from './panelSpace.ts'
import { strokeText } from './strokeText.ts'
import { traceLine } from './traceLine.ts'

/** One foot that moves: its parts, to be put into the panel's layers, and how to show it. */
export type MovingFoot = {
  readonly shadow: Graphics
  readonly foot: Container
  /** Above the weight's marker, or it could not be read just when the foot carries. */
  readonly letter: Graphics
  readonly staticShapes: number
  show(now: FootNow): void
}

/** Lifts are a few centimetres: shown larger, or nobody sees them from above. */
const SHADOW_PER_METRE = 1.4
const FARTHEST_SHADOW = 0.13
/** Soft edges without a filter: the same outline again and again, a little wider each time. */
const SHADOW_LAYERS = 5
const LETTER_SIZE = 0.235
/** The outline's points lie so close that no join is seen; a round one would cost several times as many triangles. */
const SMOOTH = 'miter'

/** Builds a foot's shapes once, in pixels around its middle with the toes up; later only transforms and the load move. */
export function createFoot(
  side: Placement['foot'],
  mirrored: boolean,
  accent: string,
  space: PanelSpace,
  palette: StagePalette,
  pool: GraphicsPool,
): MovingFoot {
  const length = space.footLength
  const { widths } = space
  const shape = shapeOf(side, mirrored)
  const outline = footprintOutline(shape)
  const heel = heelLine(shape)
  const outlinePixels = outline.map((value, i) => (i % 2 === 0 ? value : -value) * length)

  // Panels of one size have the same feet; only what is filled is each one's own.
  const shared = (part: string, draw: (context: GraphicsContext) => void): Graphics =>
    pool.takeShared([part, side, shape, length, widths.scale, palette.page].join(), draw)

  const shadow = shared('shadow', (context) => {
    for (let k = SHADOW_LAYERS; k >= 1; k--) {
      traceLine(context, outlinePixels, true)
      context.stroke({ color: palette.shadow, width: (k * 2.4 - 1) * widths.scale, alpha: 0.11, join: SMOOTH })
    }
    traceLine(context, outlinePixels, true)
    context.fill({ color: palette.shadow, alpha: 0.4 })
  })
  const standing = shared('standing', (context) => {
    traceLine(context, outlinePixels, true)
    context.fill(palette.foot)
  })
  const load = pool.take()
  const standingLines = shared('lines', (context) => {
    traceLine(context, heel, false, 0, 0, length, -length)
    context.stroke({ color: palette.ink, width: widths.heel })
    traceLine(context, outlinePixels, true)
    context.stroke({ color: palette.ink, width: widths.footOutline, join: SMOOTH })
  })
  const lifted = shared('lifted', (context) => {
    traceLine(context, outlinePixels, true)
    context.fill({ color: palette.foot, alpha: 0.82 })
    for (const dash of dashes(outlinePixels, true, 3.2 * widths.footOutline, 2.1 * widths.footOutline)) {
      traceLine(context, dash)
    }
    context.stroke({ color: palette.ink, width: widths.footOutline, join: SMOOTH })
  })
  const letter = shared('letter', (context) => {
    const text = layOut(side === 'left' ? 'L' : 'R', LETTER_SIZE * length)
    strokeText(context, text, 0, 0, palette.foot, 1.7 * widths.scale)
    strokeText(context, text, 0, 0, palette.ink)
  })

  const turning = new Container()
  turning.addChild(standing, load, standingLines, lifted)
  const foot = new Container()
  foot.addChild(turning)

  let shownLoad = Number.NaN
  const show = (now: FootNow): void => {
    const x = now.x * space.pixelsPerMetre
    const y = -now.y * space.pixelsPerMetre
    foot.position.set(x, y)
    turning.rotation = now.heading
    // The letter stays upright: a foot that points down the panel must not be read upside down.
    letter.position.set(
      x + Math.sin(now.heading) * SOLE_MIDDLE_Y * length,
      y - Math.cos(now.heading) * SOLE_MIDDLE_Y * length,
    )
    standing.visible = now.onFloor
    standingLines.visible = now.onFloor
    load.visible = now.onFloor && now.load > 0
    lifted.visible = !now.onFloor
    shadow.visible = !now.onFloor
    if (shadow.visible) {
      const distance = Math.min(now.height * space.pixelsPerMetre * SHADOW_PER_METRE, FARTHEST_SHADOW * length)
      shadow.position.set(x + distance * 0.6, y + distance)
      shadow.rotation = now.heading
    }
    if (load.visible && now.load !== shownLoad) {
      shownLoad = now.load
      load.clear()
      traceLine(load, loadedPart(shape, now.load), true, 0, 0, length, -length)
      load.fill(accent)
    }
  }
  return { shadow, foot, letter, staticShapes: 5, show }
}
