import type { Graphics, GraphicsContext } from 'pixi.js'

/**
 * Adds a line through `points` (x and y in turn) to the current path. A closed one is closed as a path, since a
 * polygon's stroke stays open at its first point in pixi's canvas renderer (8.22.0).
 * @param scaleY −1 turns y upwards (metres) into y downwards (pixels)
 */
export function traceLine(
  target: Graphics | GraphicsContext,
  points: readonly number[],
  closed = false,
  x = 0,
  y = 0,
  scaleX = 1,
  scaleY = 1,
): void {
  for (let i = 0; i + 1 < points.length; i += 2) {
    const px = x + (points[i] as number) * scaleX
    const py = y + (points[i + 1] as number) * scaleY
    if (i === 0) target.moveTo(px, py)
    else target.lineTo(px, py)
  }
  if (closed && points.length > 4) target.closePath()
}
