/** Widths, radii and gaps of one panel, in CSS pixels. */
export type LineWidths = {
  /** The factor by which all but the grid grows with the panel; 1 at 420 pixels. */
  readonly scale: number
  readonly grid: number
  readonly placement: number
  readonly footOutline: number
  readonly heel: number
  readonly trail: number
  readonly bead: number
  readonly countBead: number
  readonly tie: number
  readonly tick: number
  readonly tickLength: number
  readonly ghost: number
  readonly fault: number
  readonly ring: number
  readonly ringEdge: number
  readonly halo: number
  readonly centreDot: number
}

/** Lines grow slower than the panel: a wall-sized picture must not turn into slabs, nor a phone's into hair. */
const GROWTH = 0.6
const DESIGNED_FOR = 420
/** Below this many pixels of foot, lines shrink with the foot, so that its three states stay apart. */
const FOOT_FOR_FULL_WIDTHS = 42

/**
 * @param width, height of the panel, in CSS pixels
 * @param footLength as drawn, in CSS pixels
 */
export function lineWidths(width: number, height: number, footLength: number): LineWidths {
  const byPanel = (Math.min(width, height) / DESIGNED_FOR) ** GROWTH
  const scale = Math.min(2.6, Math.max(0.5, Math.min(byPanel, footLength / FOOT_FOR_FULL_WIDTHS)))
  return {
    scale,
    grid: 1,
    placement: Math.max(1, 1.5 * scale),
    footOutline: 2.4 * scale,
    heel: 1.4 * scale,
    trail: 3.4 * scale,
    bead: 3.6 * scale,
    countBead: 5.6 * scale,
    tie: Math.max(1, 1.4 * scale),
    tick: 2.4 * scale,
    tickLength: 11 * scale,
    ghost: 2.6 * scale,
    fault: 3.6 * scale,
    ring: 6.6 * scale,
    ringEdge: 1.7 * scale,
    halo: 1.8 * scale,
    centreDot: 3 * scale,
  }
}
