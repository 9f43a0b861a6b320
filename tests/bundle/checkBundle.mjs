// Weighs the code that is loaded before the first picture, in the build that `dist/` holds, against two limits.
import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'
import { build } from 'vite'
import { firstPicture } from './firstPicture.mjs'

const REPOSITORY = resolve(fileURLToPath(import.meta.url), '../../..')
/** KiB, gzip -9. */
const LIMIT = 250
/** KiB above the baseline: what our own code and the smaller packages may weigh. */
const LIMIT_OWN = 50

/**
 * @param {string} folder a build with a manifest
 * @returns {Promise<number>} KiB, gzip -9
 */
async function weigh(folder) {
  const files = firstPicture(JSON.parse(await readFile(join(folder, '.vite', 'manifest.json'), 'utf8')))
  const weights = await Promise.all(
    files.map(async (file) => gzipSync(await readFile(join(folder, file)), { level: 9 }).length / 1024),
  )
  return weights.reduce((sum, weight) => sum + weight, 0)
}

/** @returns {Promise<number>} KiB of the baseline, built by the page's own settings */
async function weighBaseline() {
  const outDir = await mkdtemp(join(tmpdir(), 'overfoot-baseline-'))
  try {
    await build({
      root: join(REPOSITORY, 'tests', 'bundle'),
      configFile: join(REPOSITORY, 'vite.config.ts'),
      publicDir: false,
      logLevel: 'warn',
      build: { outDir, rollupOptions: { input: join(REPOSITORY, 'tests', 'bundle', 'baseline.ts') } },
    })
    return await weigh(outDir)
  } finally {
    await rm(outDir, { recursive: true })
  }
}

const page = await weigh(join(REPOSITORY, 'dist'))
const baseline = await weighBaseline()
const own = page - baseline
console.log(`code before the first picture: ${page.toFixed(1)} KiB gz (at most ${LIMIT})`)
console.log(`above the baseline of ${baseline.toFixed(1)} KiB gz: ${own.toFixed(1)} KiB gz (at most ${LIMIT_OWN})`)
if (page > LIMIT || own > LIMIT_OWN) {
  console.error('The page has become too heavy: load later what the first picture does not need.')
  process.exitCode = 1
}
