import { blockRatios } from './interleaved.mjs'
import { median } from './median.mjs'

/** @typedef {import('./check.mjs').Check} Check */

const CONTEXTS = 15
/** Milliseconds. */
const REST = 400
/** Milliseconds, more than any first picture takes. */
const UNDISTURBED = 1200
const VIEWPORT = { width: 1280, height: 720 }

/** Before the page's first script: notes when our stage has rendered its first picture, as the bare page does itself. */
function noteFirstPicture() {
  /** @type {Window['overfoot'] | undefined} */
  let given
  Object.defineProperty(window, 'overfoot', {
    configurable: true,
    get: () => given,
    set(/** @type {Window['overfoot']} */ value) {
      given = value
      value.stage.then(({ counts }) => {
        let { draws } = counts
        Object.defineProperty(counts, 'draws', {
          get: () => draws,
          set(/** @type {number} */ next) {
            draws = next
            window.firstPicture ??= performance.now()
          },
        })
      })
    },
  })
}

/** The software GPU still works at what a closed page has asked of it, and must not be seen to hold up the next one. */
const rest = () => new Promise((done) => setTimeout(done, REST))

/**
 * @param {import('@playwright/test').Browser} browser
 * @param {string} address
 * @returns {Promise<number>} ms from the navigation's start to the first picture, in a fresh context
 */
async function openOnce(browser, address) {
  const context = await browser.newContext({ viewport: VIEWPORT })
  try {
    const page = await context.newPage()
    await page.addInitScript(noteFirstPicture)
    await page.goto(address, { waitUntil: 'commit' })
    // The driver's own script takes 20 ms to compile: asked at once it would run after the bare picture and before ours.
    await new Promise((done) => setTimeout(done, UNDISTURBED))
    await page.waitForFunction(() => window.firstPicture !== undefined)
    const [first, renderer] = await page.evaluate(
      async () => /** @type {const} */ ([window.firstPicture, (await window.overfoot?.stage)?.renderer]),
    )
    if (first === undefined) throw new Error('no first picture')
    if (renderer !== undefined && renderer !== 'webgl')
      throw new Error(`WebGL is compared, ours came up with ${renderer}`)
    return first
  } finally {
    await context.close()
  }
}

/**
 * The time to our first picture against that of a page that holds nothing but pixi's WebGL renderer and one shape.
 * @param {import('@playwright/test').Browser} browser
 * @param {string} url of the built pages
 * @returns {Promise<Check>}
 */
export async function firstPicture(browser, url) {
  const ours = `${url}page/index.html`
  const bare = `${url}bench/barePicture.html`
  // Once each unmeasured: the browser itself must have come up.
  for (const address of [ours, bare]) await openOnce(browser, address)
  /** @type {{ ours: number[], bare: number[] }} */
  const times = { ours: [], bare: [] }
  for (let context = 0; context < CONTEXTS; context++) {
    times.ours.push(await openOnce(browser, ours))
    await rest()
    times.bare.push(await openOnce(browser, bare))
    await rest()
  }
  return {
    name: 'first picture: ours to a bare pixi page',
    measured: median(times.ours) / median(times.bare),
    limit: 1.75,
    bound: 'at most',
    samples: {
      'ours, ms': times.ours,
      'bare, ms': times.bare,
      'ours, median ms': median(times.ours),
      'bare, median ms': median(times.bare),
      'median of pair ratios': median(blockRatios(times.ours, times.bare)),
    },
  }
}
