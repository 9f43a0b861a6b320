import { expect, test as fresh, type Page } from '@playwright/test'
import { test } from './reusedPage.ts'
import { beatNow, open, withoutGpu } from './watch.ts'

const slider = (page: Page) => page.getByRole('slider', { name: 'Beat' })

test('keys on the scrubber: arrows half a beat, Page a bar, Home and End the ends; Space plays', async ({ page }) => {
  await open(page)
  await slider(page).focus()
  const press = async (key: string) => {
    await page.keyboard.press(key)
    return beatNow(page)
  }
  expect(await press('ArrowRight')).toBe(0)
  expect(await press('ArrowUp')).toBe(0.5)
  expect(await press('ArrowLeft')).toBe(0)
  expect(await press('ArrowDown')).toBe(-0.5)
  expect(await press('PageUp')).toBe(3.5)
  expect(await press('PageDown')).toBe(-0.5)
  expect(await press('End')).toBe(7.5)
  expect(await press('Home')).toBe(-0.5)
  await page.keyboard.press('Space')
  await expect(page.getByRole('button', { name: 'Pause' })).toBeVisible()
  await page.keyboard.press('Space')
  await expect(page.getByRole('button', { name: 'Play', exact: true })).toBeVisible()
})

test('a drag, a tap and a wish of any size stand on half beats only', async ({ page }) => {
  await open(page)
  const box = await slider(page).boundingBox()
  if (box === null) throw new Error('no scrubber')
  const y = box.y + box.height / 2
  await page.mouse.move(box.x + box.width / 2, y)
  await page.mouse.down()
  for (let part = 0.1; part < 0.9; part += 0.037) {
    await page.mouse.move(box.x + box.width * part, y)
    const at = await beatNow(page)
    expect(at * 2).toBe(Math.round(at * 2))
  }
  await page.mouse.up()
  await page.mouse.click(box.x + box.width * 0.3, y)
  const tapped = await beatNow(page)
  expect(tapped * 2).toBe(Math.round(tapped * 2))
  expect(tapped).toBeGreaterThan(0)
})

test('the value is said in words: the count, then each panel', async ({ page }) => {
  await open(page)
  await slider(page).focus()
  await page.keyboard.press('ArrowRight')
  const text = await slider(page).getAttribute('aria-valuetext')
  expect(text).toMatch(/^bar 1, beat 1/)
  expect(text).toContain('In time: moving, right foot on its way')
  expect(text).toContain('late by ½ beat: over the left foot, ready')
})

test('the playhead, the thumb and the beat’s grid line share one axis', async ({ page }) => {
  await open(page)
  for (const at of [-0.5, 1, 4, 7.5]) {
    const [head, thumb] = await page.evaluate(async (beat) => {
      window.overfoot.player.seek(beat)
      await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))
      const line = document.querySelector('.playhead-run')?.getBoundingClientRect()
      const range = document.querySelector<HTMLInputElement>('.beat-slider')
      const track = range?.getBoundingClientRect()
      if (!line || !range || !track) throw new Error('no strip')
      // The thumb is a finger wide, whatever is seen of it.
      const size = 44
      const part = (range.valueAsNumber - Number(range.min)) / (Number(range.max) - Number(range.min))
      return [line.x, track.x + size / 2 + part * (track.width - size)]
    }, at)
    expect(Math.abs((head as number) - (thumb as number))).toBeLessThan(2)
  }
})

test('step buttons go half a beat and stop what plays', async ({ page }) => {
  await open(page)
  await page.getByRole('button', { name: 'Half a beat forward' }).click()
  expect(await beatNow(page)).toBe(0)
  await page.getByRole('button', { name: 'Half a beat back' }).click()
  expect(await beatNow(page)).toBe(-0.5)
  await page.getByRole('button', { name: 'Play', exact: true }).click()
  await page.getByRole('button', { name: 'Half a beat forward' }).click()
  await expect(page.getByRole('button', { name: 'Play', exact: true })).toBeVisible()
})

fresh.describe('by touch', () => {
  fresh.use({ hasTouch: true, viewport: { width: 390, height: 844 } })
  fresh('play, pause, step, scrub and swap panels', async ({ page }) => {
    await withoutGpu(page)
    await open(page)
    await page.getByRole('button', { name: 'Play', exact: true }).tap()
    await page.waitForTimeout(400)
    await page.getByRole('button', { name: 'Pause' }).tap()
    expect(await beatNow(page)).toBeGreaterThanOrEqual(0)
    await page.getByRole('button', { name: 'Half a beat forward' }).tap()
    await slider(page).tap()
    const at = await beatNow(page)
    expect(at * 2).toBe(Math.round(at * 2))
    const large = page.locator('.panel-large h2')
    await expect(large).toContainText('In time')
    await page.getByRole('button', { name: /Show large: Late/ }).tap()
    await expect(large).toContainText('Late')
  })
})
