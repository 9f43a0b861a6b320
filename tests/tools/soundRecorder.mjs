// Records what a page sends to its sound device, in the sound's own thread, so that nothing the page does can disturb it.

const RECORDER = `registerProcessor('recorder', class extends AudioWorkletProcessor {
  process([input]) {
    if (input && input[0]) this.port.postMessage({ frame: currentFrame, samples: input[0].slice() })
    return true
  }
})`

/**
 * Before the page is opened. The page's content security policy must be bypassed: the recorder is code of our own.
 * @param {import('@playwright/test').Page} page
 */
export async function recordSound(page) {
  await page.addInitScript((source) => {
    window.recorded = { frames: [], blocks: [] }
    window.timed = { frames: [], blocks: [] }
    window.drawn = []
    const connect = /** @type {(this: AudioNode, ...args: unknown[]) => unknown} */ (AudioNode.prototype.connect)
    Object.defineProperty(AudioNode.prototype, 'connect', {
      /** @this {AudioNode} @param {unknown} target @param {unknown[]} rest */
      value(target, ...rest) {
        const { context } = this
        if (target === context.destination && context instanceof AudioContext && window.sounding !== context) {
          window.sounding = context
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

/**
 * A recording's onsets in seconds of the sound's clock: the first sample over a threshold after 60 ms below it.
 * @param {import('@playwright/test').Page} page
 * @param {'recorded' | 'timed'} [which]
 * @returns {Promise<number[]>}
 */
export const onsetsOf = (page, which) =>
  page.evaluate((name) => {
    const { frames, blocks } = name === 'timed' ? window.timed : window.recorded
    const rate = window.sounding?.sampleRate ?? Number.NaN
    /** @type {number[]} */
    const found = []
    let quietSince = Number.NEGATIVE_INFINITY
    blocks.forEach((block, k) => {
      block.forEach((sample, i) => {
        if (Math.abs(sample) < 0.004) return
        const at = ((frames[k] ?? 0) + i) / rate
        if (at - quietSince > 0.06) found.push(at)
        quietSince = at
      })
    })
    return found
  }, which)

/**
 * Blocks the page, over and over, until it is closed.
 * @param {import('@playwright/test').Page} page
 * @param {number} milliseconds
 * @param {number} every milliseconds
 */
export const stallPage = (page, milliseconds, every) =>
  page.evaluate(
    ([length = 0, gap = 0]) => {
      setInterval(() => {
        const end = performance.now() + length
        while (performance.now() < end);
      }, gap)
    },
    [milliseconds, every],
  )

/**
 * Notes the next frames' beats, each with what is heard then.
 * @param {import('@playwright/test').Page} page
 * @param {number} frames
 */
export const noteDrawn = (page, frames) =>
  page.evaluate((count) => {
    const context = window.sounding
    if (context === undefined) throw new Error('nothing sounds')
    window.drawn = []
    const look = () => {
      const { contextTime = 0, performanceTime = 0 } = context.getOutputTimestamp()
      const beat = window.overfoot.player.beatNow()
      const page = performance.now() / 1000
      window.drawn.push({ beat, heard: contextTime + page - performanceTime / 1000, page })
      if (window.drawn.length < count) requestAnimationFrame(look)
    }
    look()
  }, frames)

/**
 * A click every so often by the page's timer, which knows when each is due; into a recording of its own.
 * @param {import('@playwright/test').Page} page
 * @param {number} every seconds
 */
export const clickByTimer = (page, every) =>
  page.evaluate((seconds) => {
    const context = window.sounding
    if (context === undefined) throw new Error('nothing sounds')
    const recorder = new AudioWorkletNode(context, 'recorder')
    recorder.port.onmessage = ({ data }) => {
      window.timed.frames.push(data.frame)
      window.timed.blocks.push(data.samples)
    }
    recorder.connect(context.destination)
    const buffer = context.createBuffer(1, 480, context.sampleRate)
    buffer.getChannelData(0).fill(0.5)
    const start = performance.now()
    let beat = 0
    const click = () => {
      const source = context.createBufferSource()
      source.buffer = buffer
      source.connect(recorder)
      source.start()
      beat++
      setTimeout(click, Math.max(0, start + beat * seconds * 1000 - performance.now()))
    }
    click()
  }, every)
