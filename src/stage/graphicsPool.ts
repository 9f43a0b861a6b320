import { Graphics } from 'pixi.js'

/** Drawings that are used again for the next panels instead of being destroyed. */
export type GraphicsPool = {
  /** An empty drawing in its first state, without a parent. */
  take(): Graphics
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
  const all: Graphics[] = []
  let taken = 0
  return {
    take() {
      const graphics = all[taken] ?? new Graphics()
      if (taken === all.length) all.push(graphics)
      taken++
      return graphics
    },
    takeBackAll() {
      for (const graphics of all.slice(0, taken)) {
        graphics.removeFromParent()
        graphics.clear()
        graphics.position.set(0, 0)
        graphics.rotation = 0
        graphics.visible = true
      }
      taken = 0
    },
    destroy() {
      for (const graphics of all) graphics.destroy()
      all.length = 0
      taken = 0
    },
  }
}
