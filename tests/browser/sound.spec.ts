import { expect, test } from '@playwright/test'
import { noteDrawn, onsetsOf, recordSound, stallPage } from '../tools/soundRecorder.mjs'
import { open, withoutGpu } from './watch.ts'

// The recorder's own code would not be allowed in; the page's is the same.
test.use({ bypassCSP: true })
test.beforeEach(({ page }) => withoutGpu(page))

test('clicks under stalls of 300 ms every 0.9 s: none is off by 1 ms, and what is drawn is what is heard', async ({
  page,
}) => {
  test.setTimeout(60_000)
  await recordSound(page)
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
  await noteDrawn(page, 300)
  await stallPage(page, 300, 900)
  await page.waitForTimeout(5000)
  const found = await onsetsOf(page, 'recorded')
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
  // A third of the time is left to the picture, and other tests take their share of it.
  expect(drawn.length).toBeGreaterThan(20)
  const frame = 1 / 60 / lasts
  for (const { beat, heard } of drawn) {
    const sounds = (heard - first) / lasts
    const shown = beat - from + 0.5
    const apart = ((((shown - sounds) % 1) + 1.5) % 1) - 0.5
    expect(Math.abs(apart), `beats apart at ${heard}`).toBeLessThan(frame)
  }
  expect(round).toBeGreaterThan(0)
})

test('counted in, and counted in once more for a faster round: every beat is heard, to the millisecond', async ({
  page,
}) => {
  test.setTimeout(60_000)
  await recordSound(page)
  await open(page)
  await page.evaluate(() => {
    const { player } = window.overfoot
    player.choose(player.figures.find(({ id }) => id.startsWith('12'))?.id ?? '')
    player.setTempo(0.9 * player.store.getState().lesson.dance.tempo.to)
  })
  await page.getByRole('button', { name: 'Sound. Sound is off' }).click()
  await expect(page.getByRole('button', { name: 'Sound. Sound is on' })).toBeVisible()
  await page.getByLabel('Half beats').selectOption('off')
  await page.waitForTimeout(1000)
  const { slow, fast, before, round } = await page.evaluate(async () => {
    const { player } = window.overfoot
    const { lesson } = player.store.getState()
    player.play(1)
    const [slow, from] = [player.clock().secondsPerBeat, player.clock().anchor.beat]
    while (player.beatNow() < lesson.range.from + lesson.round - 1.5) await new Promise((done) => setTimeout(done, 20))
    player.nextRound(1.2 * lesson.dance.tempo.to, 1)
    return {
      slow,
      fast: player.clock().secondsPerBeat,
      before: Math.ceil(lesson.range.from - from),
      round: lesson.round,
    }
  })
  await page.waitForTimeout((round + 4) * fast * 1000)
  const found = await onsetsOf(page, 'recorded')
  // The music goes on over the seam: half a beat after its last one the round ends, and from there on it is faster.
  const slowly = Array.from({ length: before + round - 1 }, () => slow)
  const wanted = [...slowly, (slow + fast) / 2, ...Array.from({ length: round }, () => fast)]
  const lasts = found.slice(1).map((at, k) => at - (found[k] as number))
  expect(lasts.length).toBeGreaterThanOrEqual(wanted.length)
  const off = wanted.map((beat, k) => Math.abs((lasts[k] as number) - beat) * 1000)
  expect(Math.max(...off), `ms off: ${off.map((ms) => ms.toFixed(2))}`).toBeLessThan(1)
})

test('the silent switch can be passed where the browser knows it, and only while something sounds', async ({
  page,
}) => {
  await page.addInitScript(() => {
    Object.defineProperty(navigator, 'audioSession', { value: { type: 'auto' } })
  })
  await open(page)
  const type = () =>
    page.evaluate(() => (navigator as Navigator & { audioSession: { type: string } }).audioSession.type)
  await page.getByRole('button', { name: 'Sound. Sound is off' }).click()
  await expect(page.getByRole('button', { name: 'Sound. Sound is on' })).toBeVisible()
  const option = page.getByLabel('It may pause your music app', { exact: false })
  await expect(option).not.toBeChecked()
  await page.evaluate(() => window.overfoot.player.play())
  await page.waitForTimeout(500)
  expect(await type()).toBe('auto')
  await option.check()
  await expect.poll(type).toBe('playback')
  await page.evaluate(() => window.overfoot.player.pause())
  expect(await type()).toBe('auto')
})

test('a browser that knows no silent switch, and refuses a rate: no option, and sound all the same', async ({
  page,
}) => {
  await page.addInitScript(() => {
    const Real = AudioContext
    window.AudioContext = class extends Real {
      constructor(options?: AudioContextOptions) {
        if (options?.sampleRate !== undefined) throw new DOMException('not this rate', 'NotSupportedError')
        super(options)
      }
    }
  })
  await open(page)
  await page.getByRole('button', { name: 'Sound. Sound is off' }).click()
  await expect(page.getByRole('button', { name: 'Sound. Sound is on' })).toBeVisible()
  await expect(page.getByLabel('It may pause your music app', { exact: false })).toHaveCount(0)
  await expect(page.getByText('silent switch first')).toBeVisible()
})
