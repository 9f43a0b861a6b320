import { CanvasRenderer } from 'pixi.js'

/** Pixi's 2D renderer, in a file of its own so that only a device without WebGL fetches it. */
export const createCanvasRenderer = (): CanvasRenderer => new CanvasRenderer()
