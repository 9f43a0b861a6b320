import { Container, type FillInput, Graphics, type StrokeInput, WebGLRenderer } from 'pixi.js'
import type { Command, NodeState, RecordedFrame, SceneNode } from './sceneRecorder.ts'

export type BareScene = {
  readonly canvas: HTMLCanvasElement
  /** Does what the frame did, and renders. */
  show(frame: RecordedFrame): void
}

/** Calls what was called. Written out by method, as one would write it by hand. */
function replay(g: Graphics, commands: readonly Command[]): void {
  for (const { method, args } of commands) {
    const [a, b, c, d, e] = args as [number, number, number, number, number]
    switch (method) {
      case 'moveTo':
        g.moveTo(a, b)
        break
      case 'lineTo':
        g.lineTo(a, b)
        break
      case 'closePath':
        g.closePath()
        break
      case 'circle':
        g.circle(a, b, c)
        break
      case 'rect':
        g.rect(a, b, c, d)
        break
      case 'roundRect':
        g.roundRect(a, b, c, d, e)
        break
      case 'fill':
        g.fill(args[0] as FillInput)
        break
      case 'stroke':
        g.stroke(args[0] as StrokeInput)
        break
      default:
        throw new Error(`the bare page cannot replay "${method}" yet`)
    }
  }
}

function place(node: Container, { x, y, rotation, scaleX, scaleY, visible, alpha }: NodeState): void {
  node.position.set(x, y)
  node.rotation = rotation
  node.scale.set(scaleX, scaleY)
  node.visible = visible
  node.alpha = alpha
}

/**
 * The same scene without our program: pixi alone, built once from what was recorded.
 * @param size of the canvas, CSS px and device pixels per CSS px
 */
export async function bareScene(
  { nodes, background }: { readonly nodes: readonly SceneNode[]; readonly background: number },
  size: { readonly width: number; readonly height: number; readonly resolution: number },
): Promise<BareScene> {
  const renderer = new WebGLRenderer()
  // As our stage starts it.
  await renderer.init({
    ...size,
    autoDensity: true,
    antialias: true,
    gcActive: false,
    skipExtensionImports: true,
    background,
  })
  const built = nodes.map(({ drawn, state }) => {
    const node = drawn === null ? new Container() : new Graphics()
    if (node instanceof Graphics) replay(node, drawn ?? [])
    place(node, state)
    return node
  })
  nodes.forEach(({ parent, mask }, index) => {
    const node = built[index] as Container
    if (parent !== null) built[parent]?.addChild(node)
    if (mask !== null) node.mask = built[mask] as Container
  })
  const [root] = built
  if (root === undefined) throw new Error('an empty scene')
  return {
    canvas: renderer.canvas as HTMLCanvasElement,
    show({ moved, redrawn }) {
      for (const { node, state } of moved) place(built[node] as Container, state)
      for (const { node, commands } of redrawn) {
        const graphics = built[node] as Graphics
        graphics.clear()
        replay(graphics, commands)
      }
      renderer.render({ container: root })
    },
  }
}
