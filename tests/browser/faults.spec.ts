import { expect, test as fresh, type Page } from '@playwright/test'
import { axeFindings } from './axeFindings.ts'
import { test } from './reusedPage.ts'
import { coloursAt, open, withoutGpu } from './watch.ts'

const sheet = (page: Page) => page.locator('.sheet')
const fault = (page: Page, name: string) => sheet(page).getByRole('radio', { name })
const titles = (page: Page) => page.locator('.panel-title:not(.panel-title-room) b').allTextContents()

/** Chooses a figure by the beginning of its file's name. */
const figure = (page: Page, beginning: string): Promise<void> =>
  page.evaluate((start) => {
    const { player } = window.overfoot
    player.choose(player.figures.find(({ id }) => id.startsWith(start))?.id ?? '')
  }, beginning)

/** When the weight is full in a panel, beats, action by action. */
const fulls = (page: Page, panel: number): Promise<number[]> =>
  page.evaluate(
    (index) =>
      window.overfoot.player.store.getState().lesson.panels[index]?.performance.times.map(({ full }) => full) ?? [],
    panel,
  )

test.describe('1280×800', () => {
  test.use({ viewport: { width: 1280, height: 800 } })

  test('a half-beat step: placed, not carried; it makes the next steps late, and slow practice cures it', async ({
    page,
  }) => {
    await open(page)
    await figure(page, '07')
    await page.getByRole('button', { name: 'Late by ½ beat' }).click()
    await fault(page, 'Placed, not carried').click()
    expect(await titles(page)).toEqual(['In time', 'Placed, not carried', 'Early'])
    // By the rule, at 87 beats a minute: m = 0.42 s is more than half a beat.
    expect((await fulls(page, 1)).slice(0, 3)).toEqual([0.5, 1.5, 2])
    await expect(page.locator('.strip-error[data-tone="late"]').first()).toBeAttached()
    await expect(page.locator('.panel-sum').first()).toContainText('½ beat late on steps 2 and 3')
    // The tempo is dragged: the same dancer, more time.
    await page.getByRole('slider', { name: 'Tempo' }).first().fill('15')
    expect((await fulls(page, 1))[2]).toBeCloseTo(1.5 + (0.42 * 15 * 3) / 60, 9)
    await page.keyboard.press('Escape')
    await expect(sheet(page)).toHaveCount(0)
    for (const colours of await coloursAt(page, 1)) expect(colours).toBeGreaterThan(5)
    expect(await page.evaluate(() => window.watched.violations)).toEqual([])
  })

  test('what a figure cannot have is grey and says why, and leads to a figure that can', async ({ page }) => {
    await open(page)
    await page.keyboard.press('m')
    await expect(fault(page, 'Placed, not carried')).toBeDisabled()
    await expect(sheet(page).getByText('No step of this figure has half a beat.')).toBeVisible()
    await sheet(page).getByRole('button', { name: 'See it in: Waltz chassé' }).first().click()
    await expect(fault(page, 'Placed, not carried')).toBeEnabled()
    expect(await page.evaluate(() => window.overfoot.player.store.getState().session.figure)).toContain('07')
  })

  fresh('a fourth picture, on chosen steps, kept in a link, and taken away again', async ({ page }) => {
    await withoutGpu(page)
    await open(page)
    await page.keyboard.press('m')
    await sheet(page).getByRole('button', { name: 'Add a picture' }).click()
    await fault(page, 'Stops in the middle').click()
    await sheet(page).getByRole('button', { name: '2: Q' }).click()
    expect(await titles(page)).toEqual(['In time', 'Late by ½ beat', 'Early', 'Stops in the middle'])
    await expect(page.locator('.picture')).toHaveCount(4)
    await expect(sheet(page).getByRole('button', { name: 'Add a picture' })).toHaveAttribute('aria-disabled', 'true')
    const panels = () => page.evaluate(() => window.overfoot.player.store.getState().session.panels)
    const before = await panels()
    expect(before[3]?.way).toEqual({ kind: 'stops', on: [1] })
    await page.getByRole('button', { name: 'Link', exact: true }).click()
    await expect.poll(() => page.evaluate(() => location.hash)).not.toBe('')
    const hash = await page.evaluate(() => location.hash)
    await page.goto('about:blank')
    await page.goto(`/${hash}`)
    await expect.poll(panels).toEqual(before)
    await page.keyboard.press('m')
    await sheet(page).getByRole('button', { name: 'Stops in the middle', exact: true }).click()
    await sheet(page).getByRole('button', { name: 'Take away: Stops in the middle' }).click()
    await expect(page.locator('.picture')).toHaveCount(3)
  })

  test('the picture stays in its place when it shows another fault, and its words take more room', async ({ page }) => {
    await page.setViewportSize({ width: 390, height: 844 })
    await open(page)
    await page.getByRole('button', { name: 'Late by ½ beat', exact: true }).click()
    await fault(page, 'Foot without the body').click()
    await page.keyboard.press('Escape')
    await page.evaluate(() => window.overfoot.player.seek(1.5))
    const apart = () =>
      page.evaluate(() => {
        const home = document.querySelector('.panels')?.getBoundingClientRect()
        const drawn = window.overfoot.player.pictureNow().map(({ rect }) => rect)
        return [...document.querySelectorAll('.picture')].map((picture, place) => {
          const { x, y, height } = picture.getBoundingClientRect()
          const rect = drawn[place]
          if (home === undefined || rect === undefined) return Number.POSITIVE_INFINITY
          return Math.max(Math.abs(x - home.x - rect.x), Math.abs(y - home.y - rect.y), Math.abs(height - rect.height))
        })
      })
    await expect.poll(async () => Math.max(...(await apart()))).toBeLessThanOrEqual(1)
    // The one that was chosen for is the large one, and the keyboard is where it was.
    expect(await page.locator('.panel-large .panel-title:not(.panel-title-room) b').textContent()).toBe(
      'Foot without the body',
    )
    await expect(page.locator('.panel-choose', { hasText: 'Foot without the body' })).toBeFocused()
  })

  test('one slip: what it makes late is said at each tempo, and a press in the chart sets one', async ({ page }) => {
    await open(page)
    await figure(page, '23')
    await page.getByRole('button', { name: 'Late by ½ beat' }).click()
    await fault(page, 'One slip').click()
    const spread = page.locator('.spread')
    await expect(spread).toContainText('steps 1 to 8 late, ½ beat each')
    await expect(spread).toContainText('Up to 71 beats a minute')
    await spread.getByText('Steps and tempo').click()
    await spread.getByRole('row').nth(2).getByRole('button').click()
    await expect(spread).toContainText('step 1 begins ½ beat late and is in time at its end')
    expect((await fulls(page, 1)).map((full) => Number(full.toFixed(6)))).toEqual(
      (await fulls(page, 0)).map((full) => Number(full.toFixed(6))),
    )
  })

  test('a touch on a moment of the strip names it; the numbers are one press away', async ({ page }) => {
    await open(page)
    const box = await page.locator('.strip-touch').boundingBox()
    if (box === null) throw new Error('no strip to touch')
    const [x, top] = await page.evaluate(() => {
      const { lesson } = window.overfoot.player.store.getState()
      const at = lesson.panels[1]?.performance.times[0]?.full ?? 0
      return [(at - lesson.range.from) / (lesson.range.to - lesson.range.from), 0.13]
    })
    await page.mouse.click(box.x + box.width * (x as number), box.y + box.height * (top as number))
    // 116 beats a minute: half a beat is 259 ms.
    await expect(page.locator('.strip-named')).toHaveText('Late: step 1 (S), fully over ½ beat late (259 ms).')
    await page.getByRole('button', { name: '½ beat late throughout.' }).click()
    const dialog = page.getByRole('dialog')
    await expect(dialog.getByRole('row')).toHaveCount(4)
    await expect(dialog.getByRole('row').nth(1)).toContainText('½ beat late, 259 ms')
  })

  test('with names off nothing tells: no sentences, no bars, no marks of hurry, and the names’ sheet gives nothing away', async ({
    page,
  }) => {
    await open(page)
    await page.getByRole('button', { name: 'Who is late?' }).click()
    for (const gone of ['.panel-sum', '.strip-error', '.strip-rush', '.panel-choose'])
      await expect(page.locator(gone)).toHaveCount(0)
    // A touch on the strip names nothing.
    await page.locator('.strip-touch').click({ position: { x: 100, y: 20 } })
    await expect(page.locator('.strip-named')).toHaveCount(0)
    await page.keyboard.press('m')
    await expect(sheet(page).getByRole('radio')).toHaveCount(0)
  })
})

for (const [width, height, colorScheme] of [
  [1280, 800, 'light'],
  [1024, 768, 'dark'],
  [390, 844, 'light'],
] as const) {
  test(`${width}×${height}, ${colorScheme}: axe finds nothing in the mistakes, the chart, the numbers and the slow; nothing scrolls sideways`, async ({
    page,
  }) => {
    test.setTimeout(90_000)
    await page.setViewportSize({ width, height })
    await page.emulateMedia({ colorScheme })
    await open(page)
    await figure(page, '23')
    await page.keyboard.press('m')
    await fault(page, 'One slip').click()
    await page.getByText('Steps and tempo').click()
    expect(await axeFindings(page)).toEqual([])
    await sheet(page).getByRole('button', { name: 'A slow, two ways' }).click()
    await expect(page.getByRole('dialog')).toBeVisible()
    expect(await axeFindings(page)).toEqual([])
    await page.keyboard.press('Escape')
    await sheet(page).getByRole('button', { name: 'Close' }).click()
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
    expect(wide).toBeLessThanOrEqual(0)
  })
}
