import { withoutGpu } from './withoutGpu.mjs'

/** @typedef {import('./check.mjs').Check} Check */
/** @typedef {import('./benchWindow.d.ts').Answer} Answer */
/** @typedef {import('./benchWindow.d.ts').AnswerPicture} AnswerPicture */

const PRESSES = 40
const VIEWPORT = { width: 1280, height: 720 }

/** In the page: `answerTo` gives every picture that is rendered from an event on. */
async function watchPictures() {
  const { player, stage } = window.overfoot
  const { counts } = await stage
  let { draws } = counts
  /** @type {{ pictures: AnswerPicture[], frames: number, at: number } | null} */
  let asked = null
  // The stage counts a picture when it has been rendered.
  Object.defineProperty(counts, 'draws', {
    get: () => draws,
    set(/** @type {number} */ next) {
      draws = next
      asked?.pictures.push({ frames: asked.frames, ms: performance.now() - asked.at, beat: player.beatNow() })
    },
  })
  window.answerTo = (events) =>
    new Promise((done) => {
      const onEvent = (/** @type {Event} */ { timeStamp }) => {
        for (const name of events) removeEventListener(name, onEvent, true)
        const before = player.beatNow()
        const mine = { pictures: /** @type {AnswerPicture[]} */ ([]), frames: 0, at: timeStamp }
        asked = mine
        const tick = () => {
          mine.frames++
          if (mine.frames < 3) {
            requestAnimationFrame(tick)
            return
          }
          asked = null
          done({ before, after: player.beatNow(), pictures: mine.pictures })
        }
        requestAnimationFrame(tick)
      }
      // On the window and on the way down: nobody hears of the event sooner.
      for (const name of events) addEventListener(name, onEvent, true)
      // An event that never comes is an answer too.
      setTimeout(() => done({ before: 0, after: 0, pictures: [] }), 10_000)
    })
}

/**
 * Does something as a person would, and says how many animation frames began before the picture of the beat that it led
 * to: 0 when it was drawn at once.
 * @param {import('@playwright/test').Page} page
 * @param {readonly string[]} events the first of them counts
 * @param {() => Promise<void>} act
 * @returns {Promise<{ frames: number, ms: number }>} frames ∞: the beat did not move, or its picture never came
 */
async function framesTo(page, events, act) {
  await page.evaluate((names) => {
    window.answer = window.answerTo(names)
  }, events)
  await act()
  const { before, after, pictures } = await page.evaluate(() => window.answer)
  const picture = after === before ? undefined : pictures.find(({ beat }) => beat === after)
  return picture ?? { frames: Number.POSITIVE_INFINITY, ms: Number.POSITIVE_INFINITY }
}

/** @param {import('@playwright/test').Page} page @param {number} beat */
const standAt = (page, beat) =>
  page.evaluate((at) => {
    window.overfoot.player.pause()
    window.overfoot.player.seek(at)
  }, beat)

/** Plays, and waits until the beat has left the grid. @param {import('@playwright/test').Page} page @param {number} beat */
const playFrom = (page, beat) =>
  page.evaluate(async (at) => {
    const { player } = window.overfoot
    player.seek(at)
    player.play()
    while (player.beatNow() < at + 0.05) await new Promise((done) => requestAnimationFrame(done))
  }, beat)

/**
 * The four kinds: what is done the `press`-th time.
 * @param {import('@playwright/test').Page} page
 * @param {(share: number) => Promise<{ x: number, y: number }>} along a point of the slider
 * @returns {Readonly<Record<string, (press: number) => Promise<{ frames: number, ms: number }>>>}
 */
const kinds = (page, along) => ({
  'key, paused': async (press) => {
    if (press === 0) await standAt(page, 2)
    return framesTo(page, ['keydown'], () => page.keyboard.press(press % 2 === 0 ? 'ArrowRight' : 'ArrowLeft'))
  },
  'key, playing': async () => {
    await playFrom(page, 2)
    return framesTo(page, ['keydown'], () => page.keyboard.press('ArrowRight'))
  },
  'slider dragged, paused': async (press) => {
    if (press === 0) {
      await standAt(page, 2)
      const { x, y } = await along(0.5)
      await page.mouse.move(x, y)
      await page.mouse.down()
    }
    const { x, y } = await along(press % 2 === 0 ? 0.25 : 0.75)
    const answer = await framesTo(page, ['input'], () => page.mouse.move(x, y))
    if (press === PRESSES - 1) await page.mouse.up()
    return answer
  },
  'slider pressed, playing': async (press) => {
    const { x, y } = await along(press % 2 === 0 ? 0.6 : 0.8)
    await page.mouse.move(x, y)
    await playFrom(page, 0)
    const answer = await framesTo(page, ['pointerdown'], () => page.mouse.down())
    await page.mouse.up()
    return answer
  },
})

/**
 * From a key or the slider to the picture of the new beat, in animation frames, in the built page.
 * @param {import('@playwright/test').Browser} browser
 * @param {string} url of the built pages
 * @returns {Promise<Check>}
 */
export async function keyToPicture(browser, url) {
  const context = await browser.newContext({ viewport: VIEWPORT })
  try {
    const page = await context.newPage()
    await page.addInitScript(withoutGpu)
    await page.goto(`${url}page/index.html`)
    // Until the page answers.
    await page.waitForFunction(
      () => window.overfoot !== undefined && document.querySelector('#overfoot[inert]') === null,
    )
    await page.evaluate(watchPictures)
    const slider = page.locator('.beat-slider')
    const along = async (/** @type {number} */ share) => {
      const box = await slider.boundingBox()
      if (box === null) throw new Error('no slider')
      return { x: box.x + share * box.width, y: box.y + box.height / 2 }
    }
    /** @type {Record<string, number[]>} */
    const samples = {}
    for (const [kind, act] of Object.entries(kinds(page, along))) {
      const answers = []
      for (let press = 0; press < PRESSES; press++) answers.push(await act(press))
      samples[`${kind}: frames`] = answers.map(({ frames }) => frames)
      samples[`${kind}: ms`] = answers.map(({ ms }) => ms)
    }
    const frames = Object.entries(samples).flatMap(([name, values]) => (name.endsWith('frames') ? values : []))
    return {
      name: `key or slider to picture, frames, the most of ${frames.length}`,
      measured: Math.max(...frames),
      limit: 1,
      bound: 'at most',
      samples,
    }
  } finally {
    await context.close()
  }
}
