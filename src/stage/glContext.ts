/** What pixi would ask for by itself, for an opaque picture. */
const ATTRIBUTES: WebGLContextAttributes = {
  alpha: false,
  antialias: true,
  premultipliedAlpha: true,
  stencil: true,
}

/** A canvas with its context. */
export type GlContext = { readonly canvas: HTMLCanvasElement; readonly context: WebGL2RenderingContext }

let prepared: GlContext | null = null

function made(): GlContext | null {
  const canvas = document.createElement('canvas')
  const context = canvas.getContext('webgl2', ATTRIBUTES)
  return context === null ? null : { canvas, context }
}

/** Makes the context that is taken first. It takes tens of milliseconds, in which the program is still on its way. */
export function prepareGlContext(): void {
  prepared ??= made()
}

/** The one that was prepared, or another; null where there is no WebGL 2. */
export function takeGlContext(): GlContext | null {
  const taken = prepared
  prepared = null
  return taken === null || taken.context.isContextLost() ? made() : taken
}
