import type { Strip, StripLine } from '../scene/strip.ts'

/** A place along the strip's axis in per cent: 0 = its first beat, 100 = its last. */
export const along = ({ from, to }: Pick<Strip, 'from' | 'to'>, beat: number): number =>
  ((beat - from) / (to - from)) * 100

/** The picture of a line is this wide and high, whatever its size on the screen. */
export const BOX = { width: 1000, height: 100 } as const

/** 0 = at the top (right foot), 1 = at the bottom. */
const down = (right: number): number => 1 - right

/** The line as an SVG path in `BOX`. */
export function linePath(strip: Pick<Strip, 'from' | 'to'>, { points }: Pick<StripLine, 'points'>): string {
  const at = ({ t, right }: StripLine['points'][number]): string =>
    `${((along(strip, t) / 100) * BOX.width).toFixed(2)} ${(down(right) * BOX.height).toFixed(2)}`
  return points.map((point, index) => `${index === 0 ? 'M' : 'L'}${at(point)}`).join('')
}

/** Where the weight is at `t`: 0 = left foot, 1 = right; straight between the line's points. */
export function rightAt({ points }: Pick<StripLine, 'points'>, t: number): number {
  const next = points.findIndex((point) => point.t >= t)
  const b = points[next === -1 ? points.length - 1 : next]
  const a = points[Math.max(0, next - 1)]
  if (a === undefined || b === undefined) return 0.5
  return b.t === a.t || next <= 0 ? b.right : a.right + ((t - a.t) / (b.t - a.t)) * (b.right - a.right)
}

/** A line's name: beside the line, on its `side`, at `x` and `y` per cent of the strip's picture. */
export type LinePlace = {
  readonly panel: number
  readonly x: number
  readonly y: number
  readonly side: 'before' | 'after'
}

/**
 * Where along the first change of feet the names stand. The earliest line's, which may reach out beyond the strip's start,
 * keeps to the middle, clear of the feet's names there; the last one's stands near its start, where the others have gone.
 */
const LEVELS: readonly (readonly number[])[] = [[], [0.55], [0.55, 0.5], [0.55, 0.5, 0.2], [0.55, 0.5, 0.8, 0.2]]

/** As good as all of the way. */
const NEARLY = 0.05

/**
 * The points of the first change that goes all the way to the other foot: in one to part weight the lines lie close. All
 * points where there is none.
 */
function firstChange(points: StripLine['points']): StripLine['points'] {
  const start = points[0]?.right ?? 0
  const end = points.findIndex(({ right }) => Math.abs(right - start) > 1 - NEARLY)
  if (end < 0) return points
  const begin = points.slice(0, end).findLastIndex(({ right }) => Math.abs(right - start) < NEARLY)
  return points.slice(Math.max(0, begin), end + 1)
}

type Line = Pick<StripLine, 'panel' | 'points'>

/** The first time at which the line is `part` of the way from the foot where it starts to the other, in that change. */
function reaches(line: Line, part: number): number | null {
  const points = firstChange(line.points)
  const start = points[0]?.right
  if (start === undefined) return null
  const level = start < 0.5 ? start + part * (1 - start) : start * (1 - part)
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]]
    if (a === undefined || b === undefined || (a.right - level) * (b.right - level) > 0 || a.right === b.right) continue
    return a.t + ((level - a.right) / (b.right - a.right)) * (b.t - a.t)
  }
  return null
}

/**
 * Where the lines' names stand: each on a level of its own in the first change of feet, where the lines are furthest
 * apart, so that no name covers another even where two lines run together. A line that never changes feet has none.
 */
export function linePlaces({
  from,
  to,
  lines,
}: Pick<Strip, 'from' | 'to'> & { readonly lines: readonly Line[] }): readonly LinePlace[] {
  const crossing = lines
    .flatMap((line) => {
      const half = reaches(line, 0.5)
      return half === null ? [] : [{ line, half }]
    })
    .sort((a, b) => a.half - b.half)
  return crossing.flatMap(({ line }, rank) => {
    // A line that never goes all of the way has its name half way.
    const t = reaches(line, LEVELS[crossing.length]?.[rank] ?? 0.5) ?? reaches(line, 0.5)
    if (t === null) return []
    return [
      {
        panel: line.panel,
        x: along({ from, to }, t),
        y: down(rightAt(line, t)) * 100,
        side: rank === 0 && crossing.length > 1 ? ('before' as const) : ('after' as const),
      },
    ]
  })
}
