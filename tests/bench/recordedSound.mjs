import { clickByTimer, noteDrawn, onsetsOf, recordSound, stallPage } from '../tools/soundRecorder.mjs'
import { median } from './median.mjs'
import { withoutGpu } from './withoutGpu.mjs'

/** @typedef {import('./check.mjs').Check} Check */
/** @typedef {import('../tools/soundWindow.d.ts').Drawn} Drawn */

/** Seconds. */
const LASTS = 60
const STALL_MS = 300
const EVERY_MS = 900
/** Milliseconds by which a click may be off. */
const OFF_MS = 1
/** Of full tempo. */
const SPEEDS = [0.2, 0.6, 1]
/** Frames noted at each. */
const FRAMES = 200
const FRAME_MS = 1000 / 60

const wait = (/** @type {number} */ seconds) => new Promise((done) => setTimeout(done, seconds * 1000))
const mean = (/** @type {readonly number[]} */ values) => values.reduce((sum, v) => sum + v, 0) / values.length
const worst = (/** @type {readonly number[]} */ values) => Math.max(...values.map(Math.abs))
/** Frames in which a device that lost time leaves the jitter of the others alone. */
const WINDOW = 20

/** @param {readonly number[]} values */
const rms = (values) => Math.sqrt(mean(values.map((v) => (v - mean(values)) ** 2)))

/**
 * Opens our page with a quickstep, as a person does: sound on, half beats off, play.
 * @param {import('@playwright/test').Browser} browser
 * @param {string} url
 */
async function quickstep(browser, url) {
  // The recorder's own code would not be allowed in; the page's is the same.
  const context = await browser.newContext({ viewport: { width: 1280, height: 720 }, bypassCSP: true })
  const page = await context.newPage()
  // Frames are wanted, not pixels: in software a GPU draws a few a second.
  await page.addInitScript(withoutGpu)
  await recordSound(page)
  await page.goto(`${url}page/index.html`)
  // Until the page answers.
  await page.waitForFunction(() => window.overfoot !== undefined && document.querySelector('#overfoot[inert]') === null)
  await page.evaluate(async () => {
    const { player, stage } = window.overfoot
    await stage
    player.pause()
    player.choose(player.figures.find(({ id }) => id.startsWith('12'))?.id ?? '')
    player.setTempo(player.store.getState().lesson.dance.tempo.to)
  })
  await page.getByRole('button', { name: 'Sound. Sound is off' }).click()
  await page.getByRole('button', { name: 'Sound. Sound is on' }).waitFor()
  await page.getByLabel('Half beats').selectOption('off')
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'Play', exact: true }).click()
  await wait(1)
  return { page, close: () => context.close() }
}

/** @param {import('@playwright/test').Page} page */
const beatOf = (page) => page.evaluate(() => window.overfoot.player.clockNow().secondsPerBeat)

/**
 * What was drawn against what was heard, in ms: positive, the picture is ahead.
 * @param {readonly Drawn[]} drawn
 * @param {number} click when one was heard, in seconds
 * @param {number} lasts seconds a beat
 */
const aheadMs = (drawn, click, lasts) =>
  drawn.map(({ beat, heard }) => {
    const off = beat - (heard - click) / lasts
    return (off - Math.round(off)) * lasts * 1000
  })

/**
 * How unevenly a beat was drawn, against the page's own even time: ms, with any mean.
 * @param {readonly Drawn[]} drawn
 * @param {number} lasts seconds a beat
 * @param {number} round beats
 */
function unevenMs(drawn, lasts, round) {
  let turns = 0
  return drawn.map(({ beat, page }, k) => {
    if (beat < (drawn[k - 1]?.beat ?? beat)) turns++
    return ((beat + turns * round) * lasts - page) * 1000
  })
}

/** The jitter in the median window. @param {readonly number[]} values */
const jitterOf = (values) =>
  median(
    Array.from({ length: Math.floor(values.length / WINDOW) }, (_, k) =>
      rms(values.slice(k * WINDOW, (k + 1) * WINDOW)),
    ),
  )

/**
 * What the device's clock lost on the page's between two frames: on a machine that is too busy the device itself stands.
 * @param {readonly Drawn[]} drawn
 */
const lostMs = (drawn) => {
  const ahead = drawn.map(({ heard, page }) => (heard - page) * 1000)
  return Math.max(...ahead) - Math.min(...ahead)
}

/**
 * The sound of our page as it leaves the browser: clicks while the page is stalled over and over, and what is drawn against
 * what is heard. Counts and milliseconds, no ratio: what is asked for is that nothing is late, on any machine.
 * @param {import('@playwright/test').Browser} browser
 * @param {string} url of the built pages
 * @returns {Promise<Check[]>}
 */
export async function recordedSound(browser, url) {
  const { page, close } = await quickstep(browser, url)
  try {
    /** @type {Check[]} */
    const checks = []
    /** @type {Record<string, number>} */
    const drawnSamples = {}
    const [aparts, jitters] = [/** @type {number[]} */ ([]), /** @type {number[]} */ ([])]
    for (const speed of SPEEDS) {
      await page.evaluate((share) => {
        const { player } = window.overfoot
        player.setTempo(share * player.store.getState().lesson.dance.tempo.to)
      }, speed)
      await wait(2)
      await noteDrawn(page, FRAMES)
      await page.waitForFunction((count) => window.drawn.length >= count, FRAMES, { timeout: 60_000 })
      const round = await page.evaluate(() => window.overfoot.player.store.getState().lesson.round)
      const [lasts, drawn] = [await beatOf(page), await page.evaluate(() => window.drawn)]
      const ahead = aheadMs(drawn, (await onsetsOf(page, 'recorded')).at(-1) ?? Number.NaN, lasts)
      aparts.push(worst(ahead))
      const uneven = unevenMs(drawn, lasts, round)
      jitters.push(jitterOf(uneven))
      drawnSamples[`${speed * 100} %: mean ms ahead`] = mean(ahead)
      drawnSamples[`${speed * 100} %: worst ms apart`] = worst(ahead)
      drawnSamples[`${speed * 100} %: jitter, median window, rms ms`] = jitterOf(uneven)
      drawnSamples[`${speed * 100} %: jitter, all frames, rms ms`] = rms(uneven)
      drawnSamples[`${speed * 100} %: device against page, ms lost`] = lostMs(drawn)
    }
    checks.push(
      {
        name: 'picture to heard beat at 20, 60, 100 % of a quickstep, frames apart',
        measured: worst(aparts) / FRAME_MS,
        ...{ limit: 1, bound: 'at most', samples: drawnSamples },
      },
      {
        name: `jitter of the drawn beat, rms ms, median of ${WINDOW} frames`,
        measured: worst(jitters),
        ...{ limit: 0.5, bound: 'at most', samples: drawnSamples },
      },
    )
    const lasts = await beatOf(page)
    await clickByTimer(page, lasts)
    await wait(1)
    await stallPage(page, STALL_MS, EVERY_MS)
    const deviceAhead = () =>
      page.evaluate(() => (window.sounding?.currentTime ?? Number.NaN) * 1000 - performance.now())
    const aheadBefore = await deviceAhead()
    await wait(LASTS)
    const lost = aheadBefore - (await deviceAhead())
    const from = (await onsetsOf(page, 'timed'))[0] ?? Number.NaN
    const found = (await onsetsOf(page, 'recorded')).filter((at) => at >= from)
    const first = found[0] ?? Number.NaN
    const off = found.map((at, k) => (at - first - k * lasts) * 1000)
    const timed = await onsetsOf(page, 'timed')
    // Each beat's nearest click.
    const offTimed = Array.from({ length: Math.floor(LASTS / lasts) }, (_, k) =>
      Math.min(...timed.map((at) => Math.abs(at - from - k * lasts) * 1000)),
    )
    const late = off.filter((ms) => !(Math.abs(ms) <= OFF_MS)).length
    // Of what is left out there is no onset.
    const missing = Math.max(0, Math.floor(LASTS / lasts) - found.length)
    checks.push({
      name: `clicks off by ${OFF_MS} ms or missing, ${LASTS} s of ${STALL_MS} ms stalls every ${EVERY_MS} ms`,
      measured: late + missing,
      ...{ limit: 0, bound: 'at most' },
      samples: {
        clicks: found.length,
        'device against page, ms lost': lost,
        'worst ms off': worst(off),
        'mean ms off': mean(off.map(Math.abs)),
        'driven by a timer: clicks': timed.length,
        'driven by a timer: off or missing': offTimed.filter((ms) => ms > OFF_MS).length,
        'driven by a timer: worst ms off': worst(offTimed),
        'driven by a timer: mean ms off': mean(offTimed),
      },
    })
    return checks
  } finally {
    await close()
  }
}
