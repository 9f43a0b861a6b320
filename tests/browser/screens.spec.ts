import { expect } from '@playwright/test'
import { axeFindings } from './axeFindings.ts'
import { test } from './reusedPage.ts'
import { open } from './watch.ts'

const SIZES = [
  { width: 1280, height: 800 },
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
]

for (const viewport of SIZES) {
  test.describe(`${viewport.width}×${viewport.height}`, () => {
    test.use({ viewport })

    test('axe finds nothing, light: paused, names off, playing; dark: paused, notes open', async ({ page }) => {
      // Several whole audits in one page: long, not unsure.
      test.setTimeout(90_000)
      await page.emulateMedia({ colorScheme: 'light' })
      await open(page)
      expect(await axeFindings(page)).toEqual([])
      await page.getByRole('button', { name: 'Who is late?' }).click()
      expect(await axeFindings(page)).toEqual([])
      await page.getByRole('button', { name: 'Show names' }).click()
      await page.getByRole('button', { name: 'Play', exact: true }).click()
      expect(await axeFindings(page)).toEqual([])
      await page.getByRole('button', { name: 'Pause' }).click()
      await page.emulateMedia({ colorScheme: 'dark' })
      expect(await axeFindings(page)).toEqual([])
      await page.getByRole('button', { name: 'Notes and cautions' }).click()
      await expect(page.locator('dialog.notes')).toBeVisible()
      expect(await axeFindings(page)).toEqual([])
      await page.getByRole('button', { name: 'Keys', exact: true }).click()
      await expect(page.getByRole('dialog', { name: 'Keys' })).toBeVisible()
      expect(await axeFindings(page)).toEqual([])
      expect(await page.evaluate(() => window.watched.violations)).toEqual([])
    })

    test('axe finds nothing: ways to show, one picture, the table, what is what, teaching', async ({ page }) => {
      test.setTimeout(90_000)
      await open(page)
      await page.evaluate(() => window.overfoot.player.seek(2.5))
      await page.getByRole('button', { name: 'Show', exact: true }).click()
      await expect(page.getByRole('region', { name: 'Show' })).toBeVisible()
      expect(await axeFindings(page)).toEqual([])
      await page.getByRole('button', { name: 'As a table' }).click()
      await expect(page.getByRole('table')).toBeVisible()
      expect(await axeFindings(page)).toEqual([])
      await page.keyboard.press('Escape')
      await page.keyboard.press('Escape')
      await page.getByRole('button', { name: 'What is what' }).click()
      await expect(page.locator('.mark').first()).toBeVisible()
      expect(await axeFindings(page)).toEqual([])
      await page.keyboard.press('Escape')
      await page.keyboard.press('2')
      await page.keyboard.press('3')
      await page.getByRole('button', { name: 'Full screen', exact: true }).click()
      await expect(page.getByRole('button', { name: 'Leave full screen' })).toBeVisible()
      expect(await axeFindings(page)).toEqual([])
    })

    test('nothing scrolls sideways, the picture and the one large button are on the first screen', async ({ page }) => {
      await open(page)
      const wide = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      )
      expect(wide).toBeLessThanOrEqual(0)
      for (const part of [page.locator('canvas'), page.getByRole('button', { name: 'Play', exact: true })]) {
        const box = await part.boundingBox()
        expect(box).not.toBeNull()
        expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(viewport.height + 1)
      }
    })

    test('the count is three times larger than anything else', async ({ page }) => {
      await open(page)
      const [count, next] = await page.evaluate(() => {
        const sizes = [...document.querySelectorAll('body *')]
          .filter((element) =>
            [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim() !== ''),
          )
          .filter((element) => element.getClientRects().length > 0 && element.closest('svg, .for-ears') === null)
          .map((element) => ({
            size: Number.parseFloat(getComputedStyle(element).fontSize),
            count: element.matches('.count-now'),
          }))
        const largest = (count: boolean) =>
          Math.max(...sizes.filter((one) => one.count === count).map(({ size }) => size))
        return [largest(true), largest(false)]
      })
      expect((count as number) / (next as number)).toBeGreaterThanOrEqual(3)
    })

    test('what is pressed is 44 px or more', async ({ page }) => {
      await open(page)
      const small = await page.evaluate(() =>
        [...document.querySelectorAll('button, select, input')]
          .map((element) => ({ element, box: element.getBoundingClientRect() }))
          .filter(({ element, box }) => box.width > 0 && element.closest('dialog:not([open])') === null)
          .filter(({ box }) => box.width < 43.5 || box.height < 43.5)
          .map(({ element, box }) => `${element.outerHTML.slice(0, 80)} ${box.width}×${box.height}`),
      )
      expect(small).toEqual([])
    })
  })
}

test('names off hides titles, captions, labels, and shuffles; shown again where they stand', async ({ page }) => {
  await open(page)
  await page.getByRole('button', { name: 'Who is late?' }).click()
  // What is seen, and what is heard, of the panels and the strip.
  const seen = await page.evaluate(() =>
    [...document.querySelectorAll('.panels *, .strip *')]
      .filter((element) => element.checkVisibility({ visibilityProperty: true, opacityProperty: true }))
      .flatMap((element) => [...element.childNodes].filter(({ nodeType }) => nodeType === Node.TEXT_NODE))
      .map(({ textContent }) => textContent)
      .join(' '),
  )
  expect(seen).toContain('Picture 1')
  expect(seen).not.toMatch(/in time|late|early/i)
  for (const part of ['.panels', '.strip']) {
    expect(await page.locator(part).ariaSnapshot()).not.toMatch(/in time|late|early/i)
  }
  await page.getByRole('button', { name: 'Show names' }).click()
  await expect(page.locator('main')).toContainText('Late by ½ beat')
})

test('reduced motion: its still with step buttons, and play when asked', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await open(page)
  await page.waitForTimeout(500)
  expect(await page.evaluate(() => window.overfoot.player.store.getState().playing)).toBe(false)
  await expect(page.getByRole('button', { name: 'Half a beat forward' })).toBeVisible()
  await page.getByRole('button', { name: 'Play', exact: true }).click()
  expect(await page.evaluate(() => window.overfoot.player.store.getState().playing)).toBe(true)
})

test('a visitor’s figure that cannot be shown leaves a way out', async ({ page }) => {
  await open(page)
  await page.evaluate(() => {
    const { player } = window.overfoot
    const { lesson } = player.store.getState()
    player.store.setState({ lesson: { ...lesson, schedule: null } as never })
  })
  await expect(page.getByRole('alert')).toBeVisible()
  await page.getByRole('button', { name: 'Start without this figure' }).click()
  await expect(page.getByRole('button', { name: 'Play', exact: true })).toBeVisible()
})

test('every demo opens, and the tempo says bars, beats and seconds', async ({ page }) => {
  await open(page)
  const select = page.getByRole('combobox', { name: 'Figure' })
  const titles = await select.locator('option').allTextContents()
  expect(titles.length).toBeGreaterThanOrEqual(8)
  for (const title of titles) {
    await select.selectOption({ label: title })
    // With how many bars it has, as the first timing counts them.
    const shown = await page.evaluate(() => window.overfoot.player.store.getState().lesson.figure.title)
    expect(title).toMatch(/ \(\d*[¼½¾]? bars?\)$/)
    expect(title.replace(/ \([^(]*\)$/, '')).toBe(shown)
  }
  expect(await page.evaluate(() => window.watched.violations)).toEqual([])
})

test('axe is in earnest: a button without a name is found', async ({ page }) => {
  await open(page)
  await page.evaluate(() => document.querySelector('main')?.append(document.createElement('button')))
  expect(await axeFindings(page)).toEqual([expect.stringContaining('button-name: <button>')])
  await page.evaluate(() => document.querySelector('main')?.lastChild?.remove())
})
