import { AbstractRenderer, type Container, Graphics, GraphicsContext } from 'pixi.js'

/** One call on a Graphics, by the name of its method. */
export type Command = { readonly method: string; readonly args: readonly unknown[] }

/** What of a node a frame may change. */
export type NodeState = {
  readonly x: number
  readonly y: number
  readonly rotation: number
  readonly scaleX: number
  readonly scaleY: number
  readonly visible: boolean
  readonly alpha: number
}

/** A node of the scene, as it stands when the scene is taken down; `parent` and `mask` are indices in the same list. */
export type SceneNode = {
  readonly parent: number | null
  readonly mask: number | null
  readonly state: NodeState
  /** null: a Container. */
  readonly drawn: readonly Command[] | null
}

/** One frame: the nodes that moved, and the Graphics that were drawn anew with all their commands. */
export type RecordedFrame = {
  readonly moved: readonly { readonly node: number; readonly state: NodeState }[]
  readonly redrawn: readonly { readonly node: number; readonly commands: readonly Command[] }[]
}

export type SceneRecorder = {
  /** The scene as it was rendered last, and its ground's colour. */
  scene(): { readonly nodes: readonly SceneNode[]; readonly background: number }
  /** What the frames rendered since the last call changed; one frame in use. */
  frame(): RecordedFrame
  /** Takes the recorder out of pixi again. */
  stop(): void
}

const stateOf = ({ x, y, rotation, scale, visible, alpha }: Container): NodeState => ({
  x,
  y,
  rotation,
  scaleX: scale.x,
  scaleY: scale.y,
  visible,
  alpha,
})

const isSame = (a: NodeState, b: NodeState): boolean =>
  (Object.keys(a) as (keyof NodeState)[]).every((key) => a[key] === b[key])

const below = (node: Container): Container[] => [node, ...node.children.flatMap((child) => below(child as Container))]

/** The drawing calls that our stage makes; the bare page's replay stops at any other. */
const METHODS = ['clear', 'moveTo', 'lineTo', 'closePath', 'circle', 'rect', 'roundRect', 'fill', 'stroke'] as const

type Draw = (this: GraphicsContext, ...args: unknown[]) => unknown

/** The one form of `render` that is not out of date. */
type Renderer = {
  readonly background: { readonly color: { toNumber(): number } }
  render(this: Renderer, options: { container: Container }): void
}

/** Writes down what is drawn with pixi in this page, from now on. Begin before the first shape is built. */
export function sceneRecorder(): SceneRecorder {
  // A Graphics draws into its context, which several may share.
  const prototype = GraphicsContext.prototype as unknown as Record<(typeof METHODS)[number], Draw>
  const real = METHODS.map((method) => [method, prototype[method]] as const)
  const renderer = AbstractRenderer.prototype as unknown as Renderer
  const { render } = renderer
  const drawn = new WeakMap<GraphicsContext, Command[]>()
  let redrawn = new Set<GraphicsContext>()
  let depth = 0
  let root: Container | null = null
  let background = 0
  let nodes: Container[] = []
  let states: NodeState[] = []

  for (const [method, draw] of real) {
    prototype[method] = function (...args) {
      // What a method calls of itself is not written down twice.
      if (depth === 0) {
        const commands = method === 'clear' ? [] : (drawn.get(this) ?? [])
        if (method !== 'clear') commands.push({ method, args })
        drawn.set(this, commands)
        redrawn.add(this)
      }
      depth++
      try {
        return draw.apply(this, args)
      } finally {
        depth--
      }
    }
  }
  renderer.render = function (options) {
    root = options.container
    background = this.background.color.toNumber()
    render.call(this, options)
  }

  return {
    scene() {
      if (root === null) throw new Error('nothing has been rendered yet')
      nodes = below(root)
      states = nodes.map(stateOf)
      redrawn = new Set()
      return {
        background,
        nodes: nodes.map((node, index) => ({
          parent: node.parent === null ? null : nodes.indexOf(node.parent as Container),
          mask: node.mask ? nodes.indexOf(node.mask as Container) : null,
          state: states[index] as NodeState,
          drawn: node instanceof Graphics ? [...(drawn.get(node.context) ?? [])] : null,
        })),
      }
    },
    frame() {
      if (root === null || below(root).some((node, index) => node !== nodes[index])) {
        throw new Error('the scene was built anew while it played')
      }
      const moved = nodes.flatMap((container, node) => {
        const state = stateOf(container)
        if (isSame(state, states[node] as NodeState)) return []
        states[node] = state
        return [{ node, state }]
      })
      const anew = nodes.flatMap((container, node) =>
        container instanceof Graphics && redrawn.has(container.context)
          ? [{ node, commands: [...(drawn.get(container.context) ?? [])] }]
          : [],
      )
      redrawn = new Set()
      return { moved, redrawn: anew }
    },
    stop() {
      Object.assign(prototype, Object.fromEntries(real))
      renderer.render = render
    },
  }
}
