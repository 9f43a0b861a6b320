import { figures } from 'virtual:figures'
import { crankedDriver } from '../../../src/clock/crankedDriver.ts'
import { createPlayer } from '../../../src/createPlayer.ts'
import { withPanelMore } from '../../../src/session/session.ts'
import { createStage } from '../../../src/stage/stage.ts'
import { wayOf } from '../../../src/transfer/faults.ts'
import { bareScene } from './bareScene.ts'
import { type RecordedFrame, sceneRecorder } from './sceneRecorder.ts'

/** What was measured; times in ms a frame, one for each block. */
export type FrameTimes = {
  readonly ours: readonly number[]
  readonly bare: readonly number[]
  /** A frame, on average. */
  readonly redrawn: number
  readonly commands: number
}

const FRAMES = 600
const BLOCK = 60
/** A block takes but thirty milliseconds of script; a busy machine asks for many. */
const PASSES = 8
const RATE = 60
const SIZE = { width: 1200, height: 440, resolution: 1 }
/** So many panels beside each other. */
const rectsOf = (panels: number) =>
  Array.from({ length: panels }, (_, place) => ({
    x: (place * SIZE.width) / panels + 10,
    y: 10,
    width: SIZE.width / panels - 20,
    height: 420,
  }))
/** Frames after which the two pictures are held against each other. */
const COMPARED = [0, 130, 311, 599]

/** All of a canvas's pixels, read in the task in which it was drawn. */
function pixels(canvas: HTMLCanvasElement): Uint32Array {
  const copy = new OffscreenCanvas(canvas.width, canvas.height)
  const pen = copy.getContext('2d', { willReadFrequently: true })
  if (pen === null) throw new Error('no 2D canvas to read with')
  pen.drawImage(canvas, 0, 0)
  return new Uint32Array(pen.getImageData(0, 0, canvas.width, canvas.height).data.buffer)
}

const PAINTING = ['clear', 'drawArrays', 'drawArraysInstanced', 'drawElements', 'drawElementsInstanced'] as const

/**
 * Lets WebGL paint, or do nothing where it would. A GPU made of software takes a hundred times as long as the script and
 * holds it up; all of the script's own work, the uploads among it, is done either way, in both pages alike.
 */
function painting(): { off(): void; on(): void } {
  const { prototype } = WebGL2RenderingContext
  const real = PAINTING.map((method) => [method, prototype[method]] as const)
  return {
    off: () => Object.assign(prototype, Object.fromEntries(PAINTING.map((method) => [method, () => {}]))),
    on: () => Object.assign(prototype, Object.fromEntries(real)),
  }
}

const nextFrame = (): Promise<number> => new Promise((done) => requestAnimationFrame(done))

/**
 * The script time of a frame: the player's own way from the time to the picture, against pixi alone that does what our
 * frame did. Both draw in one page, in turn, block by block.
 */
async function measureFrames(panels: 3 | 4): Promise<FrameTimes> {
  if (!crossOriginIsolated) throw new Error('the page is not cross-origin isolated: its clock is too coarse')
  const recorder = sceneRecorder()
  const paint = painting()
  paint.off()
  const driver = crankedDriver()
  const player = createPlayer(figures, driver)
  const stage = await createStage(SIZE)
  if (stage.renderer !== 'webgl') throw new Error('there is no WebGL')
  document.body.append(stage.canvas)
  // The three that there are from the start, and a fault that stops on its way.
  if (panels === 4) player.change((session) => withPanelMore(session, wayOf('stops')))
  player.show(stage, rectsOf(panels), false)

  const begin = (): void => {
    player.pause()
    player.seek(player.store.getState().lesson.range.from)
    player.play()
  }
  begin()
  for (let frame = 0; frame < FRAMES; frame++) driver.crank(1 / RATE)
  const scene = recorder.scene()
  begin()
  const first = recorder.frame()
  const recorded: RecordedFrame[] = []
  for (let frame = 0; frame < FRAMES; frame++) {
    driver.crank(1 / RATE)
    recorded.push(recorder.frame())
  }
  recorder.stop()
  const bare = await bareScene(scene, SIZE)
  document.body.append(bare.canvas)

  /** One pass over all frames in blocks, ours and bare in turn. */
  const pass = async (compared: readonly number[]): Promise<{ ours: number[]; bare: number[] }> => {
    const times = { ours: [] as number[], bare: [] as number[] }
    begin()
    bare.show(first)
    for (let block = 0; block < FRAMES; block += BLOCK) {
      const shots = new Map<number, Uint32Array>()
      const run = async (show: (frame: number) => void, canvas: HTMLCanvasElement): Promise<number> => {
        let sum = 0
        for (let frame = block; frame < block + BLOCK; frame++) {
          if (compared.includes(frame)) paint.on()
          const start = performance.now()
          show(frame)
          sum += performance.now() - start
          if (!compared.includes(frame)) continue
          const shot = pixels(canvas)
          paint.off()
          const other = shots.get(frame)
          if (other === undefined) shots.set(frame, shot)
          else if (shot.some((pixel, i) => pixel !== other[i]))
            throw new Error(`the bare page shows another frame ${frame}`)
        }
        await nextFrame()
        return sum / BLOCK
      }
      times.ours.push(await run(() => driver.crank(1 / RATE), stage.canvas))
      times.bare.push(await run((frame) => bare.show(recorded[frame] as RecordedFrame), bare.canvas))
    }
    return times
  }
  // The engine learns both, and both must show the same.
  await pass(COMPARED)
  const times = { ours: [] as number[], bare: [] as number[] }
  for (let repeat = 0; repeat < PASSES; repeat++) {
    const { ours, bare: theirs } = await pass([])
    times.ours.push(...ours)
    times.bare.push(...theirs)
  }
  const redraws = recorded.flatMap(({ redrawn }) => redrawn)
  return {
    ...times,
    redrawn: redraws.length / FRAMES,
    commands: redraws.reduce((sum, { commands }) => sum + commands.length, 0) / FRAMES,
  }
}

window.measureFrames = measureFrames
