import { DOMAdapter, type WebGLOptions, WebGLRenderer } from 'pixi.js'
import { takeGlContext } from './glContext.ts'

/**
 * Pixi's WebGL renderer for pictures that are made of shapes alone, with a canvas of its own. It is there sooner than by
 * pixi's own way, which makes a second context and a far larger program.
 * @throws where there is no WebGL; nothing is left behind then
 */
export async function createWebglRenderer(settings: Partial<WebGLOptions>): Promise<WebGLRenderer> {
  const taken = takeGlContext()
  if (taken === null) throw new Error('there is no WebGL 2')
  const { canvas, context } = taken
  const renderer = new WebGLRenderer()
  // When the systems are there and have not looked at the context yet.
  renderer.runners.init.add({ init: () => drawShapesOnly(renderer) })
  const takeBack = lend(context)
  try {
    await renderer.init({ ...settings, canvas, context })
    return renderer
  } catch (reason) {
    try {
      renderer.destroy()
    } catch {} // it may not be able to end as it should
    throw reason
  } finally {
    takeBack()
  }
}

/** Shapes need one texture, a white one; a program that chooses among sixteen takes far longer to compile. */
function drawShapesOnly({ limits }: WebGLRenderer): void {
  const learn = limits.contextChange.bind(limits)
  limits.contextChange = () => {
    learn()
    limits.maxBatchableTextures = 1
  }
}

/**
 * Pixi makes another WebGL context only to ask how exact the GPU counts. A page can have some sixteen, and each takes tens
 * of milliseconds: ours is asked instead.
 * @returns what ends it
 */
function lend(context: WebGL2RenderingContext): () => void {
  const adapter = DOMAdapter.get()
  DOMAdapter.set({
    ...adapter,
    createCanvas: (width, height) =>
      Object.defineProperty(adapter.createCanvas(width, height), 'getContext', { value: () => context }),
  })
  return () => DOMAdapter.set(adapter)
}
