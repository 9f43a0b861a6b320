import type { Foot } from '../figure/figure.ts'

/**
 * What there is to draw, in view metres: the panel's middle is (0, 0), x to the right, y up the panel; headings are
 * radians, 0 = toes up the panel, clockwise positive. Whoever draws (screen, strip of stills, print) only has to scale it.
 */
export type Point = { readonly x: number; readonly y: number }

/** A panel's place on the canvas, in CSS px. */
export type Rect = { readonly x: number; readonly y: number; readonly width: number; readonly height: number }

/** How a performance is told apart: by shape, stroke and colour together (`tones`). `plain` = names off, all alike. */
export type Tone = 'in time' | 'late' | 'early' | 'other' | 'plain'

/** A place where a foot comes to stand, past or coming. */
export type Placement = {
  readonly foot: Foot
  readonly x: number
  readonly y: number
  readonly heading: number
}

/** What is written beside a placement: the step's number in a ring, its count larger. `x`, `y` is the middle of the line. */
export type PlacementLabel = { readonly x: number; readonly y: number; readonly number: string; readonly count: string }

/** The part of a panel that stays while the weight moves. */
export type PanelPicture = {
  readonly tone: Tone
  readonly pixelsPerMetre: number
  /** The foot as drawn, in view metres: up to 1.5 × the floor's scale. */
  readonly footLength: number
  readonly footBreadth: number
  /** Height of a count's figures, in view metres. */
  readonly textHeight: number
  /** Distance between the floor's quiet lines; a line runs through `gridThrough`. */
  readonly gridSpacing: number
  readonly gridThrough: Point
  readonly scaleBar: { readonly length: number; readonly text: string; readonly feet: string }
  /** Heading of the line of dance, or null when the figure is not tied to the room. */
  readonly lineOfDance: number | null
  /** Left and right look exchanged: a left foot has a right one's shape. What is written is not mirrored. */
  readonly mirrored: boolean
  /** Which of the figure's pages it is, 0 = the first; `count` 1: the figure has one. */
  readonly page: { readonly index: number; readonly count: number }
  readonly placements: readonly Placement[]
  readonly labels: readonly PlacementLabel[]
  /** The whole path of the weight, x and y in turn, for the faint line of what is to come; empty when hidden. */
  readonly wholePath: Float64Array
}

/** One foot now. */
export type FootNow = {
  readonly x: number
  readonly y: number
  readonly heading: number
  /** Metres above the floor: the shadow's distance. 0 on the floor. */
  readonly height: number
  readonly onFloor: boolean
  /** Share of the weight on it. */
  readonly load: number
}

/** Where the weight was at a grid point that has passed. */
export type Bead = {
  readonly x: number
  readonly y: number
  /** Larger on the counts. */
  readonly onCount: boolean
  /** Where the in-time weight was at the same grid point; null in the in-time panel and with names off. */
  readonly tick: Point | null
  /** Text beside a spot where the weight waited ("2" half beats); '' for none. */
  readonly waited: string
}

/** The part of a panel that moves. */
export type PanelFrame = {
  readonly left: FootNow
  readonly right: FootNow
  readonly marker: Point
  /** Where the weight should be now; null in the in-time panel and with names off. */
  readonly ghost: Point | null
  /** The weight's path up to now (the marker is its end), x and y in turn; only the first `trailPoints` points count. */
  readonly trail: Float64Array
  readonly trailPoints: number
  /** The same array as long as no grid point has been passed: a new array means that beads have changed. */
  readonly beads: readonly Bead[]
}
