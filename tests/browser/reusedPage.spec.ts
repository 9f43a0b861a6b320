import { expect, type Page } from '@playwright/test'
import { allFetched, putBack, test } from './reusedPage.ts'
import { coloursAt, open, withoutGpu } from './watch.ts'

/** All of a page that a test could find otherwise than in another one. */
async function everything(page: Page): Promise<Record<string, unknown>> {
  const seen = await page.evaluate(async () => {
    const { player, stage } = window.overfoot
    const shown = await stage
    // React counts its identifiers on.
    const known: string[] = []
    const plain = (html: string): string =>
      html.replace(/_r_\w+_/g, (id) => {
        if (!known.includes(id)) known.push(id)
        return `id ${known.indexOf(id)}`
      })
    const styles = [...document.querySelectorAll('link[rel=stylesheet]')]
      .map((link) => link.getAttribute('href'))
      .sort()
    const { session, own, playing, asked } = player.store.getState()
    const media = ['(prefers-color-scheme: dark)', '(prefers-reduced-motion: reduce)', '(forced-colors: active)']
    const element = document.documentElement
    const { body } = document
    return {
      body: plain(body.outerHTML),
      html: [...element.attributes].map(({ name, value }) => `${name}=${value}`),
      title: document.title,
      styles,
      address: location.href,
      history: history.state,
      state: { session, own, playing, asked },
      kept: [{ ...localStorage }, { ...sessionStorage }],
      media: [...media, 'print', '(prefers-contrast: more)'].map((query) => matchMedia(query).matches),
      size: [innerWidth, innerHeight, devicePixelRatio, element.scrollWidth, element.scrollHeight, scrollX, scrollY],
      letters: getComputedStyle(element).fontSize,
      colours: getComputedStyle(body).background,
      focus: document.activeElement?.tagName,
      selected: getSelection()?.toString(),
      screen: document.fullscreenElement,
      moving: document.getAnimations().length,
      picture: shown.canvas.toDataURL(),
      // How often it was drawn is not the same: a fresh page is drawn again when the browser has shown it.
      built: [shown.counts.staticShapes, document.querySelectorAll('.picture').length],
      renderer: shown.renderer,
      stages: document.querySelectorAll('canvas').length,
      violations: window.watched.violations,
      // Of the tests' own tools one stays: it is long to read.
      names: Object.keys(window)
        .filter((name) => name !== 'axe')
        .sort(),
    }
  })
  const order: string[] = []
  for (let k = 0; k < 3; k++) {
    await page.keyboard.press('Tab')
    order.push(await page.evaluate(() => document.activeElement?.textContent ?? ''))
  }
  return { ...seen, order, colours: await coloursAt(page, 1) }
}

/** What tests do, and more. */
async function mess(page: Page): Promise<void> {
  await page.setViewportSize({ width: 700, height: 500 })
  await page.emulateMedia({ colorScheme: 'dark', reducedMotion: 'reduce', forcedColors: 'active', media: 'print' })
  await page.emulateMedia({ media: null, forcedColors: 'none' })
  await page.route('**/*', (route) => route.abort())
  page.on('console', () => {})
  await page.evaluate(() => {
    document.documentElement.style.fontSize = '200%'
    localStorage.setItem('left', 'behind')
    sessionStorage.setItem('left', 'behind')
    window.scrollTo(0, 50)
    Object.assign(window, { said: ['something'] })
    window.overfoot.player.choose(window.overfoot.player.figures[4]?.id ?? '')
  })
  const text = 'overfoot: 2\ntitle: Own\ndance: waltz\nrole: leader\nfirst foot: left\ntiming: 1\nactions: [back]\n'
  await page.locator('input[type=file]').setInputFiles({ name: 'a.yaml', mimeType: '', buffer: Buffer.from(text) })
  await expect(page.getByRole('combobox', { name: 'Figure' })).toContainText('Own')
  await page.evaluate(() => (location.hash = '#1.x'))
  await page.getByRole('button', { name: 'Who is late?' }).click()
  await page.getByRole('button', { name: 'Show', exact: true }).click()
  await page.getByRole('radio', { name: 'Dark' }).check()
  await page.getByRole('slider', { name: 'Beat' }).focus()
  await page.keyboard.press('t')
  await page.keyboard.press('h')
  await expect(page.getByRole('dialog', { name: 'Keys' })).toBeVisible()
  await page.getByRole('checkbox', { name: /Single letters/ }).uncheck()
  await page.mouse.move(300, 300)
  await page.evaluate(() => {
    window.overfoot.player.setTempo(40)
    window.overfoot.player.play()
  })
}

test('after whatever was done in it, a reused page is as a fresh one', async ({ page, browser, baseURL }) => {
  const context = await browser.newContext(baseURL === undefined ? {} : { baseURL })
  const fresh = await context.newPage()
  await withoutGpu(fresh)
  await open(fresh)
  await allFetched(fresh)
  const wanted = await everything(fresh)
  await context.close()

  await open(page)
  await mess(page)
  await putBack(page)
  await page.setViewportSize({ width: 1280, height: 720 })
  await open(page)
  const found = await everything(page)
  for (const name of Object.keys(wanted)) expect.soft(found[name], name).toEqual(wanted[name])
})

test('a key that is still held down is not passed over', async ({ page }) => {
  await open(page)
  await page.keyboard.down('Shift')
  await expect(putBack(page)).rejects.toThrow('ShiftLeft')
  await page.keyboard.up('Shift')
})

test('what cannot be put back is refused', async ({ page }) => {
  await open(page)
  expect(() => page.addInitScript(() => {})).toThrow('a reused page')
  expect(() => page.context().newCDPSession(page)).toThrow('a reused page')
})
