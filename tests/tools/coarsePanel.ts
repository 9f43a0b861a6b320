import type { Foot } from '../../src/figure/figure.ts'
import { footprintOutline, loadedPart, shapeOf } from '../../src/scene/footprint.ts'
import { markerCircle, markerOutline } from '../../src/scene/markerOutline.ts'
import type { FootNow, PanelFrame, Point } from '../../src/scene/panelPicture.ts'
import type { PanelView } from '../../src/scene/panelView.ts'
import { dashes } from '../../src/stage/dashes.ts'
import { panelSpace } from '../../src/stage/panelSpace.ts'
import { type CoarseRaster, coarseRaster } from './coarseRaster.ts'
import type { ColourTable, Paint } from './colourTable.ts'

/** Paints one panel's frames; the cells are the same array each time. */
export type CoarsePanel = { paint(frame: PanelFrame): Uint8Array }

// As src/stage/movingFoot.ts has them: how far a shadow falls, and its soft edge as one line.
const SHADOW = { perMetre: 2.2, farthest: 0.22, core: 0.4, edge: 0.295, edgeWidth: 6.2 } as const
const LIFTED_FOOT = 0.82
const PLACEMENT_FOOT = 0.45

/** Every n-th point of an outline: for a sample each eight pixels they are still too many. */
function everyNth(points: readonly number[], n: number): number[] {
  return points.filter((_, i) => Math.floor(i / 2) % n === 0)
}

/** A shape in foot lengths, y up, put somewhere: pixels from the panel's middle, y down. The same array each time. */
type Shape = (x: number, y: number, heading: number, length: number) => Float64Array

function shape(points: readonly number[]): Shape {
  const moved = new Float64Array(points.length)
  return (x, y, heading, length) => {
    const [cos, sin] = [Math.cos(heading) * length, Math.sin(heading) * length]
    for (let i = 0; i < points.length; i += 2) {
      const px = points[i] as number
      const py = -(points[i + 1] as number)
      moved[i] = x + px * cos - py * sin
      moved[i + 1] = y + px * sin + py * cos
    }
    return moved
  }
}

const LOAD_STEPS = 64

/** The part of a foot that carries, in steps of a 64th of the weight; each is worked out once. */
function loadedShapes(foot: Foot): (load: number) => Shape {
  const known = new Map<number, Shape>()
  return (load) => {
    const step = Math.round(load * LOAD_STEPS)
    const found = known.get(step) ?? shape(everyNth(loadedPart(foot, step / LOAD_STEPS), 2))
    known.set(step, found)
    return found
  }
}
const LOADED = { left: loadedShapes('left'), right: loadedShapes('right') } as const

/**
 * A panel as the stage layers it: placements, shadows, feet with their load, trail, beads, ghost and marker. Left out is
 * what stays or comes once a round and is thin: the floor's lines, what is written, ties and wait marks.
 */
export function coarsePanel(view: PanelView, width: number, height: number, colours: ColourTable): CoarsePanel {
  const { picture } = view
  const space = panelSpace({ x: 0, y: 0, width, height }, picture)
  const { widths, footLength } = space
  const raster = coarseRaster(width, height)
  const [floor, foot, ink] = [colours.solid('floor'), colours.solid('foot'), colours.solid('ink')]
  const accent = colours.solid(picture.tone)
  const lifted = colours.through('foot', LIFTED_FOOT)
  const shadowCore = colours.through('shadow', SHADOW.core)
  const shadowEdge = colours.through('shadow', SHADOW.edge)
  const toPixels = (metres: ArrayLike<number>): number[] =>
    Array.from(metres, (value, i) => (i % 2 === 0 ? value : -value) * space.pixelsPerMetre)

  const footOf = (side: Foot) => {
    const drawn = shapeOf(side, picture.mirrored)
    const outline = everyNth(footprintOutline(drawn), 3)
    const [on, off] = [(3.2 * widths.footOutline) / footLength, (2.1 * widths.footOutline) / footLength]
    return {
      outline: shape(outline),
      dashes: dashes(outline, true, on, off).map((dash) => shape(dash)),
      loaded: LOADED[drawn],
    }
  }
  const feet = { left: footOf('left'), right: footOf('right') }

  raster.cells.fill(floor(0))
  const placementFoot = colours.through('foot', PLACEMENT_FOOT)
  for (const dot of dashes(toPixels(picture.wholePath), false, 0.2 * widths.scale, 6.5 * widths.scale)) {
    raster.stroke(dot, false, [[2.6 * widths.scale, colours.solid('pathToCome')]])
  }
  for (const { foot: side, x, y, heading } of picture.placements) {
    const outline = feet[side].outline(x * space.pixelsPerMetre, -y * space.pixelsPerMetre, heading, footLength)
    raster.fill(outline, placementFoot)
    raster.stroke(outline, true, [[widths.placement, colours.solid('placement')]])
  }
  const still = raster.cells.slice()

  const circle = everyNth(markerCircle(), 2)
  const ring = shape(circle)
  const ringDashes = dashes(circle, true, (2.6 * widths.ghost) / footLength, (2 * widths.ghost) / footLength).map(shape)
  const marker = picture.tone === 'late' || picture.tone === 'early' ? shape(markerOutline(picture.tone)) : ring
  const past = pastLayer(width, height, widths)

  const pixelOf = ({ x, y }: { x: number; y: number }) => [x * space.pixelsPerMetre, -y * space.pixelsPerMetre] as const

  function paintShadow(side: Foot, now: FootNow): void {
    const [x, y] = pixelOf(now)
    const distance = Math.min(now.height * space.pixelsPerMetre * SHADOW.perMetre, SHADOW.farthest * footLength)
    const outline = feet[side].outline(x + distance * 0.6, y + distance, now.heading, footLength)
    raster.stroke(outline, true, [[SHADOW.edgeWidth * widths.scale, shadowEdge]])
    raster.fill(outline, shadowCore)
  }

  function paintFoot(side: Foot, now: FootNow): void {
    const [x, y] = pixelOf(now)
    const outline = feet[side].outline(x, y, now.heading, footLength)
    if (now.onFloor) {
      raster.fill(outline, foot)
      if (now.load > 0) raster.fill(feet[side].loaded(now.load)(x, y, now.heading, footLength), accent)
      raster.stroke(outline, true, [[widths.footOutline, ink]])
      return
    }
    raster.fill(outline, lifted)
    for (const dash of feet[side].dashes) {
      raster.stroke(dash(x, y, now.heading, footLength), false, [[widths.footOutline, ink]])
    }
  }

  function paintGhost(x: number, y: number): void {
    raster.stroke(ring(x, y, 0, footLength), true, [[widths.ghost + 2 * widths.halo, floor]])
    for (const dash of ringDashes) raster.stroke(dash(x, y, 0, footLength), false, [[widths.ghost, ink]])
  }

  function paintMarker(x: number, y: number): void {
    const edged = widths.ring + 2 * widths.ringEdge
    raster.stroke(marker(x, y, 0, footLength), true, [
      [edged + 2 * widths.halo, floor],
      [edged, ink],
      [widths.ring, accent],
    ])
  }

  let painted: PanelFrame | null = null

  return {
    paint(frame) {
      if (painted !== null && looksLike(painted, frame)) return raster.cells
      painted = frame
      raster.cells.set(still)
      for (const side of ['left', 'right'] as const) if (!frame[side].onFloor) paintShadow(side, frame[side])
      for (const side of ['left', 'right'] as const) paintFoot(side, frame[side])
      past.paintOver(raster, frame, toPixels, floor, accent)
      const [x, y] = pixelOf(frame.marker)
      const ghost = frame.ghost === null ? null : pixelOf(frame.ghost)
      if (ghost !== null) paintGhost(...ghost)
      paintMarker(x, y)
      if (ghost !== null) {
        const fault = [...ghost, x, y]
        raster.stroke(fault, false, [
          [widths.fault + 2 * widths.halo, floor],
          [widths.fault, ink],
        ])
      }
      raster.stroke([x, y], false, [
        [2 * (widths.centreDot + widths.halo), floor],
        [2 * widths.centreDot, ink],
      ])
      return raster.cells
    },
  }
}

/** While the dancers stand nothing moves; the trail then only grows on its own end. */
function looksLike(a: PanelFrame, b: PanelFrame): boolean {
  const same = (one: Point | null, other: Point | null) => one?.x === other?.x && one?.y === other?.y
  const sameFoot = (one: FootNow, other: FootNow) =>
    same(one, other) && one.heading === other.heading && one.height === other.height && one.load === other.load
  return (
    a.beads === b.beads &&
    a.trailPoints <= b.trailPoints &&
    same(a.marker, b.marker) &&
    same(a.ghost, b.ghost) &&
    sameFoot(a.left, b.left) &&
    sameFoot(a.right, b.right)
  )
}

type Widths = ReturnType<typeof panelSpace>['widths']
const HALO = 1.2

/** Trail and beads only grow during a round: each frame adds what is new, and the next round begins anew. */
function pastLayer(width: number, height: number, widths: Widths) {
  const layer = coarseRaster(width, height)
  const [trailHalo, trailLine, beadHalo, bead] = [1, 2, 3, 4] as const
  const atLeast =
    (value: number): Paint =>
    (under) =>
      Math.max(under, value)
  let [points, beads] = [0, 0]

  function grow(frame: PanelFrame, toPixels: (metres: ArrayLike<number>) => number[]): void {
    if (frame.trailPoints < points || frame.beads.length < beads) {
      layer.cells.fill(0)
      ;[points, beads] = [0, 0]
    }
    if (frame.trailPoints > points) {
      const from = Math.max(0, points - 1)
      layer.stroke(toPixels(frame.trail.slice(2 * from, 2 * frame.trailPoints)), false, [
        [widths.trail + 2 * HALO * widths.scale, atLeast(trailHalo)],
        [widths.trail, atLeast(trailLine)],
      ])
      points = frame.trailPoints
    }
    for (; beads < frame.beads.length; beads++) {
      const { x, y, onCount } = frame.beads[beads] as PanelFrame['beads'][number]
      const radius = onCount ? widths.countBead : widths.bead
      layer.stroke(toPixels([x, y]), false, [
        [2 * (radius + widths.halo * 0.8), () => beadHalo],
        [2 * radius, () => bead],
      ])
    }
  }

  return {
    paintOver(
      raster: CoarseRaster,
      frame: PanelFrame,
      toPixels: (metres: ArrayLike<number>) => number[],
      floor: Paint,
      accent: Paint,
    ): void {
      grow(frame, toPixels)
      const { cells } = raster
      for (let cell = 0; cell < cells.length; cell++) {
        const value = layer.cells[cell] as number
        if (value === 0) continue
        cells[cell] = (value === trailLine || value === bead ? accent : floor)(cells[cell] as number)
      }
    },
  }
}
