import { test as base, type Page } from '@playwright/test'
import { watch, withoutGpu } from './watch.ts'

declare global {
  interface Window {
    /** Keys and buttons that are down, in a reused page. */
    readonly held: { readonly keys: Set<string>; buttons: number }
    /** A reused page's own properties as it was opened. */
    readonly names: ReadonlySet<string>
  }
}

/** Everything that a browser says of its device by itself. */
const MEDIA = {
  media: null,
  colorScheme: 'light',
  reducedMotion: 'no-preference',
  forcedColors: 'none',
  contrast: 'no-preference',
} as const

/** What cannot be taken back, and what begins another document: a test that wants these has a page of its own. */
const NOT_HERE = ['addInitScript', 'goto', 'reload', 'setContent', 'goBack', 'goForward', 'close'] as const
const NOT_OF_ITS_CONTEXT = ['addInitScript', 'grantPermissions', 'newCDPSession', 'newPage', 'setOffline'] as const

const refuse = (target: object, names: readonly string[]): void => {
  for (const name of names) {
    const value = (): never => {
      throw new Error(`${name}: a reused page cannot be put back after that; take the test of @playwright/test`)
    }
    Object.defineProperty(target, name, { value })
  }
}

/** Waits for what is fetched a second after the picture: it would come into the midst of a test. */
export const allFetched = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    await window.overfoot.stage
    const wait = (ms: number) => new Promise((done) => setTimeout(done, ms))
    await wait(1000)
    const count = () => performance.getEntriesByType('resource').length
    for (let before = 0; before < count(); ) {
      before = count()
      await wait(300)
    }
  })

/** Opens a page that many tests are to use, one after the other. */
async function openKept(page: Page): Promise<void> {
  await withoutGpu(page)
  await watch(page)
  await page.addInitScript(() => {
    const held = { keys: new Set<string>(), buttons: 0 }
    // Not to be met when its properties are listed.
    Object.defineProperty(window, 'held', { value: held })
    const options = { capture: true, passive: true }
    addEventListener('keydown', ({ code }) => held.keys.add(code), options)
    addEventListener('keyup', ({ code }) => held.keys.delete(code), options)
    for (const type of ['pointerdown', 'pointerup']) {
      addEventListener(type, (event) => (held.buttons = (event as PointerEvent).buttons), options)
    }
  })
  await page.goto('/')
  await page.waitForFunction(() => window.overfoot !== undefined)
  await allFetched(page)
  await page.evaluate(() => {
    // axe stays: it is the tests' own, and long to read.
    Object.defineProperty(window, 'names', { value: new Set([...Object.keys(window), 'axe']) })
  })
}

/**
 * Takes the program out of the page and puts back whatever a test can have left in it. `open` in watch.ts then starts the
 * program anew.
 * @throws when a key or a button is still held down: only the test knows what it wanted with it
 */
export async function putBack(page: Page): Promise<void> {
  page.removeAllListeners()
  await page.unrouteAll({ behavior: 'wait' })
  const held = await page.evaluate(async () => {
    const { keys, buttons } = window.held
    if (keys.size > 0 || buttons > 0) return [...keys, `buttons ${buttons}`].join(', ')
    await window.overfoot.close()
    if (document.fullscreenElement !== null) await document.exitFullscreen()
    history.replaceState(null, '', '/')
    localStorage.clear()
    sessionStorage.clear()
    getSelection()?.removeAllRanges()
    // The keyboard begins where it was last: at the top.
    const top = document.createElement('button')
    document.body.prepend(top)
    top.focus()
    top.blur()
    top.remove()
    document.documentElement.removeAttribute('style')
    scrollTo(0, 0)
    for (const name of Object.keys(window)) if (!window.names.has(name)) Reflect.deleteProperty(window, name)
    return ''
  })
  if (held !== '') throw new Error(`left held down: ${held}`)
  await page.emulateMedia(MEDIA)
  await page.mouse.move(0, 0)
  await page.evaluate(() => Object.assign(window.watched, { frames: 0, commits: 0, writes: [], violations: [] }))
}

/**
 * A test whose page is loaded once in a worker, without a GPU, and given to one test after the other: the program is
 * started anew in it, all else is put back (reusedPage.spec.ts compares it with a fresh one). For whatever does not ask how
 * the page is loaded: loading it is two thirds of a short test.
 */
export const test = base.extend<object, { readonly keptPage: Page }>({
  keptPage: [
    async ({ browser }, use) => {
      const context = await browser.newContext({ baseURL: process.env.OVERFOOT_URL ?? '' })
      const page = await context.newPage()
      await openKept(page)
      await putBack(page)
      refuse(page, NOT_HERE)
      refuse(context, NOT_OF_ITS_CONTEXT)
      await use(page)
      await context.close()
    },
    { scope: 'worker' },
  ],
  page: async ({ keptPage, viewport }, use) => {
    if (viewport !== null) await keptPage.setViewportSize(viewport)
    await use(keptPage)
    await putBack(keptPage)
  },
})
