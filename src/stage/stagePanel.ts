import { Container, type Graphics } from 'pixi.js'
import type { StagePalette } from '../scene/palette.ts'
import type { PanelFrame, PanelPicture, Rect } from '../scene/panelPicture.ts'
import { drawFloor, drawPathToCome } from './drawFloor.ts'
import { drawLabels, drawPlacements } from './drawPlacements.ts'
import { createGhost } from './ghost.ts'
import type { GraphicsPool } from './graphicsPool.ts'
import { createMarker, createMarkerDot } from './marker.ts'
import { createFoot } from './movingFoot.ts'
import { panelSpace } from './panelSpace.ts'
import { createTrail } from './trail.ts'

export type StagePanel = {
  readonly container: Container
  /** How many shapes were built for it that no frame touches again. */
  readonly staticShapes: number
  /** Moves what moves. @returns whether the beads were drawn anew */
  show(frame: PanelFrame): boolean
  /** Takes off what would hold on to the pool's drawings. */
  release(): void
}

const CORNER = 14

/** Builds one panel: everything that stays is drawn here, once. */
export function createPanel(rect: Rect, picture: PanelPicture, palette: StagePalette, pool: GraphicsPool): StagePanel {
  const space = panelSpace(rect, picture)
  const accent = palette.accent[picture.tone]
  const corner = CORNER * space.widths.scale

  // All panels of a size have the same floor; the way that each dances over it is its own.
  const { tone: _tone, wholePath: _wholePath, ...alike } = picture
  const ground = JSON.stringify([alike, space.width, space.height, palette.page])
  const floor = pool.takeShared(`floor ${ground}`, (context) => {
    drawFloor(context, picture, space, palette)
    drawPlacements(context, picture, space, palette)
  })
  const way = pool.take()
  drawPathToCome(way, picture, space, palette)
  const labels = pool.takeShared(`labels ${ground}`, (context) => drawLabels(context, picture, space, palette))
  const left = createFoot('left', picture.mirrored, accent, space, palette, pool)
  const right = createFoot('right', picture.mirrored, accent, space, palette, pool)
  const trail = createTrail(picture, space, palette, pool)
  const ghost = createGhost(space, palette, pool)
  const marker = createMarker(picture.tone, space, palette, pool)
  const dot = createMarkerDot(space, palette, pool)

  const frameOf = (g: Graphics) => g.roundRect(-rect.width / 2, -rect.height / 2, rect.width, rect.height, corner)
  const cut = frameOf(pool.take()).fill('#ffffff')
  const edge = frameOf(pool.take()).stroke({ color: palette.floorEdge, width: 1.5, alignment: 1 })

  const content = new Container()
  content.addChild(
    floor,
    way,
    left.shadow,
    right.shadow,
    left.foot,
    right.foot,
    trail.container,
    labels,
    ghost.hollow,
    marker,
    left.letter,
    right.letter,
    ghost.line,
    dot,
  )
  content.mask = cut
  const container = new Container()
  container.addChild(cut, content, edge)
  container.position.set(rect.x + rect.width / 2, rect.y + rect.height / 2)

  const show = (frame: PanelFrame): boolean => {
    left.show(frame.left)
    right.show(frame.right)
    ghost.show(frame.ghost, frame.marker)
    marker.position.set(frame.marker.x * space.pixelsPerMetre, -frame.marker.y * space.pixelsPerMetre)
    dot.position.copyFrom(marker.position)
    return trail.show(frame)
  }
  // floor, way, labels, marker, dot, cut and edge, besides the parts' own
  const staticShapes = 7 + left.staticShapes + right.staticShapes + ghost.staticShapes
  const release = (): void => {
    content.mask = null
  }
  return { container, staticShapes, show, release }
}
