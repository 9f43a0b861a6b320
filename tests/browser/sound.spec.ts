import { expect, type Page, test } from '@playwright/test'
import { open, withoutGpu } from './watch.ts'

declare global {
  interface Window {
    /** What has left the sound's graph: the frame of each block's first sample, and the blocks. */
    recorded: { frames: number[]; blocks: Float32Array[]; rate: number }
    /** Beats as they were drawn, each with what was heard at that moment by the device's own word, in seconds. */
    drawn: { beat: number; heard: number }[]
    sounding: AudioContext | undefined
  }
}

const RECORDER = `registerProcessor('recorder', class extends AudioWorkletProcessor {
  process([input]) {
    if (input && input[0]) this.port.postMessage({ frame: currentFrame, samples: input[0].slice() })
    return true
  }
})`

/** Records in the sound's own thread whatever goes to the device. Before the page is opened. */
async function record(page: Page): Promise<void> {
  await page.addInitScript((source) => {
    window.recorded = { frames: [], blocks: [], rate: 0 }
    window.drawn = []
    const connect = AudioNode.prototype.connect as (this: AudioNode, ...args: unknown[]) => unknown
    Object.defineProperty(AudioNode.prototype, 'connect', {
      value(this: AudioNode, target: unknown, ...rest: unknown[]) {
        const { context } = this
        if (target === context.destination && context instanceof AudioContext) {
          window.sounding = context
          window.recorded.rate = context.sampleRate
          context.audioWorklet
            .addModule(URL.createObjectURL(new Blob([source], { type: 'text/javascript' })))
            .then(() => {
              const recorder = new AudioWorkletNode(context, 'recorder')
              recorder.port.onmessage = ({ data }) => {
                window.recorded.frames.push(data.frame)
                window.recorded.blocks.push(data.samples)
              }
              connect.call(this, recorder)
              // What leads nowhere is not asked for samples; it gives silence.
              connect.call(recorder, context.destination)
            })
        }
        return connect.call(this, target, ...rest)
      },
    })
  }, RECORDER)
}

/** The recorded sound's onsets in seconds of its clock: the first sample over a threshold after 60 ms below it. */
const onsets = (page: Page): Promise<number[]> =>
  page.evaluate(() => {
    const { frames, blocks, rate } = window.recorded
    const found: number[] = []
    let quietSince = Number.NEGATIVE_INFINITY
    blocks.forEach((block, k) => {
      block.forEach((sample, i) => {
        if (Math.abs(sample) < 0.004) return
        const at = ((frames[k] as number) + i) / rate
        if (at - quietSince > 0.06) found.push(at)
        quietSince = at
      })
    })
    return found
  })

/** Blocks the page, over and over. */
const stall = (page: Page, milliseconds: number, every: number): Promise<void> =>
  page.evaluate(
    ([length, gap]) => {
      setInterval(() => {
        const end = performance.now() + (length as number)
        while (performance.now() < end);
      }, gap)
    },
    [milliseconds, every],
  )

// The recorder's own code would not be allowed in; the page's is the same.
test.use({ bypassCSP: true })
test.beforeEach(({ page }) => withoutGpu(page))

test('clicks under stalls of 300 ms every 0.9 s: none is off by 1 ms, and what is drawn is what is heard', async ({
  page,
}) => {
  test.setTimeout(60_000)
  await record(page)
  await open(page)
  await page.evaluate(() => {
    const { player } = window.overfoot
    player.choose(player.figures.find(({ id }) => id.startsWith('12'))?.id ?? '')
    player.setTempo(player.store.getState().lesson.dance.tempo.to)
  })
  await page.getByRole('button', { name: 'Sound. Sound is off' }).click()
  await expect(page.getByRole('button', { name: 'Sound. Sound is on' })).toBeVisible()
  await page.getByLabel('Half beats').selectOption('off')
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'Play', exact: true }).click()
  await page.waitForTimeout(700)
  // What is drawn against what the device says is heard, frame by frame.
  await page.evaluate(() => {
    const context = window.sounding as AudioContext
    const look = (): void => {
      const { contextTime = 0, performanceTime = 0 } = context.getOutputTimestamp()
      const beat = window.overfoot.player.beatNow()
      window.drawn.push({ beat, heard: contextTime + (performance.now() - performanceTime) / 1000 })
      if (window.drawn.length < 300) requestAnimationFrame(look)
    }
    look()
  })
  await stall(page, 300, 900)
  await page.waitForTimeout(5000)
  const found = await onsets(page)
  const { lasts, round, from } = await page.evaluate(() => {
    const { player } = window.overfoot
    const { lesson } = player.store.getState()
    return { lasts: player.clock().secondsPerBeat, round: lesson.round, from: lesson.range.from }
  })
  expect(found.length).toBeGreaterThan(4.5 / lasts)
  // Every beat once, none beside its place.
  const first = found[0] as number
  const off = found.map((at, k) => (at - first - k * lasts) * 1000)
  expect(Math.max(...off.map(Math.abs)), `ms off: ${off.map((ms) => ms.toFixed(2))}`).toBeLessThan(1)
  // A beat is drawn as its click is heard: beats from a click to now, by the sound and by the picture.
  const drawn = await page.evaluate(() => window.drawn)
  expect(drawn.length).toBeGreaterThan(60)
  const frame = 1 / 60 / lasts
  for (const { beat, heard } of drawn) {
    const sounds = (heard - first) / lasts
    const shown = beat - from + 0.5
    const apart = ((((shown - sounds) % 1) + 1.5) % 1) - 0.5
    expect(Math.abs(apart), `beats apart at ${heard}`).toBeLessThan(frame)
  }
  expect(round).toBeGreaterThan(0)
})
