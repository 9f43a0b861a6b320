import { expect, test as fresh } from '@playwright/test'
import { axeFindings } from './axeFindings.ts'
import { test } from './reusedPage.ts'
import { open, withoutGpu } from './watch.ts'

test('build up: loop after loop it climbs, holds, goes back and up, and stops where it is', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 800 })
  await open(page)
  await page.evaluate(() => {
    const { player } = window.overfoot
    player.choose(player.figures.find(({ id }) => id.startsWith('12'))?.id ?? '')
  })
  await page.getByRole('button', { name: 'Practice' }).click()
  // What is to be heeded is on the screen, however long the loop's choices.
  await expect(page.locator('.practice-cautions')).toBeInViewport({ ratio: 0.9 })
  // By the arrow keys from tab to tab.
  await page.getByRole('tab', { name: 'Loop' }).press('ArrowRight')
  await expect(page.getByRole('tab', { name: 'Slow to full' })).toBeFocused()
  await page.getByRole('button', { name: 'Start', exact: true }).press('Enter')
  // The keyboard goes on where what was pressed has gone away.
  await expect(page.getByRole('button', { name: 'Hold' })).toBeFocused()
  const status = page.locator('.sheet [role=status]').filter({ hasText: 'Speed' })
  await expect(status).toHaveText('Speed 1 of 6: 70 %. Loop 1 of 4.')
  const speed = () =>
    page.evaluate(() => {
      const { lesson, session } = window.overfoot.player.store.getState()
      const { from, to } = lesson.dance.tempo
      return Math.round((100 * session.barsPerMinute) / ((from + to) / 2))
    })
  expect(await speed()).toBe(70)
  // To just before the seam, and over it: that is no loop. The next one is.
  await page.evaluate(async () => {
    const { player } = window.overfoot
    player.seek(player.store.getState().lesson.range.to - 0.5)
    while (player.beatNow() > 2) await new Promise((done) => setTimeout(done, 20))
  })
  await expect(status).toHaveText('Speed 1 of 6: 70 %. Loop 1 of 4.')
  await expect(status).toHaveText('Speed 1 of 6: 70 %. Loop 2 of 4.')
  await page.getByRole('button', { name: 'Faster', exact: true }).click()
  await expect(status).toContainText('Speed 2 of 6')
  expect(await speed()).toBeGreaterThan(70)
  await page.getByRole('button', { name: 'Hold' }).click()
  await expect(status).toContainText(', held.')
  await page.getByRole('button', { name: 'Go on' }).click()
  await expect(status).not.toContainText('held')
  await page.getByRole('button', { name: 'Slower', exact: true }).click()
  expect(await speed()).toBe(70)
  expect(await axeFindings(page)).toEqual([])
  // Another tempo ends it, and it is said; then one press leads back to all of it.
  await page.locator('.tempo').getByRole('button', { name: '75 %' }).click()
  await expect(page.locator('.sheet')).toContainText('The tempo was set otherwise: it no longer climbs.')
  await page.getByRole('button', { name: 'Whole, 100 %' }).click()
  expect(await speed()).toBe(100)
  await expect(page.locator('.sheet')).not.toContainText('no longer climbs')
  await page.evaluate(() => {
    const { player } = window.overfoot
    player.setTempo(player.store.getState().lesson.dance.tempo.from * 0.72)
  })
  const began = await speed()
  await page.getByRole('button', { name: 'Start', exact: true }).click()
  await page.getByRole('button', { name: 'Stop climbing' }).press('Enter')
  await expect(page.locator('.practice-start')).toBeFocused()
  expect(await speed()).toBe(began)
  // With the sheet closed there is nothing to start with: the keys are the beat's again.
  await page.locator('.practice-start').press('Enter')
  await page.keyboard.press('Escape')
  // Sound on: nothing opens over what is practised.
  await page.getByRole('button', { name: 'Sound. Sound is off' }).click()
  await expect(page.getByRole('button', { name: 'Sound. Sound is on' })).toBeVisible()
  await expect(page.locator('.sheet')).toHaveCount(0)
  const bar = page.locator('.climb-bar')
  await bar.getByRole('button', { name: 'Stop climbing' }).press('Enter')
  await expect(bar).toContainText('It no longer climbs, and goes on at this tempo.')
  await expect(bar.getByRole('button', { name: 'Climb on' })).toBeFocused()
  await bar.getByRole('button', { name: 'Whole, 100 %' }).press('Enter')
  expect(await speed()).toBe(100)
  await expect(bar).toHaveCount(0)
  await expect(page.getByRole('slider', { name: 'Beat' })).toBeFocused()
})

test('tap: the tempo is that of the taps', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await open(page)
  await page.locator('.settings-toggle').click()
  await page.getByRole('button', { name: 'Practice' }).click()
  await page.getByRole('tab', { name: 'Own music' }).click()
  const tap = page.getByRole('button', { name: 'Tap', exact: true })
  await expect(tap).toBeVisible()
  expect(await tap.evaluate((button) => getComputedStyle(button).touchAction)).toBe('none')
  /** A finger that comes down, by the event's own time in milliseconds, and how that ends. */
  const finger = (timeStamp: number, ends: 'pointerup' | 'pointercancel', pointerId: number) =>
    tap.evaluate(
      (button, [at, type, id]) => {
        const touch = { bubbles: true, pointerType: 'touch', pointerId: id }
        const down = new PointerEvent('pointerdown', touch)
        Object.defineProperty(down, 'timeStamp', { value: at })
        button.dispatchEvent(down)
        button.dispatchEvent(new PointerEvent(type, touch))
      },
      [timeStamp, ends, pointerId] as const,
    )
  // What the browser takes back was no tap.
  await finger(4700, 'pointercancel', 2)
  await expect(page.locator('.sheet')).toContainText('Tap 3 times or more.')
  await finger(5000, 'pointerup', 3)
  await expect(page.locator('.sheet')).toContainText('2 more taps.')
  // Ten beats at 100 a minute, by the events' own time.
  await tap.evaluate((button) => {
    for (let k = 1; k < 10; k++) {
      const event = new PointerEvent('pointerdown', { bubbles: true })
      Object.defineProperty(event, 'timeStamp', { value: 5000 + 600 * k })
      button.dispatchEvent(event)
    }
  })
  await expect(page.locator('.sheet')).toContainText('100 beats a minute: 25 bars.')
  expect(await page.evaluate(() => window.overfoot.player.store.getState().session.barsPerMinute)).toBeCloseTo(25, 6)
  expect(await axeFindings(page)).toEqual([])
  // The settings, which are folded away while the sheet is open, have the keyboard again.
  await expect(page.getByRole('button', { name: 'Practice' })).toBeHidden()
  await page.keyboard.press('Escape')
  await expect(page.getByRole('button', { name: 'Practice' })).toBeFocused()
})

fresh(
  'the screen is kept on while it plays, asked for again when the page is looked at, and given back',
  async ({ page }) => {
    await withoutGpu(page)
    await page.addInitScript(() => {
      const log: string[] = []
      Object.assign(window, { wakeLog: log })
      const request = async () => {
        log.push('asked')
        const lock = { released: false, release: async () => void log.push('released') }
        Object.assign(window, { lock })
        return lock
      }
      Object.defineProperty(navigator, 'wakeLock', { value: { request } })
    })
    await open(page)
    const log = () => page.evaluate(() => (window as unknown as { wakeLog: string[] }).wakeLog)
    const before = (await log()).length
    await page.getByRole('button', { name: 'Play', exact: true }).click()
    await expect.poll(async () => (await log()).length).toBeGreaterThanOrEqual(Math.max(1, before))
    const asked = (await log()).length
    // The browser has taken it away, as it does when the page is hidden.
    await page.evaluate(() => {
      Object.assign((window as unknown as { lock: object }).lock, { released: true })
      document.dispatchEvent(new Event('visibilitychange'))
    })
    await expect.poll(async () => (await log()).length).toBe(asked + 1)
  },
)

fresh('where the screen cannot be kept on, it says so', async ({ page }) => {
  await withoutGpu(page)
  await page.addInitScript(() => {
    Object.defineProperty(navigator, 'wakeLock', { value: { request: () => Promise.reject(new Error('no')) } })
  })
  await open(page)
  await page.getByRole('button', { name: 'Play', exact: true }).click()
  await page.getByRole('button', { name: 'Practice' }).click()
  await expect(page.locator('.sheet')).toContainText('does not keep the screen on')
})

test('the click as a file: a WAV and a MIDI file come down; the delay that was tapped is set, and tapped on', async ({
  page,
}) => {
  await open(page)
  await page.getByRole('button', { name: 'Sound. Sound is off' }).click()
  for (const [button, ending] of [
    ['Sound (WAV)', '.wav'],
    ['MIDI', '.mid'],
  ] as const) {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: button, exact: true }).click(),
    ])
    expect(download.suggestedFilename().endsWith(ending)).toBe(true)
    await expect(page.locator('.sheet')).toContainText(`Saved: ${download.suggestedFilename()}`)
  }

  // What is said of a file is true at once.
  await page.getByLabel('Half beats', { exact: true }).selectOption('Never')
  await expect(page.locator('.sheet')).toContainText(': beats, with the bars of waiting.')
  await page.getByLabel('Beats', { exact: true }).uncheck()
  await page.getByLabel('First of the bar, higher and louder').uncheck()
  await expect(page.locator('.sheet')).toContainText('Sound is on, but nothing is chosen that can be heard')
  await expect(page.locator('.sheet')).toContainText('no clicks')

  await page.getByRole('button', { name: 'Start the test' }).click()
  const tap = page.getByRole('button', { name: 'Tap what you hear' })
  await expect(page.locator('.tap-delay')).toContainText('16 more taps.')
  // A tenth of a second after each beat that is shown.
  await tap.evaluate((button) => {
    const { player } = window.overfoot
    const lasts = player.clock().secondsPerBeat
    const shown = performance.now() / 1000 - (player.beatNow() % 1) * lasts
    for (let k = 1; k <= 16; k++) {
      const event = new PointerEvent('pointerdown', { bubbles: true })
      Object.defineProperty(event, 'timeStamp', { value: 1000 * (shown + k * lasts + 0.1) })
      button.dispatchEvent(event)
    }
  })
  await page.getByRole('button', { name: /^Set to \d+ ms$/ }).press('Enter')
  await expect(tap).toBeFocused()
  await expect(page.locator('.tap-delay')).toContainText(/Set to 1[0-9]0 ms\. Tap on to check it\./)
  // Switched off meanwhile, it stays off.
  await page.getByRole('checkbox', { name: 'Sound', exact: true }).uncheck()
  await page.getByRole('button', { name: 'End the test' }).click()
  await expect(page.locator('.sheet > p[role=status]').first()).toHaveText('Sound is off')
})
