import { expect, test } from '@playwright/test'
import { heldBytes } from './heldBytes.ts'
import { open, withoutGpu } from './watch.ts'

/** `npm run bench` sets a hundred, in WebGL: in software a lap of it takes a second. Here they are quick, on the 2D canvas. */
const WANTED = Number(process.env.OVERFOOT_LAPS ?? 0)
const LAPS = WANTED > 0 ? WANTED : 8
/** Lazy chunks, compiled code and the browser's own caches come in the first laps. */
const SETTLED = 3

declare global {
  interface Window {
    contexts: WeakRef<WebGLRenderingContext | WebGL2RenderingContext>[]
  }
}

// What is left behind does not depend on the size, and a small picture is drawn sooner.
test.use({ viewport: { width: 480, height: 400 } })

test(`${LAPS} laps of open, play, close leave nothing behind`, async ({ page }) => {
  test.setTimeout(30_000 + LAPS * 3000)
  if (WANTED === 0) await withoutGpu(page)
  await page.addInitScript(() => {
    window.contexts = []
    const real = HTMLCanvasElement.prototype.getContext as (this: unknown, ...args: unknown[]) => unknown
    Object.defineProperty(HTMLCanvasElement.prototype, 'getContext', {
      value(this: unknown, name: string, ...rest: unknown[]) {
        const context = real.call(this, name, ...rest)
        if (context instanceof WebGL2RenderingContext || context instanceof WebGLRenderingContext) {
          if (!window.contexts.some((known) => known.deref() === context)) window.contexts.push(new WeakRef(context))
        }
        return context
      },
    })
  })
  await open(page)
  await page.evaluate(() => window.overfoot.close())
  const browser = await page.context().newCDPSession(page)
  await browser.send('Performance.enable')

  // All in one call: each has its text kept by the browser.
  const laps = (count: number) =>
    page.evaluate(async (times) => {
      for (let k = 0; k < times; k++) {
        const running = window.overfoot.start()
        const { counts } = await running.stage
        while (counts.draws === 0) await new Promise((done) => setTimeout(done, 5))
        running.player.play()
        const { draws } = counts
        while (counts.draws < draws + 2) await new Promise((done) => setTimeout(done, 5))
        await running.close()
        window.watched.writes.length = 0
      }
    }, count)
  const measured = async () => {
    await page.waitForTimeout(100)
    await browser.send('HeapProfiler.collectGarbage')
    const frames = await page.evaluate(async () => {
      const { frames: before } = window.watched
      await new Promise((done) => setTimeout(done, 150))
      return window.watched.frames - before
    })
    const contexts = await page.evaluate(
      () => window.contexts.filter((one) => one.deref()?.isContextLost() === false).length,
    )
    const { metrics } = await browser.send('Performance.getMetrics')
    const of = (name: string) => metrics.find((metric) => metric.name === name)?.value ?? Number.NaN
    return { frames, contexts, listeners: of('JSEventListeners'), nodes: of('Nodes'), held: await heldBytes(browser) }
  }

  await laps(SETTLED)
  const before = await measured()
  await laps(LAPS - SETTLED)
  const after = await measured()
  expect(after.frames).toBe(0)
  // In WebGL each lap makes one, and none of them is left.
  expect(await page.evaluate(() => window.contexts.length)).toBe(WANTED > 0 ? LAPS + 1 : 0)
  expect([before.contexts, after.contexts]).toEqual([0, 0])
  expect(after.listeners).toBeLessThanOrEqual(before.listeners)
  expect(after.nodes).toBeLessThanOrEqual(before.nodes + 50)
  // Pixi itself (8.22.0) keeps the text of each renderer's shader, 6 to 8 KiB, and what there was of a WebGL renderer that
  // could not be started, 24 KiB; a page has one or two in its life. A lap that kept its page would keep some hundred.
  const most = WANTED > 0 ? 12 * 1024 : 40 * 1024
  expect((after.held - before.held) / (LAPS - SETTLED)).toBeLessThan(most)
})
