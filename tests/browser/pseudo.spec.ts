import { expect, type Page, test } from '@playwright/test'
import { misfits } from './misfits.ts'
import { speakLonger } from './pseudo.ts'
import { open, openGreeting, withoutGpu } from './watch.ts'

/* Other languages are longer: a sentence by a third or two fifths, a word by more (W3C, Text size in translation; from memory). */

test.use({ viewport: { width: 360, height: 740 } })
test.beforeEach(async ({ page }) => {
  await withoutGpu(page)
  await speakLonger(page)
})

/** With the dialog open, and closed again. */
async function inDialog(page: Page): Promise<string[]> {
  await expect(page.locator('dialog[open] h2').first()).toContainText('[')
  const found = await misfits(page)
  await page.keyboard.press('Escape')
  await expect(page.locator('dialog[open]')).toHaveCount(0)
  return found
}

test('in a longer language all of the page fits on a small phone', async ({ page }) => {
  await openGreeting(page)
  await expect(page.locator('.play')).toContainText('[')
  expect(await misfits(page), 'as a visitor finds it').toEqual([])
})

test('paused, the settings, names off, playing', async ({ page }) => {
  await open(page)
  await page.evaluate(() => window.overfoot.player.seek(1))
  expect(await misfits(page), 'paused').toEqual([])
  await page.locator('.settings-toggle').click()
  expect(await misfits(page), 'settings').toEqual([])
  await page.locator('.settings-toggle').click()
  await page.locator('.who').click()
  expect(await misfits(page), 'names off').toEqual([])
  await page.locator('.who').click()
  await page.locator('.play').click()
  expect(await misfits(page), 'playing').toEqual([])
})

test('the sheets: mistakes, one of them chosen, show', async ({ page }) => {
  await open(page)
  await page.keyboard.press('m')
  await expect(page.locator('.sheet h2')).toContainText('[')
  // Its head stays while the list goes under it.
  await page.locator('.sheet').evaluate((sheet) => sheet.scrollTo(0, 0))
  expect(await misfits(page), 'mistakes').toEqual([])
  // The longest of all: how far one slip spreads.
  const slip = page.locator('.fault', { has: page.locator('input[name=fault]') }).nth(5)
  await slip.locator('input').check()
  await page.locator('.spread summary').click()
  expect(await misfits(page), 'one slip').toEqual([])
  await page.keyboard.press('Escape')
  await page.locator('.bar-button[aria-expanded]').click()
  await expect(page.locator('.sheet h2')).toContainText('[')
  expect(await misfits(page), 'show').toEqual([])
})

test('the dialogs: numbers, a slow in two ways, keys, notes, the table', async ({ page }) => {
  await open(page)
  await page.keyboard.press('m')
  // On a phone the numbers are reached through the mistakes.
  await page.locator('.fault-details > .quiet-button').click()
  expect(await inDialog(page), 'numbers').toEqual([])
  await page.locator('.sheet > .quiet-button').last().click()
  expect(await inDialog(page), 'a slow, two ways').toEqual([])
  await page.keyboard.press('Escape')
  await page.keyboard.press('h')
  expect(await inDialog(page), 'keys').toEqual([])
  await page.locator('.icon-button[aria-haspopup=dialog]').click()
  expect(await inDialog(page), 'notes').toEqual([])
  await page.locator('.bar-button[aria-expanded]').click()
  await page.locator('.sheet > .quiet-button').last().click()
  expect(await inDialog(page), 'the table').toEqual([])
})
