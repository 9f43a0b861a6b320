import { GLYPH_STROKE, type GlyphShape, glyphShape } from './glyphShapes.ts'

/** One round-capped stroke: x and y in turn, y upwards, and its width; in the units of the height asked for. */
export type GlyphStroke = { readonly points: readonly number[]; readonly closed: boolean; readonly width: number }

/** A line of text as strokes. Its middle (half its width, half the capitals' height) is at (0, 0). */
export type LaidOutText = { readonly width: number; readonly height: number; readonly strokes: readonly GlyphStroke[] }

const POINTS_PER_CURVE = 10
/** Air between two characters, beyond what their advances hold. */
const TRACKING = 0.04
/** A fraction: two small figures and a slanted stroke, all thinner, so that the small ones stay open. */
const FRACTION_SIZE = 0.54
const FRACTION_STROKE = 0.105
const FRACTION_ADVANCE = 0.98
const FRACTIONS: Readonly<Record<string, readonly [string, string]>> = {
  '½': ['1', '2'],
  '¼': ['1', '4'],
  '¾': ['3', '4'],
}

/** A stroke's middle line in text heights. */
type Line = { readonly points: readonly number[]; readonly closed: boolean; readonly width: number }
type Glyph = { readonly advance: number; readonly lines: readonly Line[] }

function traceCurve(points: number[], c: readonly number[]): void {
  const [x0, y0] = [points[points.length - 2] as number, points[points.length - 1] as number]
  const [x1, y1, x2, y2, x3, y3] = c as [number, number, number, number, number, number]
  for (let k = 1; k <= POINTS_PER_CURVE; k++) {
    const t = k / POINTS_PER_CURVE
    const s = 1 - t
    points.push(
      s * s * s * x0 + 3 * s * s * t * x1 + 3 * s * t * t * x2 + t * t * t * x3,
      s * s * s * y0 + 3 * s * s * t * y1 + 3 * s * t * t * y2 + t * t * t * y3,
    )
  }
}

/** Reads the small path language of `glyphShapes`: M, L, C with absolute numbers, Z. */
function traceShape(shape: GlyphShape, width: number): Line[] {
  const lines: { points: number[]; closed: boolean; width: number }[] = []
  for (const [, command, rest] of shape.path.matchAll(/([MLCZ])([^MLCZ]*)/g)) {
    const numbers = (rest?.match(/[\d.]+/g) ?? []).map(Number)
    const line = lines[lines.length - 1]
    if (command === 'M' || line === undefined) lines.push({ points: numbers, closed: false, width })
    else if (command === 'Z') line.closed = true
    else if (command === 'L') line.points.push(...numbers)
    else traceCurve(line.points, numbers)
  }
  return lines
}

const moved = (line: Line, scale: number, dx: number, dy: number): Line => ({
  ...line,
  points: line.points.map((value, i) => value * scale + (i % 2 === 0 ? dx : dy)),
})

function fraction(above: string, below: string): Glyph {
  const small = (figure: string) => traceShape(glyphShape(figure), FRACTION_STROKE)
  return {
    advance: FRACTION_ADVANCE,
    lines: [
      ...small(above).map((line) => moved(line, FRACTION_SIZE, -0.02, 1 - FRACTION_SIZE)),
      { points: [0.25, 0.08, 0.67, 0.92], closed: false, width: FRACTION_STROKE },
      ...small(below).map((line) => moved(line, FRACTION_SIZE, 0.58, 0)),
    ],
  }
}

function glyphOf(character: string): Glyph {
  const parts = FRACTIONS[character]
  if (parts !== undefined) return fraction(...parts)
  const shape = glyphShape(character)
  return { advance: shape.advance, lines: traceShape(shape, GLYPH_STROKE) }
}

/**
 * A line of text as round-capped strokes, from our own outlines for `0-9 S Q & a L R - ½ ¼ ¾ c e f m t ×` and space; any
 * other character becomes a box.
 * @param height of the capitals and figures, in any unit above 0; the answer is in the same unit
 */
export function layOut(text: string, height: number): LaidOutText {
  const glyphs = [...text].map(glyphOf)
  const width = glyphs.reduce((sum, glyph) => sum + glyph.advance + TRACKING, glyphs.length > 0 ? -TRACKING : 0)
  const strokes: GlyphStroke[] = []
  let pen = -width / 2
  for (const glyph of glyphs) {
    for (const line of glyph.lines) {
      const { points, closed, width: strokeWidth } = moved(line, height, pen * height, -height / 2)
      strokes.push({ points, closed, width: strokeWidth * height })
    }
    pen += glyph.advance + TRACKING
  }
  return { width: width * height, height, strokes }
}
