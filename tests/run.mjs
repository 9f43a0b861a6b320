// `npm test`: installs what is missing, runs every check and prints `N passed, N failed` as its last line.
// Only Node's own modules may be imported before the installation.
import { spawn } from 'node:child_process'
import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { ensureInstalled } from '../src/install/ensureInstalled.mjs'
import { addUp, countPlaywright, countVitest, lastLine } from './tools/countResults.mjs'

/**
 * @typedef {import('./tools/countResults.mjs').Count} Count
 * @typedef {{ code: number, output: string }} Run
 */

const REPOSITORY = resolve(fileURLToPath(import.meta.url), '../..')
const bin = (/** @type {string} */ path) => join(REPOSITORY, 'node_modules', path)
const TSC = bin('typescript/bin/tsc')

/**
 * @param {readonly string[]} args a script and its arguments, for Node
 * @param {Readonly<Record<string, string>>} [env]
 * @returns {Promise<Run>}
 */
function node(args, env = {}) {
  return new Promise((done) => {
    // Colours would only be in the way of whoever reads a log.
    const child = spawn(process.execPath, args, {
      cwd: REPOSITORY,
      env: { ...process.env, NO_COLOR: '1', FORCE_COLOR: '0', CI: '1', ...env },
    })
    let output = ''
    const keep = (/** @type {Buffer} */ part) => {
      output += part
    }
    child.stdout.on('data', keep)
    child.stderr.on('data', keep)
    child.on('error', (error) => done({ code: 1, output: error.message }))
    child.on('close', (code) => done({ code: code ?? 1, output }))
  })
}

/**
 * Runs one check and reports it. Not an exception but a count comes back: one failure must not hide the others.
 * @param {string} name
 * @param {() => Promise<Run>} run
 * @param {((run: Run) => Promise<Count>) | null} [count] null: the check counts as one
 * @param {boolean} [show] print what it says also when it passes
 * @returns {Promise<Count>}
 */
async function check(name, run, count = null, show = false) {
  const start = performance.now()
  const result = await run().catch((error) => ({ code: 1, output: String(error?.stack ?? error) }))
  const ok = result.code === 0
  const counted = count ? await count(result) : { passed: ok ? 1 : 0, failed: ok ? 0 : 1 }
  const seconds = ((performance.now() - start) / 1000).toFixed(1)
  const numbers = count ? ` (${lastLine(counted)})` : ''
  console.log(`${counted.failed === 0 ? 'ok    ' : 'FAILED'} ${name}${numbers}, ${seconds} s`)
  if (counted.failed > 0 || show) console.log(result.output.trimEnd().replace(/^/gm, '       '))
  return counted
}

/**
 * @param {string} file
 * @param {(report: any) => Count} counter
 * @returns {(run: Run) => Promise<Count>}
 */
const fromReport = (file, counter) => async (run) => {
  const report = await readFile(file, 'utf8').then(JSON.parse, () => null)
  const counted = report === null ? { passed: 0, failed: 0 } : counter(report)
  // A tool that stops before its tests, or for something that is no test, has failed all the same.
  const nothing = counted.passed + counted.failed === 0
  return (run.code !== 0 || nothing) && counted.failed === 0 ? { ...counted, failed: 1 } : counted
}

/** @param {readonly (() => Promise<Count>)[]} checks @returns {Promise<Count>} */
async function inTurn(checks) {
  const counts = []
  for (const one of checks) counts.push(await one())
  return addUp(counts)
}

/** @returns {Promise<Count>} */
async function all() {
  await ensureInstalled(REPOSITORY)
  const reports = await mkdtemp(join(tmpdir(), 'overfoot-tests-'))
  const unit = join(reports, 'unit.json')
  const browser = join(reports, 'browser.json')

  // Two lanes, for two processor cores, and then the unit tests, which take both; a browser is fetched meanwhile, which is
  // waiting for the most part. The browser tests come last and alone: they measure frames.
  const still = [
    () => check('types of the page', () => node([TSC, '-p', 'tsconfig.json'])),
    () => check('types of the core, without a browser', () => node([TSC, '-p', 'tsconfig.core.json'])),
    () => check('types of tests and tools', () => node([TSC, '-p', 'tsconfig.tests.json'])),
    () => check('lint and format', () => node([bin('@biomejs/biome/bin/biome'), 'check', '--error-on-warnings', '.'])),
    () => check('dead code', () => node([bin('knip/bin/knip.js'), '--no-progress'])),
  ]
  const built = [
    () => check('build', () => node([bin('vite/bin/vite.js'), 'build', '--logLevel', 'warn'])),
    () => check('bundle', () => node([join(REPOSITORY, 'tests/bundle/checkBundle.mjs')]), null, true),
  ]
  // In a process of its own: it waits for others in a way that would hold up the lanes.
  const find = "import('./tests/tools/findBrowser.mjs').then(({ findBrowser }) => findBrowser()).then(console.log)"
  const fetched = () => check('browser to test with', () => node(['-e', find]))
  const unitArgs = ['run', '--reporter=dot', '--reporter=json', `--outputFile.json=${unit}`]
  const browserArgs = ['test', '--reporter=list,json']
  const unitTests = () =>
    check('unit tests', () => node([bin('vitest/vitest.mjs'), ...unitArgs]), fromReport(unit, countVitest))
  const browserTests = () =>
    check(
      'browser tests',
      () => node([bin('@playwright/test/cli.js'), ...browserArgs], { PLAYWRIGHT_JSON_OUTPUT_NAME: browser }),
      fromReport(browser, countPlaywright),
    )
  const withoutBrowser = async () => addUp([...(await Promise.all([inTurn(still), inTurn(built)])), await unitTests()])
  try {
    return addUp([...(await Promise.all([withoutBrowser(), fetched()])), await browserTests()])
  } finally {
    await rm(reports, { recursive: true })
  }
}

const total = await all().catch((error) => {
  console.log(error instanceof Error ? error.message : error)
  return { passed: 0, failed: 1 }
})
console.log(lastLine(total))
process.exitCode = total.failed === 0 ? 0 : 1
