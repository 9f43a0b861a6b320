import type { PanelFrame } from '../../src/scene/panelPicture.ts'
import type { Stage } from '../../src/stage/stage.ts'

/** A stage that draws nothing and keeps what it was asked to draw. */
export type RecordingStage = Stage & {
  readonly drawn: (readonly PanelFrame[])[]
  /** How often the panels were set. */
  readonly set: number
}

export function recordingStage(onDraw: () => void = () => {}): RecordingStage {
  const drawn: (readonly PanelFrame[])[] = []
  let set = 0
  return {
    drawn,
    get set() {
      return set
    },
    home: {} as HTMLElement,
    canvas: {} as HTMLCanvasElement,
    renderer: 'canvas',
    counts: { staticShapes: 0, beadShapes: 0, draws: 0 },
    resize() {},
    setPanels() {
      set++
    },
    draw(frames) {
      drawn.push(frames)
      onDraw()
    },
    onFailed: () => () => {},
    destroy() {},
  }
}
