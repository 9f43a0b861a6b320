import type { Graphics, GraphicsContext } from 'pixi.js'
import type { LaidOutText } from '../scene/glyphs.ts'
import { traceLine } from './traceLine.ts'

/** Only ends this wide, in pixels, are seen to be round; each costs some twenty triangles. */
const ROUND_FROM = 3

/**
 * Draws a laid-out text with its middle at (x, y), in pixels.
 * @param halo added on both sides of each stroke: draw once with it in the ground's colour, then without in ink
 */
export function strokeText(
  target: Graphics | GraphicsContext,
  text: LaidOutText,
  x: number,
  y: number,
  color: string,
  halo = 0,
): void {
  const widths = new Set(text.strokes.map((stroke) => stroke.width))
  for (const width of widths) {
    for (const stroke of text.strokes) {
      if (stroke.width === width) traceLine(target, stroke.points, stroke.closed, x, y, 1, -1)
    }
    // Curves are fine enough to need no round joins.
    const cap = halo === 0 && width >= ROUND_FROM ? 'round' : 'square'
    target.stroke({ color, width: width + 2 * halo, cap, join: 'bevel' })
  }
}
