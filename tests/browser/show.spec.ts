import { expect, test as fresh, type Page } from '@playwright/test'
import { test } from './reusedPage.ts'
import { beatNow, coloursAt, open, openGreeting, withoutGpu } from './watch.ts'

const panelTitles = (page: Page) =>
  page.locator('.panel-title:not(.panel-title-room) b').evaluateAll((all) => all.map(({ textContent }) => textContent))
const session = (page: Page) => page.evaluate(() => window.overfoot.player.store.getState().session)
const isPlaying = (page: Page) => page.evaluate(() => window.overfoot.player.store.getState().playing)

test('the right one alone, then late beside it, then early; in another order; none of them flat', async ({ page }) => {
  await open(page)
  await page.getByRole('button', { name: 'Show', exact: true }).click()
  const sheet = page.getByRole('region', { name: 'Show' })
  await sheet.getByRole('checkbox', { name: 'Late' }).uncheck()
  await sheet.getByRole('checkbox', { name: 'Early' }).uncheck()
  expect(await panelTitles(page)).toEqual(['In time'])
  // One picture at least.
  await expect(sheet.getByRole('checkbox', { name: 'In time' })).toBeDisabled()
  for (const colours of await coloursAt(page, 1)) expect(colours).toBeGreaterThan(30)
  await sheet.getByRole('checkbox', { name: 'Late' }).check()
  expect(await panelTitles(page)).toEqual(['In time', 'Late by ½ beat'])
  await sheet.getByRole('button', { name: 'Late: further to the left' }).click()
  expect(await panelTitles(page)).toEqual(['Late by ½ beat', 'In time'])
  await sheet.getByRole('checkbox', { name: 'Early' }).check()
  expect(await panelTitles(page)).toEqual(['Late by ½ beat', 'In time', 'Early'])
  expect(await coloursAt(page, 2.5)).toHaveLength(3)
  for (const colours of await coloursAt(page, 2.5)) expect(colours).toBeGreaterThan(30)
  await page.keyboard.press('Escape')
  await expect(sheet).toHaveCount(0)
  await expect(page.getByRole('button', { name: 'Show', exact: true })).toBeFocused()
})

test('from where, and for whom: each is another picture, and the partner is said to be made by rule', async ({
  page,
}) => {
  await open(page)
  const pictures = new Set<string>()
  const keep = async () => {
    const picture = await page.evaluate(async () => {
      const { player, stage } = window.overfoot
      player.seek(1.5)
      return (await stage).canvas.toDataURL()
    })
    pictures.add(picture)
  }
  await page.getByRole('combobox', { name: 'Figure' }).selectOption({ label: 'Waltz natural turn (2 bars)' })
  await keep()
  await page.getByRole('button', { name: 'Show', exact: true }).click()
  await page.getByRole('radio', { name: 'Facing the class', exact: true }).check()
  await keep()
  await page.getByRole('radio', { name: 'Facing the class, in a mirror: to dance along' }).check()
  await expect(page.locator('.picture').first()).toContainText('in a mirror')
  await keep()
  await page.getByRole('radio', { name: 'Follower' }).check()
  await keep()
  expect(pictures.size).toBe(4)
  await expect(page.locator('header')).toContainText('Waltz, follower.')
  await expect(page.locator('header')).toContainText('made by rule')
  await page.getByRole('radio', { name: 'Leader' }).check()
  await expect(page.locator('header')).not.toContainText('made by rule')
})

test('one tap loops this step with the one before it, and one tap ends it', async ({ page }) => {
  await open(page)
  await page.evaluate(() => window.overfoot.player.seek(2.5))
  const button = page.getByRole('button', { name: 'Loop this step with the one before it' })
  await button.click()
  await expect(button).toHaveAttribute('aria-pressed', 'true')
  expect((await session(page)).steps).toEqual({ first: 0, last: 1 })
  const { from, to } = await page.evaluate(() => window.overfoot.player.store.getState().lesson.range)
  expect([from, to]).toEqual([-0.5, 4.5])
  await page.getByRole('button', { name: 'Play', exact: true }).click()
  expect(await isPlaying(page)).toBe(true)
  await button.click()
  expect((await session(page)).steps).toBeNull()
  expect(await isPlaying(page)).toBe(true)
})

test('speed by per cent', async ({ page }) => {
  await open(page)
  await page.getByRole('button', { name: /^50 %/ }).click()
  expect((await session(page)).barsPerMinute).toBe(14.5)
  await expect(page.getByRole('button', { name: /^50 %/ })).toHaveAttribute('aria-pressed', 'true')
  await page.getByRole('slider', { name: 'Beat' }).focus()
  await page.keyboard.press('>')
  expect((await session(page)).barsPerMinute).toBeCloseTo(0.6 * 29, 9)
})

test('teaching: picture, count and strip alone; a press on the picture plays; Escape brings the rest back', async ({
  page,
}) => {
  await open(page)
  await page.getByRole('button', { name: 'Full screen', exact: true }).click()
  const play = page.getByRole('button', { name: 'Play', exact: true })
  const height = async () => (await page.locator('.picture').first().boundingBox())?.height ?? 0
  await expect(page.getByRole('button', { name: 'Leave full screen' })).toBeVisible()
  const controls = page.locator('.controls')
  expect((await controls.boundingBox())?.width).toBeLessThanOrEqual(1)
  const taught = await height()
  await page.locator('.picture').first().click()
  expect(await isPlaying(page)).toBe(true)
  await page.locator('.picture').nth(1).click()
  expect(await isPlaying(page)).toBe(false)
  // The keyboard brings the buttons into sight.
  await page.getByRole('slider', { name: 'Beat' }).focus()
  await page.keyboard.press('Tab')
  await expect(play).toBeFocused()
  expect((await controls.boundingBox())?.width).toBeGreaterThan(200)
  await page.keyboard.press('Escape')
  await expect(page.getByRole('button', { name: 'Leave full screen' })).toHaveCount(0)
  expect(taught).toBeGreaterThan(await height())
})

test('what is what: words on the marks of the picture, none outside it; the list of all keys', async ({ page }) => {
  await open(page)
  await page.evaluate(() => window.overfoot.player.seek(2.5))
  await page.getByRole('button', { name: 'What is what' }).click()
  const marks = page.locator('.marks .mark')
  await expect(marks.filter({ hasText: 'the weight' })).toHaveCount(1)
  await expect(marks.filter({ hasText: 'here it should be' })).toHaveCount(1)
  await expect(marks.filter({ hasText: 'it waits' })).toHaveCount(1)
  const panels = await page.locator('.panels').boundingBox()
  for (const mark of await marks.all()) {
    const box = await mark.boundingBox()
    expect(box?.x).toBeGreaterThanOrEqual(panels?.x ?? 0)
    expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual((panels?.x ?? 0) + (panels?.width ?? 0))
  }
  await page.getByRole('button', { name: 'All keys' }).click()
  const keys = page.getByRole('dialog', { name: 'Keys' })
  await expect(keys).toContainText('plays and pauses')
  await keys.getByRole('checkbox', { name: /Single letters/ }).uncheck()
  await page.keyboard.press('Escape')
  await page.keyboard.press('Escape')
  await expect(marks).toHaveCount(0)
  await page.getByRole('slider', { name: 'Beat' }).focus()
  await page.keyboard.press('k')
  expect(await isPlaying(page)).toBe(false)
})

test('the figure as a table: a row each half beat, the row now marked, a press goes there', async ({ page }) => {
  await open(page)
  await page.getByRole('button', { name: 'Show', exact: true }).click()
  await page.getByRole('button', { name: 'As a table' }).click()
  const table = page.getByRole('dialog', { name: 'The figure as a table of half beats' }).getByRole('table')
  // From −½ to 4, where the late one is full.
  await expect(table.locator('tbody tr')).toHaveCount(10)
  await expect(table.getByRole('columnheader')).toHaveText([
    'Count',
    'Step',
    'In time',
    'Late by ½ beat',
    'Early: across in half the step’s time',
  ])
  const row = table.locator('tbody tr').nth(6)
  await expect(row).toContainText('late by ½ beat: placed, half way between the feet')
  await row.getByRole('button').click()
  await expect(row).toHaveAttribute('aria-current', 'step')
  expect(await beatNow(page)).toBe(2.5)
})

test('names off: no list gives the answer away, and the keys neither', async ({ page }) => {
  await open(page)
  await page.getByRole('button', { name: 'Who is late?' }).click()
  await page.getByRole('button', { name: 'Show', exact: true }).click()
  const sheet = page.getByRole('region', { name: 'Show' })
  await expect(sheet.getByRole('checkbox')).toHaveCount(0)
  await expect(sheet.getByRole('button', { name: 'As a table' })).toHaveCount(0)
  await page.keyboard.press('Escape')
  await page.keyboard.press('2')
  expect((await session(page)).order).toHaveLength(3)
})

test('a long figure turns its page, and says which it is', async ({ page }) => {
  await open(page)
  await page
    .getByRole('combobox', { name: 'Figure' })
    .selectOption({ label: 'Twelve walks down the long side (4½ bars)' })
  const pages = await page.evaluate(() => {
    const { player } = window.overfoot
    const { range } = player.store.getState().lesson
    const seen: number[] = []
    for (let at: number = range.from; at <= range.to; at += 0.5) {
      player.seek(at)
      const index = player.pictureNow()[0]?.picture.page.index ?? -1
      if (seen.at(-1) !== index) seen.push(index)
    }
    player.seek(range.from)
    return [...seen, player.pictureNow()[0]?.picture.page.index ?? -1]
  })
  expect(pages.length).toBeGreaterThan(2)
  expect(pages).toEqual([...pages.slice(0, -1).keys(), 0])
  await expect(page.locator('.picture').first()).toContainText(`page 1 of ${pages.length - 1}`)
  for (const at of [0, 6, 12]) for (const colours of await coloursAt(page, at)) expect(colours).toBeGreaterThan(30)
})

test.describe('the first ten seconds', () => {
  fresh('a figure moves at once, slowly; one large button; a press stops it', async ({ page }) => {
    await withoutGpu(page)
    await openGreeting(page)
    expect(await isPlaying(page)).toBe(true)
    expect((await session(page)).barsPerMinute).toBe(14.5)
    const sizes = await page
      .locator('main button:visible')
      .evaluateAll((all) => all.map((one) => [one.textContent ?? '', one.getBoundingClientRect().height] as const))
    const pressed = sizes.filter(([text]) => !/^$/.test(text))
    const largest = pressed.reduce((a, b) => (b[1] > a[1] ? b : a))
    expect(largest[0]).toContain('Pause')
    await page.getByRole('button', { name: 'Pause' }).click()
    expect(await isPlaying(page)).toBe(false)
    await page.waitForTimeout(300)
    expect(await isPlaying(page)).toBe(false)
  })

  fresh('left alone it comes to rest, on a still with beads in every panel', async ({ page }) => {
    await withoutGpu(page)
    await openGreeting(page)
    // Three rounds of eight beats at 58 beats a minute would be 25 s: wound on by the clock that the page asks.
    await page.evaluate(() => {
      const real = performance.now.bind(performance)
      const from = real()
      performance.now = () => real() + (real() - from) * 19
    })
    await expect.poll(() => isPlaying(page), { timeout: 20_000 }).toBe(false)
    expect(await beatNow(page)).toBeGreaterThanOrEqual(2.5)
    const beads = await page.evaluate(() => window.overfoot.player.pictureNow().map(({ frame }) => frame.beads.length))
    for (const count of beads) expect(count).toBeGreaterThan(3)
  })

  test('where motion is unwelcome: its still with beads, and the step button is the large one', async ({ page }) => {
    await page.emulateMedia({ reducedMotion: 'reduce' })
    await openGreeting(page)
    expect(await isPlaying(page)).toBe(false)
    expect(await beatNow(page)).toBe(2.5)
  })
})
