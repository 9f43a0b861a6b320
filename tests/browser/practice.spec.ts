import { expect, test } from '@playwright/test'
import { axeFindings } from './axeFindings.ts'
import { open, withoutGpu } from './watch.ts'

test.beforeEach(({ page }) => withoutGpu(page))

test('build up: loop after loop it climbs, holds, goes back and up, and stops where it is', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 800 })
  await open(page)
  await page.evaluate(() => {
    const { player } = window.overfoot
    player.choose(player.figures.find(({ id }) => id.startsWith('12'))?.id ?? '')
  })
  await page.getByRole('button', { name: 'Build up' }).click()
  await page.getByRole('button', { name: 'Start', exact: true }).click()
  const status = page.locator('.sheet [role=status]').first()
  await expect(status).toHaveText('Speed 1 of 6: 70 %. Loop 1 of 4.')
  const speed = () =>
    page.evaluate(() => {
      const { lesson, session } = window.overfoot.player.store.getState()
      const { from, to } = lesson.dance.tempo
      return Math.round((100 * session.barsPerMinute) / ((from + to) / 2))
    })
  expect(await speed()).toBe(70)
  // To just before the seam, and over it.
  await page.evaluate(() => {
    const { player } = window.overfoot
    player.seek(player.store.getState().lesson.range.to - 0.5)
  })
  await expect(status).toHaveText('Speed 1 of 6: 70 %. Loop 2 of 4.')
  await page.getByRole('button', { name: 'Faster' }).click()
  await expect(status).toContainText('Speed 2 of 6')
  expect(await speed()).toBeGreaterThan(70)
  await page.getByRole('button', { name: 'Hold' }).click()
  await expect(status).toContainText('Held at this speed.')
  await page.getByRole('button', { name: 'Slower' }).click()
  expect(await speed()).toBe(70)
  expect(await axeFindings(page)).toEqual([])
  await page.getByRole('button', { name: 'Stop building up' }).click()
  expect(await speed()).toBe(70)
})

test('tap: the tempo is that of the taps', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await open(page)
  await page.locator('.settings-toggle').click()
  await page.getByRole('button', { name: 'Build up' }).click()
  const tap = page.getByRole('button', { name: 'Tap', exact: true })
  await expect(tap).toBeVisible()
  // Ten beats at 100 a minute, by the events' own time.
  await tap.evaluate((button) => {
    for (let k = 0; k < 10; k++) {
      const event = new PointerEvent('pointerdown', { bubbles: true })
      Object.defineProperty(event, 'timeStamp', { value: 5000 + 600 * k })
      button.dispatchEvent(event)
    }
  })
  await expect(page.locator('.sheet')).toContainText('100 beats a minute: 25 bars.')
  expect(await page.evaluate(() => window.overfoot.player.store.getState().session.barsPerMinute)).toBeCloseTo(25, 6)
  expect(await axeFindings(page)).toEqual([])
})
