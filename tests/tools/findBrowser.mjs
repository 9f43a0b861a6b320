import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join, resolve } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'

const REPOSITORY = resolve(fileURLToPath(import.meta.url), '../../..')
/** Git-ignored; what this file installs goes here. */
const OWN = join(REPOSITORY, '.browser')
/** The last version that accepts Node 20. Not among devDependencies: 70 MB that most machines do not need. */
const PACKED = '@sparticuz/chromium'
const PACKED_VERSION = '143.0.4'
const SYSTEM = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
]

/**
 * @typedef {{ name: string, find: () => Promise<string | null> | string | null }} Step `find` gives the path of a
 * program that may be a browser, or null; what it throws is reported when no later step succeeds
 */

/**
 * Runs a program out of sight.
 * @param {string} program
 * @param {readonly string[]} args
 * @param {string} [cwd]
 * @returns {string} what it printed
 * @throws with the end of what it printed when it fails
 */
function run(program, args, cwd = REPOSITORY) {
  const { status, stdout, stderr, error } = spawnSync(program, args, { cwd, encoding: 'utf8', timeout: 300_000 })
  if (error || status !== 0) {
    throw new Error(`${program} ${args.join(' ')}: ${error?.message ?? (stderr || stdout).trim().slice(-600)}`)
  }
  return stdout
}

/** @param {readonly string[]} args */
const playwright = (...args) =>
  run(process.execPath, [
    join(dirname(createRequire(import.meta.url).resolve('@playwright/test/package.json')), 'cli.js'),
    ...args,
  ])

/** Playwright's full build or, more often, its headless shell, wherever it says that it would install it. */
async function playwrightsOwn() {
  const { chromium } = await import('@playwright/test')
  if (existsSync(chromium.executablePath())) return chromium.executablePath()
  const plan = playwright('install', 'chromium', '--only-shell', '--dry-run')
  for (const [, folder = ''] of plan.matchAll(/Install location:\s*(\S.*headless_shell\S*)/g)) {
    if (!existsSync(folder)) continue
    const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    const shell = files.find((file) => /(^|[\\/])(chrome-)?headless[-_]shell(\.exe)?$/.test(file))
    if (shell) return join(folder, shell)
  }
  return null
}

/**
 * Fonts for the packed browser. Its own list names only the folders of the hosting it is packed for; with no font at all
 * every page crashes as soon as it draws a letter.
 * @param {string} folder where its fonts are unpacked, absolute
 */
export const fontsConfig = (folder) => `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${folder.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</dir>
  <dir>/usr/share/fonts</dir>
  <cachedir prefix="xdg">fontconfig</cachedir>
</fontconfig>
`

/**
 * The packed browser in `.browser`. It unpacks itself and its libraries below TMPDIR and sets LD_LIBRARY_PATH, which
 * it does only when it takes itself to be in that one hosting environment, asked at import.
 */
async function packed() {
  const entry = join(OWN, 'node_modules', PACKED, 'package.json')
  if (!existsSync(entry)) return null
  const before = { TMPDIR: process.env.TMPDIR, AWS_LAMBDA_JS_RUNTIME: process.env.AWS_LAMBDA_JS_RUNTIME }
  Object.assign(process.env, { TMPDIR: OWN, AWS_LAMBDA_JS_RUNTIME: 'nodejs20.x' })
  try {
    const main = createRequire(entry).resolve(PACKED)
    const { default: chromium } = await import(pathToFileURL(main).href)
    const path = /** @type {string} */ (await chromium.executablePath())
    const fonts = join(OWN, 'fonts')
    mkdirSync(fonts, { recursive: true })
    writeFileSync(join(fonts, 'fonts.conf'), fontsConfig(fonts))
    process.env.FONTCONFIG_PATH = fonts
    return path
  } finally {
    for (const [name, value] of Object.entries(before)) {
      if (value === undefined) delete process.env[name]
      else process.env[name] = value
    }
  }
}

async function installPacked() {
  if (process.platform !== 'linux' || process.arch !== 'x64') return null
  mkdirSync(OWN, { recursive: true })
  writeFileSync(join(OWN, 'package.json'), '{ "private": true }\n')
  run('npm', ['install', '--no-save', '--no-audit', '--no-fund', `${PACKED}@${PACKED_VERSION}`], OWN)
  return packed()
}

function installDebians() {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return null
  run('apt-get', ['update'])
  run('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'])
  return '/usr/bin/chromium'
}

/** First what is there, then what can be installed, the cheapest first. @type {readonly Step[]} */
const STEPS = [
  { name: "Playwright's own", find: playwrightsOwn },
  { name: "the system's", find: () => SYSTEM.find(works) ?? null },
  { name: 'the one in .browser', find: packed },
  {
    name: "installing Playwright's",
    find: () => {
      playwright('install', 'chromium', '--only-shell')
      return playwrightsOwn()
    },
  },
  { name: `installing ${PACKED} into .browser`, find: installPacked },
  { name: "installing Debian's (as root)", find: installDebians },
]

/**
 * Whether the program starts and knows its version. A path alone says little: some systems have a script there that
 * only tells how to install the browser.
 * @param {string} path
 */
function works(path) {
  // On Windows the question for the version opens a window instead.
  if (process.platform === 'win32') return existsSync(path)
  return existsSync(path) && spawnSync(path, ['--version'], { timeout: 30_000 }).status === 0
}

/**
 * The path of a Chromium to test with, installed if there is none. Sets CHROME (and, with the packed browser,
 * LD_LIBRARY_PATH) in this process, so that processes started from it find the same one at once.
 * @param {{ steps?: readonly Step[], isBrowser?: (path: string) => boolean }} [options]
 * @throws when CHROME is set to something that does not start, or nothing was found: then with every step's reason
 */
export async function findBrowser({ steps = STEPS, isBrowser = works } = {}) {
  const given = process.env.CHROME
  if (given) {
    if (!isBrowser(given)) throw new Error(`CHROME is set to "${given}", which does not start`)
    return given
  }
  const reasons = []
  for (const { name, find } of steps) {
    try {
      const path = await find()
      if (path !== null && isBrowser(path)) {
        process.env.CHROME = path
        return path
      }
      reasons.push(`${name}: ${path === null ? 'there is none' : `${path} does not start`}`)
    } catch (error) {
      reasons.push(`${name}: ${error instanceof Error ? error.message : error}`)
    }
  }
  throw new Error(`no browser to test with; set CHROME to the path of a Chromium.\n${reasons.join('\n')}`)
}
