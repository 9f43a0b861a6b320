import type { Graphics } from 'pixi.js'
import { markerOutline } from '../scene/markerOutline.ts'
import type { StagePalette } from '../scene/palette.ts'
import type { Tone } from '../scene/panelPicture.ts'
import type { GraphicsPool } from './graphicsPool.ts'
import type { PanelSpace } from './panelSpace.ts'
import { traceLine } from './traceLine.ts'

/** An outline with no more numbers than this has corners. */
const CORNERED = 16

/** The weight: an open ring, bright, edged in ink on both sides. Built once, then moved. */
export function createMarker(tone: Tone, space: PanelSpace, palette: StagePalette, pool: GraphicsPool): Graphics {
  const marker = pool.take()
  const { ring, ringEdge, halo } = space.widths
  const outline = markerOutline(tone)
  const trace = () => traceLine(marker, outline, true, 0, 0, space.footLength, -space.footLength)
  // A circle's points lie too close for a join to be seen.
  const join = outline.length > CORNERED ? 'miter' : 'round'
  const stroke = (width: number, color: string, alpha = 1) => {
    trace()
    marker.stroke({ width, color, alpha, join })
  }
  stroke(ring + 2 * ringEdge + 2 * halo, palette.floor, 0.9)
  stroke(ring + 2 * ringEdge, palette.ink)
  stroke(ring, palette.accent[tone])
  return marker
}

/** The dot at the marker's exact place, above everything else. */
export function createMarkerDot(space: PanelSpace, palette: StagePalette, pool: GraphicsPool): Graphics {
  const { centreDot, halo } = space.widths
  const dot = pool.take()
  dot.circle(0, 0, centreDot + halo).fill(palette.floor)
  dot.circle(0, 0, centreDot).fill(palette.ink)
  return dot
}
