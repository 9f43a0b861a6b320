import { expect, test as fresh, type Page } from '@playwright/test'
import { axeFindings } from './axeFindings.ts'
import { test } from './reusedPage.ts'
import { beatNow, open, withoutGpu } from './watch.ts'

const GOOD = `overfoot: 1
title: Quillmoor walk
dance: foxtrot
role: leader
first foot: right
timing: [S Q Q, Q Q S]
about: Two timings of the same three walks.
actions:
  - forward
  - forward
  - forward
`
const BAD = `overfoot: 1
title: Not yet
dance: foxtrot
role: leeder
first foot: right
timing: S Q X
actions:
  - forwards
  - direction: side
    turn: a bit
`

const fileOf = (text: string, name: string) => ({ name, mimeType: '', buffer: Buffer.from(text) })
const pick = (page: Page, ...files: ReturnType<typeof fileOf>[]) =>
  page.locator('input[type=file]').setInputFiles(files)
const figureTitle = (page: Page) => page.evaluate(() => window.overfoot.player.store.getState().lesson.figure.title)
const isPlaying = (page: Page) => page.evaluate(() => window.overfoot.player.store.getState().playing)
const violations = (page: Page) => page.evaluate(() => window.watched.violations)

type Dropped = {
  readonly files?: readonly (readonly [text: string, name: string])[]
  readonly data?: Record<string, string>
}

/** Drops on whatever matches. Returns whether the page kept the browser from opening it. */
const drop = (page: Page, onto: string, dropped: Dropped) =>
  page.evaluate(
    ([selector, { files = [], data = {} }]) => {
      const dataTransfer = new DataTransfer()
      for (const [text, name] of files) dataTransfer.items.add(new File([text], name))
      for (const [kind, text] of Object.entries(data)) dataTransfer.setData(kind, text)
      const target = document.querySelector(selector)
      const send = (type: string) => {
        const event = new DragEvent(type, { bubbles: true, cancelable: true, dataTransfer })
        target?.dispatchEvent(event)
        return event.defaultPrevented
      }
      return [send('dragover'), send('drop')]
    },
    [onto, dropped] as const,
  )

const paste = (page: Page, onto: string, text: string) =>
  page.evaluate(
    ([selector, pasted]) => {
      const clipboardData = new DataTransfer()
      clipboardData.setData('text/plain', pasted)
      document
        .querySelector(selector)
        ?.dispatchEvent(new ClipboardEvent('paste', { bubbles: true, cancelable: true, clipboardData }))
    },
    [onto, text] as const,
  )

test('files of any name by the picker: into the menu and on the screen, the same again in its place', async ({
  page,
}) => {
  await open(page)
  await pick(page, fileOf(GOOD, 'walk.txt'), fileOf(GOOD.replace('Quillmoor', 'Second'), 'second'))
  await expect.poll(() => figureTitle(page)).toBe('Second walk')
  await pick(page, fileOf(GOOD.replace('Quillmoor', 'Mended'), 'walk.txt'))
  await expect.poll(() => figureTitle(page)).toBe('Mended walk')
  const group = page.locator('optgroup[label="Opened by you"] option')
  expect(await group.allTextContents()).toEqual(['Mended walk (1 bar)', 'Second walk (1 bar)'])
  await page.getByRole('combobox', { name: 'Figure' }).selectOption({ label: 'Second walk (1 bar)' })
  expect(await figureTitle(page)).toBe('Second walk')
  expect(await violations(page)).toEqual([])
})

test('the choice of a timing is offered where there is one', async ({ page }) => {
  await open(page)
  await expect(page.getByRole('combobox', { name: 'Timing' })).toHaveCount(0)
  await pick(page, fileOf(GOOD, 'walk.yaml'))
  await page.getByRole('combobox', { name: 'Timing' }).selectOption({ label: 'Q Q S' })
  expect(await page.evaluate(() => window.overfoot.player.store.getState().lesson.schedule.timing.text)).toBe('Q Q S')
})

test('dropped anywhere, on a dialog too; pasted outside fields', async ({ page }) => {
  await open(page)
  expect(await drop(page, 'canvas', { files: [[GOOD, 'a.yaml']] })).toEqual([true, true])
  await expect.poll(() => figureTitle(page)).toBe('Quillmoor walk')
  await page.getByRole('button', { name: 'Notes and cautions' }).click()
  await expect(page.locator('dialog.notes')).toBeVisible()
  await drop(page, 'dialog.notes', { files: [[GOOD.replace('Quillmoor', 'Dialog'), 'b.yaml']] })
  await expect.poll(() => figureTitle(page)).toBe('Dialog walk')
  await page.keyboard.press('Escape')
  await paste(page, 'body', GOOD.replace('Quillmoor', 'Pasted'))
  await expect.poll(() => figureTitle(page)).toBe('Pasted walk')
})

test('a foreign drop is refused kindly and leads nowhere', async ({ page }) => {
  await open(page)
  const address = page.url()
  const link = { 'text/uri-list': 'https://example.org/', 'text/plain': 'https://example.org/' }
  expect(await drop(page, 'main', { data: link })).toEqual([true, true])
  const dialog = page.getByRole('dialog', { name: 'Not opened' })
  await expect(dialog).toContainText('Only files with a figure')
  await page.keyboard.press('Escape')
  await expect(dialog).toHaveCount(0)
  expect(page.url()).toBe(address)
})

for (const viewport of [
  { width: 1280, height: 800 },
  { width: 390, height: 844 },
]) {
  test.describe(`${viewport.width}×${viewport.height}`, () => {
    test.use({ viewport })

    test('a bad file: all problems with place, line and mark; what was there stays and plays on', async ({ page }) => {
      await open(page)
      const before = await figureTitle(page)
      const button = page.getByRole('button', { name: 'Open…' })
      await page.getByRole('button', { name: 'Play', exact: true }).click()
      await button.focus()
      await pick(page, fileOf(BAD, 'bad.yaml'), fileOf('x'.repeat(70_000), 'large.yaml'))
      const dialog = page.getByRole('dialog', { name: 'Not opened' })
      await expect(dialog).toBeVisible()
      await expect(dialog.getByRole('button', { name: 'Close' })).toBeFocused()
      await expect(dialog).toContainText('Line 4, column 7')
      await expect(dialog).toContainText('Line 6, column 13')
      await expect(dialog).toContainText('Line 8, column 5, action 1')
      await expect(dialog).toContainText('Line 10, column 11, action 2')
      await expect(dialog).toContainText('at most 64 KB')
      expect(await dialog.locator('mark').allTextContents()).toEqual(['l', 'X', 'f', 'a'])
      expect(await figureTitle(page)).toBe(before)
      expect(await isPlaying(page)).toBe(true)

      expect(await axeFindings(page)).toEqual([])
      const [close, wide] = await dialog.evaluate((element) => [
        element.querySelector('button')?.getBoundingClientRect().height ?? 0,
        element.scrollWidth - element.clientWidth,
      ])
      expect(close).toBeGreaterThanOrEqual(44)
      expect(wide).toBeLessThanOrEqual(0)

      await page.keyboard.press('Escape')
      await expect(dialog).toHaveCount(0)
      await expect(button).toBeFocused()
      expect(await violations(page)).toEqual([])
    })

    test('with remarks: open, and the remarks when asked for; nothing scrolls sideways', async ({ page }) => {
      await open(page)
      await pick(page, fileOf(`${GOOD}tempo: quick\n`, 'walk.yaml'))
      await expect.poll(() => figureTitle(page)).toBe('Quillmoor walk')
      await expect(page.getByText('There is 1 remark')).toBeVisible()
      expect(await axeFindings(page)).toEqual([])
      const wide = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      )
      expect(wide).toBeLessThanOrEqual(0)
      await page.getByRole('button', { name: 'Show remarks' }).click()
      await expect(page.getByRole('dialog', { name: 'Remarks' })).toContainText('“tempo”')
    })
  })
}

test('the mended file, dropped on the dialog, closes it', async ({ page }) => {
  await open(page)
  await pick(page, fileOf(BAD, 'bad.yaml'))
  const dialog = page.getByRole('dialog', { name: 'Not opened' })
  await expect(dialog).toBeVisible()
  await drop(page, 'dialog.problems', { files: [[GOOD, 'bad.yaml']] })
  await expect(dialog).toHaveCount(0)
  expect(await figureTitle(page)).toBe('Quillmoor walk')
})

test('hostile text is text: markup, turned lines, control characters', async ({ page }) => {
  await open(page)
  const hostile = '"<img src=x onerror=alert(1)>\\u202Eevil\\u0007"'
  await pick(page, fileOf(GOOD.replace('Quillmoor walk', hostile).replace(/about: .*/, `about: ${hostile}`), 'x'))
  await expect.poll(() => figureTitle(page)).toContain('<img')
  await page.getByRole('button', { name: 'Notes and cautions' }).click()
  await expect(page.locator('dialog.notes')).toBeVisible()
  const seen = await page.locator('body').evaluate((body) => body.textContent ?? '')
  expect(seen).toContain('<img src=x onerror=alert(1)>\\u{202e}evil\\u{7}')
  expect(await page.locator('.stage-home').getAttribute('aria-label')).toContain('\\u{202e}')
  expect(seen).not.toMatch(/\p{Cf}/u)
  expect(seen).not.toContain('\u0007')
  await expect(page.locator('img')).toHaveCount(0)
  await page.keyboard.press('Escape')
  await pick(page, fileOf('title: \u202Etxet\nactions: <b>\u0007</b>\n', '\u202Egpj.yaml'))
  const dialog = page.getByRole('dialog', { name: 'Not opened' })
  await expect(dialog).toContainText('\\u{202e}gpj.yaml')
  expect(await dialog.evaluate((element) => element.textContent)).not.toMatch(/\p{Cf}/u)
  expect(await violations(page)).toEqual([])
})

fresh.describe('a link', () => {
  fresh.use({ permissions: ['clipboard-read', 'clipboard-write'] })
  fresh.beforeEach(({ page }) => withoutGpu(page))

  fresh('is written, copied and opens the same view of an own figure in another page', async ({ page, context }) => {
    await open(page)
    await pick(page, fileOf(GOOD, 'walk.yaml'))
    await expect.poll(() => figureTitle(page)).toBe('Quillmoor walk')
    await page.getByRole('button', { name: /^Late by/ }).click()
    await page.getByLabel('How much').selectOption('0.25')
    await page.evaluate(() => {
      window.overfoot.player.setTiming(1)
      window.overfoot.player.seek(1.5)
    })
    await page.getByRole('button', { name: 'Link' }).click()
    await expect(page.getByText('Copied: a link to this view.')).toBeVisible()
    const address = await page.evaluate(() => navigator.clipboard.readText())
    expect(address).toBe(page.url())
    expect(new URL(address).hash).toMatch(/^#1\.x[\w-]+\.t1\.b1p5\.fi_l0p25_e\.[a-z0-9]{7}$/)

    const other = await context.newPage()
    await withoutGpu(other)
    await other.goto(address)
    await expect.poll(() => figureTitle(other)).toBe('Quillmoor walk')
    expect(await beatNow(other)).toBe(1.5)
    expect(new URL(other.url()).hash).toBe(new URL(address).hash)
    const sessionOf = (one: Page) =>
      one.evaluate(() => ({ ...window.overfoot.player.store.getState().session, figure: '' }))
    expect(await sessionOf(other)).toEqual(await sessionOf(page))

    // Another view: the address no longer says this one.
    await page.getByRole('button', { name: 'Half a beat forward' }).click()
    expect(new URL(page.url()).hash).toBe('')
    await other.getByRole('button', { name: 'Play', exact: true }).click()
    expect(new URL(other.url()).hash).toBe('')
  })

  fresh(
    'that comes while the page is open is followed; a damaged one is refused and changes nothing',
    async ({ page }) => {
      await open(page)
      const first = await figureTitle(page)
      await page.evaluate(() => window.overfoot.player.seek(2))
      await page.getByRole('button', { name: 'Link' }).click()
      // What writes links comes with the first press.
      await expect.poll(() => new URL(page.url()).hash).not.toBe('')
      const link = new URL(page.url()).hash
      await page.evaluate(() => window.overfoot.player.choose(window.overfoot.player.figures[5]?.id ?? ''))
      const second = await figureTitle(page)
      expect(second).not.toBe(first)
      await page.getByRole('button', { name: 'Play', exact: true }).click()
      await page.evaluate((hash) => (location.hash = hash), link.slice(0, -3))
      await expect(page.getByText('The link is damaged')).toBeVisible()
      expect(await figureTitle(page)).toBe(second)
      expect(await isPlaying(page)).toBe(true)
      await page.evaluate((hash) => (location.hash = hash), link)
      await expect.poll(() => figureTitle(page)).toBe(first)
      expect(await beatNow(page)).toBe(2)
      expect(await isPlaying(page)).toBe(false)
    },
  )

  fresh('that is damaged opens the page as usual, and says so', async ({ page }) => {
    await open(page)
    const usual = await page.evaluate(() => window.overfoot.player.store.getState().session)
    await page.goto('/#1.f06-waltz-box.0000000')
    await page.reload()
    await expect(page.getByText('The link is damaged')).toBeVisible()
    expect(await page.evaluate(() => window.overfoot.player.store.getState().session)).toEqual(usual)
  })

  fresh('is shown to be copied by hand where the browser refuses', async ({ page }) => {
    await page.addInitScript(() =>
      Object.defineProperty(navigator.clipboard, 'writeText', { value: () => Promise.reject(new Error('no')) }),
    )
    await open(page)
    await page.getByRole('button', { name: 'Link' }).click()
    const field = page.getByRole('textbox', { name: 'Link' })
    await expect(field).toHaveValue(/#1\.f01-/)
    expect(await field.inputValue()).toBe(page.url())
    await field.focus()
    expect(await page.evaluate(() => getSelection()?.toString())).toBe(page.url())
  })
})
