import { blockRatios } from './interleaved.mjs'
import { median } from './median.mjs'

/** @typedef {import('./check.mjs').Check} Check */

/**
 * The script time of a frame of three panels, or of four, against pixi alone drawing the same.
 * @param {import('@playwright/test').Browser} browser
 * @param {string} url of the built pages
 * @param {3 | 4} panels
 * @returns {Promise<Check>}
 */
export async function framesCheck(browser, url, panels) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 960 } })
  try {
    const page = await context.newPage()
    await page.goto(`${url}bench/frames.html`)
    await page.waitForFunction(() => window.measureFrames !== undefined)
    const { ours, bare, redrawn, commands } = await page.evaluate((count) => window.measureFrames(count), panels)
    return {
      name: `script a frame, ${panels === 3 ? 'three' : 'four'} panels: ours to bare pixi`,
      measured: median(blockRatios(ours, bare)),
      limit: 1.25,
      bound: 'at most',
      samples: {
        'ours, ms a frame': ours,
        'bare, ms a frame': bare,
        'ours, median ms': median(ours),
        'bare, median ms': median(bare),
        'shapes drawn anew a frame': redrawn,
        'drawing calls a frame': commands,
      },
    }
  } finally {
    await context.close()
  }
}
