import { expect, test as fresh, type Page } from '@playwright/test'
import { misfits } from './misfits.ts'
import { test } from './reusedPage.ts'
import { beatNow, coloursAt, open, withoutGpu } from './watch.ts'

const SIZES = [
  ['projector', 1920, 1080],
  ['tablet on its end', 768, 1024],
  ['phone on its side', 844, 390],
  ['small phone', 320, 568],
] as const

/** Sideways overflow in px, and what is pressed but smaller than a finger. */
const faults = (page: Page) =>
  page.evaluate(() => {
    const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth
    const small = [...document.querySelectorAll('button, select, input, label.switch')]
      .filter((element) => element.getClientRects().length > 0 && element.closest('.switch') !== element.parentElement)
      .filter((element) => element.closest('.table-dialog, dialog:not([open])') === null)
      .filter((element) => {
        const { width, height } = element.getBoundingClientRect()
        return width > 1 && (width < 43.5 || height < 43.5)
      })
      .map((element) => element.outerHTML.slice(0, 90))
    const cut = [...document.querySelectorAll('.controls button')]
      .filter((element) => element.getBoundingClientRect().right > document.documentElement.clientWidth + 1)
      .map((element) => element.outerHTML.slice(0, 90))
    return { wide: Math.max(0, wide), small, cut }
  })
const FAULTLESS = { wide: 0, small: [], cut: [] }

for (const [name, width, height] of SIZES) {
  test(`${name}, ${width}×${height}: nothing sideways, fingers fit, the picture is seen, also in the teaching view`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height })
    await open(page)
    expect(await faults(page)).toEqual(FAULTLESS)
    for (const colours of await coloursAt(page, 1)) expect(colours).toBeGreaterThan(20)
    await page.getByRole('button', { name: 'Show', exact: true }).click()
    await expect(page.getByRole('region', { name: 'Show' })).toBeVisible()
    expect(await faults(page)).toEqual(FAULTLESS)
    await page.keyboard.press('Escape')
    await page.keyboard.press('t')
    await expect(page.getByRole('button', { name: 'Leave full screen' })).toBeVisible()
    expect((await faults(page)).wide).toBe(0)
    for (const picture of await page.locator('.picture').all()) {
      expect((await picture.boundingBox())?.height, 'a picture in the teaching view').toBeGreaterThan(50)
    }
    const [count, slider] = await Promise.all([
      page.locator('.count-now').boundingBox(),
      page.getByRole('slider', { name: 'Beat' }).boundingBox(),
    ])
    for (const box of [count, slider]) expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(height + 1)
  })
}

/** What of the page is not whole on the screen, or lies under the open sheet; and how much is seen of the first picture. */
const besideSheet = (page: Page, selectors: readonly string[]) =>
  page.evaluate((wanted) => {
    const sheet = document.querySelector('.sheet')?.getBoundingClientRect()
    const picture = document.querySelector('.panel-large .picture')?.getBoundingClientRect()
    const view = document.querySelector('.lesson-view')?.getBoundingClientRect()
    if (sheet === undefined || picture === undefined || view === undefined) throw new Error('no sheet, or no picture')
    const lost = wanted.flatMap((selector) => {
      const boxes = [...document.querySelectorAll(selector)].map((element) => element.getBoundingClientRect())
      const isLost = ({ left, right, top, bottom, width }: DOMRect): boolean =>
        width < 1 || left < 0 || top < 0 || right > innerWidth + 0.5 || bottom > innerHeight + 0.5
      const isUnder = ({ left, right, top, bottom }: DOMRect): boolean =>
        left < sheet.right && right > sheet.left && top < sheet.bottom && bottom > sheet.top
      return boxes.length === 0 || boxes.some((box) => isLost(box) || isUnder(box)) ? [selector] : []
    })
    // Where the page scrolls, a part of the picture may be scrolled away.
    const end = view.height > 0 ? Math.min(picture.bottom, view.bottom) : picture.bottom
    return { lost, picture: end - picture.top, sheet: Math.min(sheet.bottom, innerHeight) - sheet.top }
  }, selectors)

test('an open sheet covers nothing: all beside it where there is room, else the row of buttons and the picture', async ({
  page,
}) => {
  await open(page)
  const buttons = ['.transport button', '.panel-large .panel-head']
  const all = ['.picture', '.strip', '.count-now', '.transport button', '.tempo :is(button, input)', '.practise']
  for (const [width, height, whole] of [
    [1280, 800, all],
    [1180, 820, all],
    [1024, 768, all],
    [960, 720, all],
    [900, 600, buttons],
    [768, 1024, buttons],
    [390, 844, buttons],
    [320, 568, buttons],
    [844, 390, [...buttons, '.strip', '.picture']],
  ] as const) {
    await page.setViewportSize({ width, height })
    await page.getByRole('button', { name: 'Show', exact: true }).click()
    await expect(page.locator('.sheet')).toBeFocused()
    const { lost, picture, sheet } = await besideSheet(page, whole)
    expect(lost, `${width}×${height}`).toEqual([])
    expect(picture, `of the picture at ${width}×${height}`).toBeGreaterThan(60)
    expect(sheet, `the sheet at ${width}×${height}`).toBeGreaterThan(180)
    expect(await faults(page)).toEqual(FAULTLESS)
    if (whole === all) expect(await misfits(page), `${width}×${height}`).toEqual([])
    await page.keyboard.press('Escape')
    await expect(page.locator('.sheet')).toHaveCount(0)
  }
  // The others, in the narrowest of the wide, and with names off.
  await page.setViewportSize({ width: 960, height: 720 })
  for (const name of ['Late by ½ beat', 'Sound. Sound is off', 'Who is late?', 'Show']) {
    await page.getByRole('button', { name, exact: true }).click()
    if (name === 'Who is late?') continue
    await expect(page.locator('.sheet')).toBeFocused()
    expect((await besideSheet(page, all)).lost, name).toEqual([])
    await page.keyboard.press('Escape')
  }
  await page.locator('.settings-toggle').click()
  await page.getByRole('button', { name: 'Practice' }).click()
  await expect(page.locator('.sheet')).toBeFocused()
  expect((await besideSheet(page, all)).lost).toEqual([])
})

test('text twice as large: nothing sideways, and the large button is on the screen', async ({ page }) => {
  await page.evaluate(() => {
    document.documentElement.style.fontSize = '200%'
  })
  await open(page)
  expect((await faults(page)).wide).toBe(0)
  const play = await page.getByRole('button', { name: 'Play', exact: true }).boundingBox()
  expect((play?.y ?? 0) + (play?.height ?? 0)).toBeLessThanOrEqual(721)
  await page.getByRole('button', { name: 'Show', exact: true }).click()
  await expect(page.getByRole('region', { name: 'Show' })).toBeVisible()
  expect((await faults(page)).wide).toBe(0)
})

test('turned round while it plays: the picture fits anew, and the beat goes on', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 })
  await open(page)
  await page.getByRole('button', { name: 'Play', exact: true }).click()
  await page.setViewportSize({ width: 844, height: 390 })
  await page.waitForTimeout(300)
  expect(await page.evaluate(() => window.overfoot.player.store.getState().playing)).toBe(true)
  await page.getByRole('button', { name: 'Pause' }).click()
  const [canvas, home] = await Promise.all([
    page.locator('canvas').boundingBox(),
    page.locator('.panels').boundingBox(),
  ])
  expect(Math.abs((canvas?.width ?? 0) - (home?.width ?? 9))).toBeLessThanOrEqual(1)
  expect(Math.abs((canvas?.height ?? 0) - (home?.height ?? 9))).toBeLessThanOrEqual(1)
  for (const colours of await coloursAt(page, 1)) expect(colours).toBeGreaterThan(20)
})

fresh(
  'another pixel ratio, as when the window goes to another screen: as many device pixels, at most three a pixel',
  async ({ page }) => {
    await withoutGpu(page)
    await open(page)
    const browser = await page.context().newCDPSession(page)
    for (const [ratio, drawn] of [
      [1.5, 1.5],
      [2.625, 2.625],
      [4, 3],
      [0.8, 0.8],
    ] as const) {
      await browser.send('Emulation.setDeviceMetricsOverride', {
        width: 1280,
        height: 720,
        deviceScaleFactor: ratio,
        mobile: false,
      })
      const width = () =>
        page.evaluate(async () => {
          const { canvas } = await window.overfoot.stage
          return canvas.width / canvas.getBoundingClientRect().width
        })
      await expect.poll(width).toBeCloseTo(drawn, 1)
      for (const colours of await coloursAt(page, 1)) expect(colours).toBeGreaterThan(20)
    }
  },
)

test('a pinch, a swipe and a scroll on the picture are the browser’s; on the slider they are ours', async ({
  page,
}) => {
  await open(page)
  const actions = await page.evaluate(() =>
    ['.press', '.picture', '.panels', '.stage-home', 'canvas', 'main', 'body', 'html'].map((selector) => {
      const element = document.querySelector(selector)
      return element === null ? `${selector}: missing` : getComputedStyle(element).touchAction
    }),
  )
  for (const action of actions) expect(['auto', 'manipulation', 'pinch-zoom']).toContain(action)
  expect(await page.locator('.beat-slider').evaluate((slider) => getComputedStyle(slider).touchAction)).toBe('none')
  const viewport = await page.locator('meta[name=viewport]').getAttribute('content')
  expect(viewport).not.toMatch(/maximum-scale|user-scalable/)
})

test('who listens is told once after a pause or a step, and nothing while it plays', async ({ page }) => {
  await open(page)
  await page.evaluate(() => {
    Object.assign(window, { said: [] as string[] })
    const status = document.querySelector('output.for-ears:not(.notice output)')
    if (status === null) throw new Error('no status')
    new MutationObserver(() => {
      if (status.textContent) (window as unknown as { said: string[] }).said.push(status.textContent)
    }).observe(status, { childList: true, characterData: true, subtree: true })
  })
  const said = () => page.evaluate(() => (window as unknown as { said: string[] }).said)
  await page.getByRole('button', { name: 'Play', exact: true }).click()
  await page.waitForTimeout(1500)
  expect(await said()).toEqual([])
  await page.getByRole('button', { name: 'Pause' }).click()
  await expect.poll(said).toHaveLength(1)
  await page.getByRole('button', { name: 'Half a beat forward' }).click()
  await expect.poll(said).toHaveLength(2)
  for (const sentence of await said()) expect(sentence).toMatch(/^bar \d+, .*\.$/)
})

test('in forced colours what is on, the slider and its thumb can be told', async ({ page }) => {
  await page.emulateMedia({ forcedColors: 'active' })
  await open(page)
  const [on, off] = await page.evaluate(() =>
    [...document.querySelectorAll('.loop-toggle')].map((toggle) => getComputedStyle(toggle).backgroundColor),
  )
  expect(on).not.toBe(off)
  const shot = async () => (await page.getByRole('slider', { name: 'Beat' }).screenshot()).toString('base64')
  const before = await shot()
  await page.getByRole('button', { name: 'Half a beat forward' }).click()
  expect(await shot()).not.toBe(before)
  expect(await beatNow(page)).toBe(0)
})

test('Escape ends the latest thing alone, and the keyboard is where it was', async ({ page }) => {
  await open(page)
  const sheet = page.getByRole('region', { name: 'Show' })
  const marks = page.locator('.marks')
  const leave = page.getByRole('button', { name: 'Leave full screen' })
  await page.keyboard.press('t')
  await page.keyboard.press('?')
  await expect(marks).toHaveCount(1)
  await page.keyboard.press('Escape')
  await expect(marks).toHaveCount(0)
  await expect(leave).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(leave).toHaveCount(0)
  await page.keyboard.press('?')
  await page.getByRole('button', { name: 'Show', exact: true }).click()
  await expect(sheet).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(sheet).toHaveCount(0)
  await expect(marks).toHaveCount(1)
  await expect(page.getByRole('button', { name: 'Show', exact: true })).toBeFocused()
  // Who has gone elsewhere meanwhile stays there.
  await page.getByRole('button', { name: 'Show', exact: true }).click()
  const play = page.getByRole('button', { name: 'Play', exact: true })
  await play.focus()
  await page.keyboard.press('Escape')
  await expect(sheet).toHaveCount(0)
  await expect(play).toBeFocused()
})

test('in the teaching view the keyboard gets to everything, and the picture stays as it is', async ({ page }) => {
  await open(page)
  await page.keyboard.press('t')
  const box = () => page.locator('.picture').first().boundingBox()
  const before = await box()
  for (let k = 0; k < 16; k++) {
    await page.keyboard.press('Tab')
    expect(await box()).toEqual(before)
  }
  // Asked there, it is answered there.
  await page.keyboard.press('n')
  await expect(page.locator('.teaching-buttons')).toContainText('Who is late?')
  await page.getByRole('button', { name: 'Show names' }).last().press('Enter')
  await expect(page.locator('.teaching-buttons')).not.toContainText('Who is late?')
  await expect(page.getByRole('button', { name: 'or press the picture' })).toBeFocused()
  await page.getByRole('button', { name: 'Leave full screen' }).press('Enter')
  await expect(page.getByRole('slider', { name: 'Beat' })).toBeFocused()
})

test('by the keyboard alone: from the top of the page to every control, in the order they are seen, and back', async ({
  page,
}) => {
  await open(page)
  const reached: string[] = []
  for (let k = 0; k < 30; k++) {
    await page.keyboard.press('Tab')
    const name = await page.evaluate(() => {
      const { activeElement } = document
      if (activeElement === null || activeElement === document.body) return ''
      const ring = getComputedStyle(activeElement)
      const seen = ring.outlineStyle !== 'none' || ring.getPropertyValue('--ring').trim() !== 'transparent'
      const label = activeElement.getAttribute('aria-label') ?? activeElement.textContent ?? ''
      return `${seen ? '' : 'UNSEEN '}${label || activeElement.id}`
    })
    if (name === '' || reached.includes(name)) break
    reached.push(name)
  }
  expect(reached.filter((name) => name.startsWith('UNSEEN'))).toEqual([])
  const order = [
    'Open…',
    'Link',
    'Who is late?',
    'Show',
    'Full screen',
    'What is what',
    'Notes and cautions',
    'beat-slider',
  ]
  expect(reached.filter((name) => order.includes(name))).toEqual(order)
  expect(reached.some((name) => name.includes('Play'))).toBe(true)
})
