import { expect, type Page, test } from '@playwright/test'
import { coloursAt, open, withoutGpu } from './watch.ts'

// In software WebGL the time goes with the pixels, and nothing here depends on the size.
test.use({ viewport: { width: 800, height: 560 } })

declare global {
  interface Window {
    /** What a lost context is made with: the test's own, so that pixi knows nothing of it. */
    losing: WEBGL_lose_context
  }
}

/** Takes hold of the extension while the context is there. */
const hold = (page: Page) =>
  page.evaluate(async () => {
    const { canvas } = await window.overfoot.stage
    const found = canvas.getContext('webgl2') ?? canvas.getContext('webgl')
    const extension = found?.getExtension('WEBGL_lose_context')
    if (!extension) throw new Error('the context cannot be lost')
    window.losing = extension
  })

/** Loses the context and gives it back, in one call: there is only so much patience for it. Returns how far the beat went. */
const loseForAWhile = (page: Page, meanwhile = 0) =>
  page.evaluate(async (time) => {
    const { player, stage } = window.overfoot
    const { canvas } = await stage
    const heard = (type: string) => new Promise((done) => canvas.addEventListener(type, done, { once: true }))
    const [lost, restored] = [heard('webglcontextlost'), heard('webglcontextrestored')]
    window.losing.loseContext()
    await lost
    const at = player.beatNow()
    await new Promise((done) => setTimeout(done, time))
    const gone = player.beatNow() - at
    window.losing.restoreContext()
    await restored
    return gone
  }, meanwhile)

/** Every pixel of the canvas at a beat, as one number. */
const pictureAt = (page: Page, at: number) =>
  page.evaluate(async (beat) => {
    const { player, stage } = window.overfoot
    player.seek(beat)
    const text = (await stage).canvas.toDataURL()
    let sum = 0
    for (let i = 0; i < text.length; i++) sum = (Math.imul(sum, 31) + text.charCodeAt(i)) | 0
    return sum
  }, at)

const rendererNow = (page: Page) => page.evaluate(async () => (await window.overfoot.stage).renderer)

// Software draws by the pixel: a small window will do.
test.use({ viewport: { width: 1000, height: 620 } })

test('a context lost and restored, once and again, paused and playing: the same picture as before', async ({
  page,
}) => {
  await open(page)
  expect(await rendererNow(page)).toBe('webgl')
  await hold(page)
  const before = [await pictureAt(page, 1), await pictureAt(page, 2.5)]
  await loseForAWhile(page)
  expect([await pictureAt(page, 1), await pictureAt(page, 2.5)]).toEqual(before)

  await page.getByRole('button', { name: 'Play', exact: true }).click()
  expect(await loseForAWhile(page, 100)).not.toBe(0)
  await page.getByRole('button', { name: 'Pause' }).click()
  expect(await rendererNow(page)).toBe('webgl')
  expect([await pictureAt(page, 1), await pictureAt(page, 2.5)]).toEqual(before)
})

test('turned or resized while the context is lost: the picture that comes back has the new size', async ({ page }) => {
  await open(page)
  await hold(page)
  const [width, home] = await page.evaluate(async () => {
    const { stage } = window.overfoot
    const shown = await stage
    const { canvas } = shown
    const heard = (type: string) => new Promise((done) => canvas.addEventListener(type, done, { once: true }))
    const [lost, restored] = [heard('webglcontextlost'), heard('webglcontextrestored')]
    window.losing.loseContext()
    await lost
    await new Promise((done) => setTimeout(done, 0))
    shown.resize(500, 300, 1)
    window.losing.restoreContext()
    await restored
    return [canvas.width, canvas.getBoundingClientRect().width]
  })
  expect([width, home]).toEqual([500, 500])
})

test('a context that never comes back: within a second another canvas draws, and the beat goes on', async ({
  page,
}) => {
  await open(page)
  await hold(page)
  // By then the page has fetched what takes over.
  await page.waitForFunction(() =>
    performance.getEntriesByType('resource').some(({ name }) => /canvasRenderer/.test(name)),
  )
  await page.waitForTimeout(300)
  await page.getByRole('button', { name: 'Play', exact: true }).click()
  const took = await page.evaluate(async () => {
    const { player, stage } = window.overfoot
    const shown = await stage
    const from = performance.now()
    window.losing.loseContext()
    const { draws } = shown.counts
    while (shown.renderer !== 'canvas' || shown.counts.draws === draws)
      await new Promise((done) => setTimeout(done, 10))
    return { time: performance.now() - from, playing: player.store.getState().playing }
  })
  expect(took.time).toBeLessThan(1000)
  expect(took.playing).toBe(true)
  await page.getByRole('button', { name: 'Pause' }).click()
  for (const at of [0, 1, 2.5]) {
    for (const colours of await coloursAt(page, at)) expect(colours).toBeGreaterThan(30)
  }
  // The picture still has its words, and everything that is pressed still works.
  await expect(page.getByRole('img', { name: /seen from above/ })).toBeVisible()
  await page.getByRole('button', { name: 'Who is late?' }).click()
  for (const colours of await coloursAt(page, 1)) expect(colours).toBeGreaterThan(30)
})

test('a frame that fails in WebGL is drawn by the other canvas', async ({ page }) => {
  await open(page)
  await page.evaluate(async () => {
    const { canvas } = await window.overfoot.stage
    const context = canvas.getContext('webgl2') ?? canvas.getContext('webgl')
    if (context === null) throw new Error('no context')
    const fail = (): never => {
      throw new Error('the driver gave up')
    }
    context.drawElements = fail
    context.clear = fail
    window.overfoot.player.seek(1)
  })
  await expect.poll(() => rendererNow(page)).toBe('canvas')
  for (const colours of await coloursAt(page, 2.5)) expect(colours).toBeGreaterThan(30)
})

test('looked at again after a long time hidden, it is drawn at once', async ({ page }) => {
  await withoutGpu(page)
  await open(page)
  for (const kind of ['visibilitychange', 'pageshow', 'focus']) {
    const draws = await page.evaluate(async (type) => {
      const { counts } = await window.overfoot.stage
      const before = counts.draws
      ;(type === 'visibilitychange' ? document : window).dispatchEvent(new Event(type))
      return counts.draws - before
    }, kind)
    expect(draws, kind).toBeGreaterThan(0)
  }
})

test('with no canvas at all: that is said, and count, words and strip go on', async ({ page }) => {
  await page.addInitScript(() => {
    for (const kind of [HTMLCanvasElement, OffscreenCanvas]) {
      Object.defineProperty(kind.prototype, 'getContext', { value: () => null })
    }
  })
  await page.goto('/')
  await expect(page.getByText('This browser cannot draw the picture.')).toBeVisible()
  await page.getByRole('button', { name: 'Half a beat forward' }).click()
  await page.getByRole('button', { name: 'Half a beat forward' }).click()
  await expect(page.locator('.count-now')).not.toHaveText('')
  await expect(page.locator('.panel-words').first()).toContainText('foot')
  await expect(page.getByRole('alert')).toHaveCount(0)
})

test('a figure that fails while it is drawn: start without it, and the visitor’s own text is not lost', async ({
  page,
}) => {
  await withoutGpu(page)
  await open(page)
  const text =
    'overfoot: 2\ntitle: Mine\ndance: foxtrot\nrole: leader\nfirst foot: right\ntiming: S\nactions: [forward]\n'
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'mine.figure.yaml', mimeType: '', buffer: Buffer.from(text) })
  await expect(page.locator('.figure-choice select')).toContainText('Mine')
  await page.evaluate(() => {
    const { player } = window.overfoot
    const { lesson } = player.store.getState()
    player.store.setState({ lesson: { ...lesson, schedule: null } as never })
  })
  await expect(page.getByRole('alert')).toBeVisible()
  const downloading = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Download my figure' }).click()
  const download = await downloading
  expect(download.suggestedFilename()).toBe('mine.figure.yaml')
  const chunks: Buffer[] = []
  for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer)
  expect(Buffer.concat(chunks).toString()).toBe(text)
  await page.getByRole('button', { name: 'Start without this figure' }).click()
  await expect(page.getByRole('button', { name: 'Play', exact: true })).toBeVisible()
  for (const colours of await coloursAt(page, 1)) expect(colours).toBeGreaterThan(30)
})
