import { expect, type Page } from '@playwright/test'
import { axeFindings } from './axeFindings.ts'
import { test } from './reusedPage.ts'
import { open } from './watch.ts'

/**
 * Taps on a button by the events' own time. @param lasts milliseconds a beat @param ago milliseconds since the last tap
 * @returns the page's time of the first
 */
const tapOn = (page: Page, name: string, lasts: number, count: number, ago = 0): Promise<number> =>
  page.getByRole('button', { name, exact: true }).evaluate(
    (button, { every, taps, since }) => {
      const first = performance.now() - since - every * (taps - 1)
      for (let k = 0; k < taps; k++) {
        const event = new PointerEvent('pointerdown', { bubbles: true })
        Object.defineProperty(event, 'timeStamp', { value: first + every * k })
        button.dispatchEvent(event)
      }
      return first
    },
    { every: lasts, taps: count, since: ago },
  )

/** How far the picture's bar is from the music's just now, in beats. */
const outOfBar = (page: Page, one: number, lasts: number): Promise<number> =>
  page.evaluate(
    ({ first, every }) => {
      const { player } = window.overfoot
      const { beatsPerBar, firstCount } = player.store.getState().lesson.schedule
      // Of a few looks the quickest: on a machine that is busy the two clocks are not asked at once.
      const looks = Array.from({ length: 20 }, () => {
        const before = performance.now()
        const beat = player.beatNow()
        const after = performance.now()
        return { took: after - before, beat, at: (before + after) / 2 }
      })
      const { beat, at } = looks.reduce((best, look) => (look.took < best.took ? look : best))
      const apart = beat + firstCount - 1 - (at - first) / every
      return apart - Math.round(apart / beatsPerBar) * beatsPerBar
    },
    { first: one, every: lasts },
  )

const state = (page: Page) =>
  page.evaluate(() => {
    const { playing, along, session } = window.overfoot.player.store.getState()
    return { playing, along: along !== null, bars: session.barsPerMinute }
  })

for (const [width, height, dark] of [
  [1280, 800, false],
  [390, 844, true],
] as const) {
  test(`play along at ${width} × ${height}: on the tapped one, nudged, re-tapped, left`, async ({ page }) => {
    await page.setViewportSize({ width, height })
    await page.emulateMedia({ colorScheme: dark ? 'dark' : 'light' })
    await open(page)
    if (width < 640) await page.locator('.settings-toggle').click()
    await page.getByRole('button', { name: 'Practice' }).click()
    await page.getByRole('tab', { name: 'Own music' }).click()
    const along = page.getByRole('button', { name: 'Play along' })
    await expect(along).toHaveAttribute('aria-disabled', 'true')
    const one = await tapOn(page, 'Tap', 500, 9)
    await expect(along).toHaveAttribute('aria-disabled', 'false')
    await along.click()
    await expect(along).toHaveAttribute('aria-pressed', 'true')
    await expect(page.locator('.sheet')).toContainText('Plays along.')
    // It is counted in; then on the beat, within a frame of a machine that is busy.
    await page.waitForTimeout(600)
    expect(Math.abs(await outOfBar(page, one, 500))).toBeLessThan(0.01)
    await page.getByRole('button', { name: 'Half a beat later' }).focus()
    await page.keyboard.press('Enter')
    await expect(page.locator('.sheet')).toContainText('½ beat later than tapped')
    expect(Math.abs((await outOfBar(page, one, 500)) + 0.5)).toBeLessThan(0.01)
    await page.getByRole('button', { name: 'Half a beat earlier' }).click()
    const buttons = await page.locator('.practice-group', { hasText: 'With your own music' }).getByRole('button').all()
    expect(buttons.length).toBeGreaterThanOrEqual(4)
    for (const button of buttons) expect((await button.boundingBox())?.height).toBeGreaterThanOrEqual(44)
    // Paused, it waits for the music's next bar; pressed again, it is left, and goes on.
    await page.evaluate(() => window.overfoot.player.pause())
    await expect(page.locator('.sheet')).toContainText('Waits:')
    expect(await axeFindings(page)).toEqual([])
    await page.evaluate(() => window.overfoot.player.play())
    expect(Math.abs(await outOfBar(page, one, 500))).toBeLessThan(0.13)
    if (width < 640) {
      await along.click()
      expect(await state(page)).toMatchObject({ playing: true, along: false })
      await expect(page.locator('.sheet')).toContainText('With music:')
      return
    }
    // With the sheet closed a bar says so, puts it right and leaves it.
    await page.keyboard.press('Escape')
    const bar = page.getByRole('region', { name: 'Play along' })
    await expect(bar).toContainText('Plays along with your music.')
    await bar.getByRole('button', { name: '½ beat later' }).click()
    await expect(bar).toContainText('½ beat later than tapped')
    await bar.getByRole('button', { name: 'Leave the music' }).press('Enter')
    await expect(bar).toBeHidden()
    await expect(page.getByRole('slider', { name: 'Beat' })).toBeFocused()
    expect(await state(page)).toMatchObject({ playing: true, along: false })
  })
}

test('every other beat tapped: the offer is read as twice as fast; the keyboard taps once a press', async ({
  page,
}) => {
  await open(page)
  await page.getByRole('button', { name: 'Practice' }).click()
  await page.getByRole('tab', { name: 'Own music' }).click()
  // So long ago that what is tapped next begins anew.
  await tapOn(page, 'Tap', 1000, 5, 3100)
  const twice = page.getByRole('button', { name: 'Twice as fast' })
  await twice.click()
  expect((await state(page)).bars).toBeCloseTo(30, 6)
  await expect(twice).toHaveAttribute('aria-pressed', 'true')
  await page.getByRole('button', { name: 'Tap', exact: true }).focus()
  await page.keyboard.down(' ')
  await page.keyboard.down(' ')
  await page.keyboard.up(' ')
  await expect(page.locator('.sheet')).toContainText('2 more taps.')
  // Other music: as it is tapped.
  await expect(twice).toBeHidden()
})

test('the sound’s delay by tapping: found, set, and the page as it was', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await open(page)
  const before = await state(page)
  await page.getByRole('button', { name: 'Sound. Sound is off' }).click()
  await page.getByRole('button', { name: 'Start the test' }).click()
  await expect.poll(async () => (await state(page)).bars * 4).toBe(60)
  await expect(page.locator('.sheet > p[role=status]').first()).toHaveText('Sound is on')
  await expect(page.locator('.tap-delay')).toContainText('16 more taps.')
  // Somebody who hears each beat 180 ms after it is shown, and taps 25 ms before that: by the picture's own time.
  const tap = page.getByRole('button', { name: 'Tap what you hear' })
  await tap.evaluate((button) => {
    const { player } = window.overfoot
    const { secondsPerBeat } = player.clock()
    const part = (player.beatNow() + 8) % 1
    const shown = performance.now() - part * secondsPerBeat * 1000
    for (let k = 0; k < 16; k++) {
      const event = new PointerEvent('pointerdown', { bubbles: true })
      const uneven = ((k * 7) % 5) * 6 - 12
      Object.defineProperty(event, 'timeStamp', { value: shown + 155 + uneven + (k - 16) * secondsPerBeat * 1000 })
      button.dispatchEvent(event)
    }
  })
  await expect(page.locator('.tap-delay')).toContainText('about 180 ms late')
  for (const button of await page.locator('.tap-delay button').all())
    expect((await button.boundingBox())?.height).toBeGreaterThanOrEqual(44)
  await page.getByRole('button', { name: 'Set to 180 ms' }).click()
  await expect(page.locator('.sheet')).toContainText('you add 180 ms')
  await expect(page.locator('.tap-delay')).toContainText('Set to 180 ms. Tap on to check it.')
  await page.getByRole('button', { name: 'End the test' }).click()
  expect(await state(page)).toEqual({ ...before, playing: false })
  expect(await axeFindings(page)).toEqual([])
})
