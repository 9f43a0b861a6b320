import type { Graphics } from 'pixi.js'
import type { StagePalette } from '../scene/palette.ts'
import type { Bead, PanelPicture } from '../scene/panelPicture.ts'
import { drawWait, placeWait, takenSpots } from './drawWait.ts'
import type { PanelSpace } from './panelSpace.ts'
import { traceLine } from './traceLine.ts'

/** How far a tie bows out, as a part of its length: late and in-time places lie on one path, and straight ties would hide each other. */
const BOW = 0.24
const ARCH_STEPS = 12
/** Beads closer than this many pixels lie on one spot. */
const SAME_SPOT = 3

type Pixel = { readonly x: number; readonly y: number }

/** The half beats that have passed: bead, in-time place, tie between them, and how long the weight waited. */
export function drawBeads(
  g: Graphics,
  beads: readonly Bead[],
  picture: PanelPicture,
  space: PanelSpace,
  palette: StagePalette,
): void {
  const { widths } = space
  const accent = palette.accent[picture.tone]
  const at = (point: Pixel): Pixel => ({ x: point.x * space.pixelsPerMetre, y: -point.y * space.pixelsPerMetre })

  const ties = beads.flatMap((bead, i) => {
    if (bead.tick === null) return []
    const neighbour = beads[i - 1] ?? beads[i + 1] ?? bead
    return [tieOf(at(bead), at(bead.tick), at(neighbour), widths.trail / 2, widths.tickLength)]
  })
  for (const tie of ties) traceLine(g, tie.arch)
  g.stroke({ color: palette.quietInk, width: widths.tie, cap: 'round', join: 'round' })
  for (const tie of ties) traceLine(g, tie.tick)
  g.stroke({ color: palette.ink, width: widths.tick, cap: 'round' })

  const taken = takenSpots(picture, space)
  const waits = beads
    .filter((bead, i) => bead.waited !== '' && !waitsOn(at(bead), beads[i + 1], at))
    .map((bead) => ({ spot: at(bead), pill: placeWait(bead.waited, at(bead), taken, space) }))
  for (const { spot, pill } of waits) g.moveTo(spot.x, spot.y).lineTo(pill.box.x, pill.box.y)
  g.stroke({ color: accent, width: widths.tie })

  for (const bead of beads) {
    const { x, y } = at(bead)
    const radius = bead.onCount ? widths.countBead : widths.bead
    g.circle(x, y, radius + widths.halo * 0.8).fill(palette.floor)
    g.circle(x, y, radius).fill(accent)
    if (bead.waited !== '') {
      g.circle(x, y, radius + widths.halo * 0.8 + widths.tick).stroke({ color: accent, width: widths.tick })
    }
  }
  for (const { pill } of waits) drawWait(g, pill, accent, space, palette)
}

/** Whether the next bead lies on the same spot and tells a wait that holds this one's. */
function waitsOn(bead: Pixel, next: Bead | undefined, at: (point: Pixel) => Pixel): boolean {
  if (next === undefined || next.waited === '') return false
  const { x, y } = at(next)
  return Math.hypot(x - bead.x, y - bead.y) < SAME_SPOT
}

/**
 * The in-time place as a short bar beside the path, and an arch to it from the bead; both on one side of the path, late
 * on the one and early on the other, for a bar right across would lie on a neighbour's bead and seem to be its own.
 */
function tieOf(
  bead: Pixel,
  tick: Pixel,
  neighbour: Pixel,
  from: number,
  to: number,
): { arch: number[]; tick: number[] } {
  const away = Math.hypot(tick.x - bead.x, tick.y - bead.y) > 0.5
  const [dx, dy] = away ? [tick.x - bead.x, tick.y - bead.y] : [bead.x - neighbour.x, bead.y - neighbour.y]
  const length = Math.hypot(dx, dy)
  const [nx, ny] = length > 0.01 ? [-dy / length, dx / length] : [1, 0]
  const bar = [tick.x + nx * from, tick.y + ny * from, tick.x + nx * to, tick.y + ny * to]
  if (!away) return { arch: [], tick: bar }
  const arch: number[] = []
  for (let k = 0; k <= ARCH_STEPS; k++) {
    const t = k / ARCH_STEPS
    const out = to * t + 4 * BOW * length * t * (1 - t)
    arch.push(bead.x + dx * t + nx * out, bead.y + dy * t + ny * out)
  }
  return { arch, tick: bar }
}
