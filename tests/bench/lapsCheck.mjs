import { spawnSync } from 'node:child_process'
import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

const LAPS = 100

/**
 * A hundred laps of open, play, close in WebGL, counted by the same test that the suite runs with fewer of them. What it
 * counts is no ratio; it stands here because it takes minutes in software.
 * @param {string} repository with a fresh `dist/`
 * @returns {Promise<import('./check.mjs').Check>} measured: tests that failed
 */
export async function lapsCheck(repository) {
  const folder = await mkdtemp(join(tmpdir(), 'overfoot-laps-'))
  const report = join(folder, 'laps.json')
  try {
    spawnSync(process.execPath, [join(repository, 'node_modules/vite/bin/vite.js'), 'build', '--logLevel', 'warn'], {
      cwd: repository,
      stdio: 'inherit',
    })
    const run = spawnSync(
      process.execPath,
      [join(repository, 'node_modules/@playwright/test/cli.js'), 'test', 'laps', '--workers=1', '--reporter=json'],
      {
        cwd: repository,
        encoding: 'utf8',
        env: {
          ...process.env,
          OVERFOOT_LAPS: String(LAPS),
          OVERFOOT_TEST_LIMIT: '600000',
          PLAYWRIGHT_JSON_OUTPUT_NAME: report,
        },
      },
    )
    const { stats } = JSON.parse(await readFile(report, 'utf8'))
    if (stats.expected + stats.unexpected !== 1) throw new Error(`the laps did not run:\n${run.stdout}\n${run.stderr}`)
    return {
      name: `${LAPS} laps of open, play, close: what is left behind, tests failed`,
      measured: stats.unexpected,
      limit: 0,
      bound: 'at most',
      samples: { 'duration, ms': [stats.duration] },
    }
  } finally {
    await rm(folder, { recursive: true })
  }
}
