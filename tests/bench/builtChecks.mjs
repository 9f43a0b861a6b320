import { spawnSync } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { build } from 'vite'

/**
 * Runs the checks that need no browser. Their sources are bundled first, as the page's are: run module by module, every
 * call from file to file would go through a getter and cost more than what is measured. And they run in a process of their
 * own: beside a bundler and a browser's driver everything took several times as long, and not all alike.
 * @param {string} repository
 * @returns {Promise<import('./check.mjs').Check[]>}
 * @throws when what is compared does not agree, with what the process said
 */
export async function builtChecks(repository) {
  // Inside the repository, so that gsap is found.
  const folder = await mkdtemp(join(repository, 'node_modules', '.overfoot-bench-'))
  try {
    await build({
      configFile: false,
      root: repository,
      publicDir: false,
      logLevel: 'error',
      build: {
        ssr: join(repository, 'tests/bench/poseChecks.ts'),
        outDir: folder,
        emptyOutDir: true,
        target: 'es2022',
        rollupOptions: { output: { entryFileNames: 'poseChecks.mjs' } },
      },
    })
    const { status, stdout, stderr } = spawnSync(process.execPath, [join(folder, 'poseChecks.mjs')], {
      cwd: repository,
      encoding: 'utf8',
      timeout: 120_000,
    })
    if (status !== 0) throw new Error(`the checks without a browser failed:\n${stderr}`)
    return JSON.parse(stdout)
  } finally {
    await rm(folder, { recursive: true })
  }
}
