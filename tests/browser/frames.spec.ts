import { expect, test } from '@playwright/test'
import { test as reused } from './reusedPage.ts'
import { coloursAt, open, withoutGpu } from './watch.ts'

// In software WebGL the time goes with the pixels, and nothing here depends on the size.
test.use({ viewport: { width: 800, height: 560 } })

// Software draws by the pixel: a small window will do.
test.use({ viewport: { width: 1000, height: 620 } })

test('nothing is asked for until somebody plays, nor from 100 ms after a pause', async ({ page }) => {
  await open(page)
  // By then what comes after the first picture has come.
  await page.waitForTimeout(1800)
  const idle = await page.evaluate(() => window.watched.frames)
  await page.waitForTimeout(600)
  expect(await page.evaluate(() => window.watched.frames)).toBe(idle)

  await page.getByRole('button', { name: 'Play', exact: true }).click()
  await expect.poll(() => page.evaluate(() => window.watched.frames)).toBeGreaterThan(idle + 5)
  const after = await page.evaluate(async () => {
    window.overfoot.player.pause()
    await new Promise((done) => setTimeout(done, 100))
    const { frames } = window.watched
    await new Promise((done) => setTimeout(done, 1200))
    return window.watched.frames - frames
  })
  expect(after).toBe(0)
})

test('a frame while playing: one request, no static shape, no React commit, and writes only at half beats', async ({
  page,
}) => {
  await open(page)
  await page.getByRole('button', { name: 'Play', exact: true }).click()
  await page.waitForTimeout(300)
  const seen = await page.evaluate(async () => {
    const stage = await window.overfoot.stage
    const begin = { ...window.watched, ...stage.counts, at: performance.now(), beats: 0 }
    const heard: number[] = []
    const stop = window.overfoot.player.onGrid(() => heard.push(performance.now()))
    // As long as it takes, for the software renderer is slow on a busy machine: counted, not timed.
    while (stage.counts.draws - begin.draws < 12 || heard.length < 8 || performance.now() - begin.at < 4000)
      await new Promise((done) => setTimeout(done, 50))
    stop()
    const writes = window.watched.writes.filter((time) => time >= begin.at)
    return {
      frames: window.watched.frames - begin.frames,
      draws: stage.counts.draws - begin.draws,
      shapes: stage.counts.staticShapes - begin.staticShapes,
      commits: window.watched.commits - begin.commits,
      heard: heard.length,
      // A write that no grid point is near to: more than a slow frame away from every one.
      stray: writes.filter((time) => !heard.some((grid) => Math.abs(time - grid) < 30)).length,
      writes: writes.length,
    }
  })
  expect(Math.abs(seen.frames - seen.draws)).toBeLessThanOrEqual(2)
  expect(seen.shapes).toBe(0)
  expect(seen.commits).toBe(0)
  expect(seen.writes).toBeGreaterThan(5)
  expect(seen.writes).toBeLessThanOrEqual(seen.heard + 1)
  expect(seen.stray).toBe(0)
})

reused('React is watched: a commit is counted when somebody acts', async ({ page }) => {
  await open(page)
  const before = await page.evaluate(() => window.watched.commits)
  await page.getByRole('button', { name: 'Loop the whole figure' }).click()
  expect(await page.evaluate(() => window.watched.commits)).toBeGreaterThan(before)
})

test('no panel is flat, at any half beat', async ({ page }) => {
  await open(page)
  expect(await page.evaluate(async () => (await window.overfoot.stage).renderer)).toBe('webgl')
  for (let at = -0.5; at <= 4; at += 0.5) {
    for (const colours of await coloursAt(page, at)) expect(colours).toBeGreaterThan(30)
  }
})

test('without a GPU the canvas renderer draws the same lesson', async ({ page }) => {
  await withoutGpu(page)
  await open(page)
  expect(await page.evaluate(async () => (await window.overfoot.stage).renderer)).toBe('canvas')
  for (const at of [0, 1, 2.5]) {
    for (const colours of await coloursAt(page, at)) expect(colours).toBeGreaterThan(30)
  }
})

test('the beat follows the page’s clock while it plays', async ({ page }) => {
  await open(page)
  const error = await page.evaluate(async () => {
    const { player } = window.overfoot
    player.play()
    const [from, at] = [performance.now(), player.beatNow()]
    await new Promise((done) => setTimeout(done, 1500))
    const gone = ((performance.now() - from) / 1000) * (116 / 60)
    const { round } = player.store.getState().lesson
    const off = (player.beatNow() - at - gone) % round
    return { off: Math.min(Math.abs(off), Math.abs(off + round)), gone }
  })
  expect(error.off).toBeLessThan(0.01)
  expect(error.gone).toBeGreaterThan(2)
})
