import 'pixi.js/unsafe-eval' // before pixi: it would build functions from text, which a strict CSP forbids
import 'pixi.js/graphics'
import { type CanvasRenderer, Container, Ticker, type WebGLRenderer } from 'pixi.js'
import type { StagePalette } from '../scene/palette.ts'
import type { PanelFrame, PanelPicture, Rect } from '../scene/panelPicture.ts'
import { createGraphicsPool } from './graphicsPool.ts'
import { createPanel, type StagePanel } from './stagePanel.ts'
import { createWebglRenderer } from './webglRenderer.ts'

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
  /** Holds the canvas; goes into the page. The canvas in it may become another one. */
  readonly home: HTMLElement
  readonly canvas: HTMLCanvasElement
  readonly renderer: 'webgl' | 'canvas'
  /** CSS pixels and device pixels per CSS pixel. The canvas is blank until the next `draw`. */
  resize(width: number, height: number, resolution: number): void
  /** Builds all that stays. Shows nothing by itself: `draw` follows. */
  setPanels(panels: readonly PlacedPicture[], palette: StagePalette): void
  /** Shows one frame per panel, in the panels' order; builds no static shape. Never throws. */
  draw(frames: readonly PanelFrame[]): void
  /** Told once when nothing on this device can draw any more; at once if that is so already. Returns what stops it. */
  onFailed(listener: () => void): () => void
  /** Counted since the stage began: static shapes built, bead layers drawn, pictures rendered. */
  readonly counts: { readonly staticShapes: number; readonly beadShapes: number; readonly draws: number }
  destroy(): void
}

/** Milliseconds that a lost context has to come back before the picture is drawn without it. */
const COMES_BACK_WITHIN = 500

/**
 * A canvas that draws panels when asked to, and never by itself. It does not stay blank: a WebGL context that was lost is
 * drawn into anew when it comes back; if it does not, or WebGL fails in any way, a 2D canvas takes its place.
 * @throws when neither WebGL nor a 2D canvas is to be had
 */
export async function createStage(options: StageOptions): Promise<Stage> {
  let size = { width: options.width, height: options.height, resolution: options.resolution }
  let drawing = await startDrawing(options.renderer ?? 'webgl', size)
  // Pixi's own clocks would ask for a frame of their own for ever; nothing here needs them.
  for (const ticker of [Ticker.system, Ticker.shared]) {
    ticker.autoStart = false
    ticker.stop()
  }
  const home = document.createElement('div')
  home.className = 'stage-home'
  const counts = { staticShapes: 0, beadShapes: 0, draws: 0 }
  let root = new Container()
  let pool = createGraphicsPool()
  let panels: StagePanel[] = []
  let placed: readonly PlacedPicture[] = []
  let colours: StagePalette | null = null
  let frames: readonly PanelFrame[] = []
  /** No picture can be made just now. */
  let away = false
  let failed = false
  let destroyed = false
  let patience: ReturnType<typeof setTimeout> | undefined
  const failureListeners = new Set<() => void>()

  const clear = (): void => {
    for (const panel of panels) panel.release()
    pool.takeBackAll()
    for (const panel of panels) panel.container.destroy({ children: true })
    panels = []
  }

  const build = (): void => {
    clear()
    if (colours === null) return
    drawing.renderer.background.color = colours.page
    for (const { rect, picture } of placed) {
      const panel = createPanel(rect, picture, colours, pool)
      root.addChild(panel.container)
      panels.push(panel)
      counts.staticShapes += panel.staticShapes
    }
  }

  const renderFrames = (): void => {
    panels.forEach((panel, i) => {
      const frame = frames[i]
      panel.container.visible = frame !== undefined
      if (frame !== undefined && panel.show(frame)) counts.beadShapes++
    })
    drawing.renderer.render({ container: root })
    counts.draws++
  }

  /** Everything anew from the last scene: nothing that a renderer has kept can be trusted. */
  const buildAnew = (): void => {
    clear()
    pool.destroy()
    root.destroy()
    pool = createGraphicsPool()
    root = new Container()
    build()
    renderFrames()
  }

  const fail = (): void => {
    failed = true
    home.style.visibility = 'hidden'
    for (const listener of failureListeners) listener()
  }

  /** The 2D canvas takes over, for good. */
  const drawOtherwise = async (): Promise<void> => {
    away = true
    clearTimeout(patience)
    drop(drawing, home)
    try {
      const next = await startDrawing('canvas', size)
      if (destroyed) return drop(next, home)
      hang(next)
      away = false
      drawing.renderer.resize(size.width, size.height, size.resolution)
      buildAnew()
    } catch {
      if (!destroyed) fail()
    }
  }

  const onLost = (event: Event): void => {
    event.preventDefault() // else the browser never gives the context back
    away = true
    // Browsers show a broken picture in a lost canvas.
    drawing.canvas.style.visibility = 'hidden'
    clearTimeout(patience)
    patience = setTimeout(() => void drawOtherwise(), COMES_BACK_WITHIN)
  }
  const onRestored = (): void => {
    clearTimeout(patience)
    away = false
    drawing.canvas.style.visibility = ''
    try {
      // It may have been given another size meanwhile.
      drawing.renderer.resize(size.width, size.height, size.resolution)
      buildAnew()
    } catch {
      void drawOtherwise()
    }
  }

  const hang = (next: Drawing): void => {
    drawing = next
    next.canvas.addEventListener('webglcontextlost', onLost, { signal: next.listening.signal })
    next.canvas.addEventListener('webglcontextrestored', onRestored, { signal: next.listening.signal })
    // The 2D canvas's own; it comes back by itself, empty.
    next.canvas.addEventListener('contextrestored', onRestored, { signal: next.listening.signal })
    home.replaceChildren(next.canvas)
  }
  hang(drawing)

  const render = (): void => {
    if (away || failed) return
    try {
      renderFrames()
    } catch {
      // Once anew in the same way, then in another.
      try {
        buildAnew()
      } catch {
        if (drawing.kind === 'webgl') void drawOtherwise()
        else fail()
      }
    }
  }

  return {
    home,
    get canvas() {
      return drawing.canvas
    },
    get renderer() {
      return drawing.kind
    },
    counts,
    resize(width, height, resolution) {
      if (width === size.width && height === size.height && resolution === size.resolution) return
      size = { width, height, resolution }
      if (!away && !failed) drawing.renderer.resize(width, height, resolution)
    },
    setPanels(nextPanels, palette) {
      placed = nextPanels
      colours = palette
      build()
    },
    draw(nextFrames) {
      frames = nextFrames
      render()
    },
    onFailed(listener) {
      failureListeners.add(listener)
      if (failed) listener()
      return () => failureListeners.delete(listener)
    },
    destroy() {
      destroyed = true
      clearTimeout(patience)
      clear()
      pool.destroy()
      root.destroy()
      drop(drawing, home)
      frames = []
    },
  }
}

type Drawing = {
  readonly kind: 'webgl' | 'canvas'
  readonly renderer: WebGLRenderer | CanvasRenderer
  readonly canvas: HTMLCanvasElement
  /** Ends all listening to the canvas. */
  readonly listening: AbortController
}

/** Takes a renderer down with its canvas; what a lost context makes of that is no one's business any more. */
function drop({ renderer, canvas, listening }: Drawing, home: HTMLElement): void {
  listening.abort()
  attempt(() => renderer.destroy({ removeView: true }))
  if (canvas.parentElement === home) canvas.remove()
}

/** A renderer without its context may not be able to end as it should; then it ends as it can. */
function attempt(end: () => void): void {
  try {
    end()
  } catch {}
}

async function startDrawing(
  wanted: 'webgl' | 'canvas',
  size: { readonly width: number; readonly height: number; readonly resolution: number },
): Promise<Drawing> {
  const settings = {
    ...size,
    autoDensity: true,
    antialias: true,
    // Unused resources are destroyed here when panels are built; pixi's collector needs the clock that is stopped.
    gcActive: false,
    skipExtensionImports: true,
  }
  const started = (kind: Drawing['kind'], renderer: Drawing['renderer']): Drawing => {
    const canvas = renderer.canvas as HTMLCanvasElement
    canvas.style.display = 'block'
    return { kind, renderer, canvas, listening: new AbortController() }
  }
  if (wanted === 'webgl') {
    try {
      return started('webgl', await createWebglRenderer(settings))
    } catch {
      // No WebGL on this device: the 2D renderer draws the same picture.
    }
  }
  const { createCanvasRenderer } = await import('./canvasRenderer.ts')
  const canvas = createCanvasRenderer()
  await canvas.init(settings)
  return started('canvas', canvas)
}
