import { Graphics, GraphicsContext } from 'pixi.js'

/** Drawings that are used again for the next panels instead of being destroyed. */
export type GraphicsPool = {
  /** An empty drawing in its first state, without a parent. */
  take(): Graphics
  /**
   * A drawing of a shape that several panels have alike, or that these panels have as those before them had it: it is drawn
   * once, the first time, and cut into triangles once.
   * @param name of the shape, with all that it depends on
   */
  takeShared(name: string, draw: (context: GraphicsContext) => void): Graphics
  /** Takes every drawing back, out of wherever it hangs. Masks must have been taken off before. */
  takeBackAll(): void
  destroy(): void
}

/**
 * Panels are built anew with every change of size, figure or fault, many times a second while a slider is dragged. Pixi's
 * canvas renderer keeps a reference to each Graphics it ever drew (8.22.0: its pipe enters them in a table and leaves them
 * there when they are destroyed), so fresh ones would fill the memory over a long lesson.
 */
export function createGraphicsPool(): GraphicsPool {
  const own = createShelf(() => new Graphics())
  // They only ever show a context that is not their own; it goes with the panels it was drawn for.
  const sharing = createShelf(() => new Graphics())
  let shapes = new Map<string, GraphicsContext>()
  /** Those of the panels before, which the next ones may want again: while a tempo is dragged the floor stays. */
  let former = new Map<string, GraphicsContext>()
  const empty = new GraphicsContext()
  return {
    take: own.take,
    takeShared(name, draw) {
      let context = shapes.get(name) ?? former.get(name)
      if (context === undefined) {
        context = new GraphicsContext()
        draw(context)
      }
      former.delete(name)
      shapes.set(name, context)
      const graphics = sharing.take()
      graphics.context = context
      return graphics
    },
    takeBackAll() {
      own.takeBackAll((graphics) => graphics.clear())
      sharing.takeBackAll((graphics) => {
        graphics.context = empty
      })
      for (const context of former.values()) context.destroy()
      former = shapes
      shapes = new Map()
    },
    destroy() {
      own.destroy()
      sharing.destroy()
      for (const context of [...shapes.values(), ...former.values()]) context.destroy()
      shapes.clear()
      former.clear()
      empty.destroy()
    },
  }
}

function createShelf(make: () => Graphics) {
  const all: Graphics[] = []
  let taken = 0
  return {
    take(): Graphics {
      const graphics = all[taken] ?? make()
      if (taken === all.length) all.push(graphics)
      taken++
      return graphics
    },
    takeBackAll(empty: (graphics: Graphics) => void): void {
      for (const graphics of all.slice(0, taken)) {
        graphics.removeFromParent()
        empty(graphics)
        graphics.position.set(0, 0)
        graphics.rotation = 0
        graphics.visible = true
      }
      taken = 0
    },
    destroy(): void {
      for (const graphics of all) graphics.destroy()
      all.length = 0
      taken = 0
    },
  }
}
