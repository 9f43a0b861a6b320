import 'pixi.js/unsafe-eval' // before pixi: it would build functions from text, which a strict CSP forbids
import 'pixi.js/graphics'
import { type CanvasRenderer, Container, Ticker, WebGLRenderer } from 'pixi.js'
import type { StagePalette } from '../scene/palette.ts'
import type { PanelFrame, PanelPicture, Rect } from '../scene/panelPicture.ts'
import { createGraphicsPool } from './graphicsPool.ts'
import { createPanel, type StagePanel } from './stagePanel.ts'

export type StageOptions = {
  /** Asked for first: 'webgl' (the default) falls back to 'canvas' where there is none. */
  readonly renderer?: 'webgl' | 'canvas'
  /** CSS pixels. */
  readonly width: number
  readonly height: number
  /** Device pixels per CSS pixel. */
  readonly resolution: number
}

/** What a panel shows while it stands, and where in the canvas, in CSS pixels. */
export type PlacedPicture = { readonly rect: Rect; readonly picture: PanelPicture }

export type Stage = {
  readonly canvas: HTMLCanvasElement
  readonly renderer: 'webgl' | 'canvas'
  /** CSS pixels and device pixels per CSS pixel. The canvas is blank until the next `draw`. */
  resize(width: number, height: number, resolution: number): void
  /** Builds all that stays. Shows nothing by itself: `draw` follows. */
  setPanels(panels: readonly PlacedPicture[], palette: StagePalette): void
  /** Shows one frame per panel, in the panels' order; builds no static shape. */
  draw(frames: readonly PanelFrame[]): void
  /** Counted since the stage began: static shapes built, bead layers drawn, pictures rendered. */
  readonly counts: { readonly staticShapes: number; readonly beadShapes: number; readonly draws: number }
  destroy(): void
}

/**
 * A canvas that draws panels when asked to, and never by itself.
 * @throws when neither WebGL nor a 2D canvas is to be had
 */
export async function createStage(options: StageOptions): Promise<Stage> {
  const renderer = await startRenderer(options)
  // Pixi's own clocks would ask for a frame of their own for ever; nothing here needs them.
  for (const ticker of [Ticker.system, Ticker.shared]) {
    ticker.autoStart = false
    ticker.stop()
  }
  const canvas = renderer.canvas as HTMLCanvasElement
  canvas.style.display = 'block'

  const root = new Container()
  const counts = { staticShapes: 0, beadShapes: 0, draws: 0 }
  let pool = createGraphicsPool()
  let panels: StagePanel[] = []
  let placed: readonly PlacedPicture[] = []
  let colours: StagePalette | null = null
  let frames: readonly PanelFrame[] = []
  let lost = false

  const clear = (): void => {
    for (const panel of panels) panel.release()
    pool.takeBackAll()
    for (const panel of panels) panel.container.destroy({ children: true })
    panels = []
  }

  const build = (): void => {
    clear()
    if (colours === null) return
    renderer.background.color = colours.page
    for (const { rect, picture } of placed) {
      const panel = createPanel(rect, picture, colours, pool)
      root.addChild(panel.container)
      panels.push(panel)
      counts.staticShapes += panel.staticShapes
    }
  }

  const render = (): void => {
    if (lost) return
    panels.forEach((panel, i) => {
      const frame = frames[i]
      panel.container.visible = frame !== undefined
      if (frame !== undefined && panel.show(frame)) counts.beadShapes++
    })
    renderer.render({ container: root })
    counts.draws++
  }

  const onLost = (event: Event): void => {
    event.preventDefault() // else the browser never gives the context back
    lost = true
  }
  // Pixi alone does not reliably come back from a real loss: everything is built anew from the last scene.
  const onRestored = (): void => {
    lost = false
    clear()
    pool.destroy()
    pool = createGraphicsPool()
    build()
    render()
  }
  canvas.addEventListener('webglcontextlost', onLost)
  canvas.addEventListener('webglcontextrestored', onRestored)
  canvas.addEventListener('contextrestored', onRestored) // the 2D canvas's own; it comes back by itself, empty

  return {
    canvas,
    renderer: renderer instanceof WebGLRenderer ? 'webgl' : 'canvas',
    counts,
    resize: (width, height, resolution) => renderer.resize(width, height, resolution),
    setPanels(nextPanels, palette) {
      placed = nextPanels
      colours = palette
      build()
    },
    draw(nextFrames) {
      frames = nextFrames
      render()
    },
    destroy() {
      canvas.removeEventListener('webglcontextlost', onLost)
      canvas.removeEventListener('webglcontextrestored', onRestored)
      canvas.removeEventListener('contextrestored', onRestored)
      clear()
      pool.destroy()
      root.destroy()
      renderer.destroy({ removeView: true })
      frames = []
    },
  }
}

async function startRenderer(options: StageOptions): Promise<WebGLRenderer | CanvasRenderer> {
  const settings = {
    width: options.width,
    height: options.height,
    resolution: options.resolution,
    autoDensity: true,
    antialias: true,
    // Unused resources are destroyed here when panels are built; pixi's collector needs the clock that is stopped.
    gcActive: false,
    skipExtensionImports: true,
  }
  if (options.renderer !== 'canvas') {
    try {
      const webgl = new WebGLRenderer()
      await webgl.init(settings)
      return webgl
    } catch {
      // No WebGL on this device: the 2D renderer draws the same picture.
    }
  }
  const { createCanvasRenderer } = await import('./canvasRenderer.ts')
  const canvas = createCanvasRenderer()
  await canvas.init(settings)
  return canvas
}
