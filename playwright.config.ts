import { defineConfig } from '@playwright/test'
import { browserFlags } from './tests/tools/browserFlags.mjs'
import { findBrowser } from './tests/tools/findBrowser.mjs'

export default defineConfig({
  testDir: 'tests/browser',
  outputDir: 'test-results',
  globalSetup: './tests/browser/serveDist.ts',
  // The software renderer takes a whole core; a repeated try would hide a test that sometimes fails.
  workers: 2,
  retries: 0,
  forbidOnly: true,
  // Long, not unsure: a test takes a second or two, and twenty where others use the same processor.
  timeout: 60_000,
  // The whole of `npm test` has to stay below four minutes; these tests take less than two.
  globalTimeout: Number(process.env.OVERFOOT_TEST_LIMIT ?? 240_000),
  fullyParallel: true,
  reporter: 'list',
  expect: { timeout: 10_000, toHaveScreenshot: { maxDiffPixels: 0 } },
  snapshotPathTemplate: '{testDir}/{testFileName}-snapshots/{arg}{ext}',
  use: {
    // Set by serveDist, whose port is whatever was free.
    ...(process.env.OVERFOOT_URL === undefined ? {} : { baseURL: process.env.OVERFOOT_URL }),
    browserName: 'chromium',
    launchOptions: {
      executablePath: await findBrowser(),
      args: [...browserFlags],
    },
  },
})
