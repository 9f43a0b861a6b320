import { expect, test } from '@playwright/test'

/** What is noted from before the page's first script on. */
type First = {
  /** The panels' grid as it came in markup. */
  grid: Element | null
  /** What could be seen when the picture was drawn first. */
  seen: { canvas: boolean; count: string; hidden: boolean; focusable: boolean } | null
  shifts: number[]
  errors: string[]
}

declare global {
  interface Window {
    first: First
  }
}

test('React takes the place of the page that came as markup: nothing is seen of it, nothing moves', async ({
  page,
}) => {
  await page.addInitScript(() => {
    const first: First = { grid: null, seen: null, shifts: [], errors: [] }
    window.first = first
    document.addEventListener('DOMContentLoaded', () => {
      first.grid = document.querySelector('.panels')
    })
    addEventListener('error', ({ message }) => first.errors.push(message))
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) first.shifts.push((entry as unknown as { value: number }).value)
    }).observe({ type: 'layout-shift', buffered: true })
    const seen = new MutationObserver(() => {
      const home = document.querySelector('#overfoot')
      if (home === null || home.hasAttribute('data-waiting') || first.seen !== null) return
      first.seen = {
        canvas: home.querySelector('.panels canvas') !== null,
        count: home.querySelector('.count-now')?.textContent ?? '',
        hidden: getComputedStyle(home).visibility !== 'visible',
        focusable: !home.hasAttribute('inert'),
      }
    })
    seen.observe(document, { subtree: true, childList: true, attributes: true })
  })
  await page.goto('/')
  await expect(page.locator('#overfoot[inert]')).toHaveCount(0)
  const found = await page.evaluate(() => ({
    ...window.first,
    grid: null,
    came: window.first.grid !== null,
    gone: window.first.grid !== document.querySelector('.panels'),
    canvases: document.querySelectorAll('canvas').length,
    styled: document.querySelector<HTMLElement>('.strip-count')?.style.left,
  }))
  expect(found.errors).toEqual([])
  expect(found.came).toBe(true)
  expect(found.gone).toBe(true)
  expect(found.canvases).toBe(1)
  expect(found.styled).toMatch(/%$/)
  // Picture and page are seen together, with the count, and answer a moment later.
  expect(found.seen).toMatchObject({ canvas: true, hidden: false, focusable: false })
  expect(found.seen?.count).not.toBe('')
  expect(found.shifts).toEqual([])
})

test('what makes the page answer cannot be fetched: the picture stands, and the way out is said', async ({ page }) => {
  let served = false
  await page.route(/mountPage/, (route) => (served ? route.continue() : route.abort()))
  await page.goto('/')
  await expect(page.getByRole('alert')).toContainText('the buttons are not')
  await expect(page.locator('.panels canvas')).toBeVisible()
  served = true
  await page.getByRole('button', { name: 'Reload the page' }).click()
  await expect(page.locator('#overfoot[inert]')).toHaveCount(0)
  await expect(page.getByRole('alert')).toHaveCount(0)
})
