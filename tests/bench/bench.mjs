// `npm run bench`: holds our code against the least that could do the same, on this machine, in one run. Ratios only: no
// limit is a time, but for what is recorded of the sound, which must not be late on any machine. Installs what is missing,
// prints a table, writes test-results/bench.json, and ends with 1 on any miss.
// Only Node's own modules may be imported before the installation.
import { mkdir, writeFile } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { ensureInstalled } from '../../src/install/ensureInstalled.mjs'
import { isMissed } from './check.mjs'

/** @typedef {import('./check.mjs').Check} Check */

const REPOSITORY = resolve(fileURLToPath(import.meta.url), '../../..')
const REPORT = join(REPOSITORY, 'test-results', 'bench.json')

const number = (/** @type {number} */ value) => (Number.isInteger(value) ? String(value) : value.toFixed(3))

/** @param {Check} check */
const line = (check) =>
  [
    check.name.padEnd(64),
    number(check.measured).padStart(9),
    `${check.bound} ${check.limit}`.padStart(14),
    isMissed(check) ? '  MISS' : '  ok',
  ].join('')

async function bench() {
  await ensureInstalled(REPOSITORY)
  const { chromium } = await import('@playwright/test')
  const { findBrowser } = await import('../tools/findBrowser.mjs')
  const { browserFlags } = await import('../tools/browserFlags.mjs')
  const { builtChecks } = await import('./builtChecks.mjs')
  const { builtPages } = await import('./builtPages.mjs')
  const { firstPicture } = await import('./firstPicture.mjs')
  const { framesCheck } = await import('./framesCheck.mjs')
  const { keyToPicture } = await import('./keyToPicture.mjs')
  const { lapsCheck } = await import('./lapsCheck.mjs')
  const { machine } = await import('./machine.mjs')
  const { recordedSound } = await import('./recordedSound.mjs')

  console.log(`${'check'.padEnd(64)}${'measured'.padStart(9)}${'limit'.padStart(14)}`)
  /** @type {Check[]} */
  const checks = []
  const add = (/** @type {readonly Check[]} */ found) => {
    checks.push(...found)
    for (const check of found) console.log(line(check))
  }
  add(await builtChecks(REPOSITORY))
  // First, for Playwright empties the folder that the report goes to.
  add([await lapsCheck(REPOSITORY)])
  const pages = await builtPages()
  try {
    const browser = await chromium.launch({ executablePath: await findBrowser(), args: browserFlags })
    try {
      for (const panels of /** @type {const} */ ([3, 4])) add([await framesCheck(browser, pages.url, panels)])
      for (const check of [firstPicture, keyToPicture]) add([await check(browser, pages.url)])
      add(await recordedSound(browser, pages.url))
      const page = await browser.newPage()
      const userAgent = await page.evaluate(() => navigator.userAgent)
      const facts = await machine(REPOSITORY, { version: browser.version(), userAgent })
      await mkdir(join(REPORT, '..'), { recursive: true })
      const results = checks.map((check) => ({ ...check, ok: !isMissed(check) }))
      await writeFile(REPORT, `${JSON.stringify({ ...facts, checks: results }, null, 2)}\n`)
    } finally {
      await browser.close()
    }
  } finally {
    await pages.close()
  }
  return checks.filter(isMissed).length
}

try {
  const missed = await bench()
  if (missed > 0) console.error(`${missed} missed; all samples are in test-results/bench.json`)
  process.exitCode = missed === 0 ? 0 : 1
} catch (error) {
  console.error(error)
  process.exitCode = 1
}
