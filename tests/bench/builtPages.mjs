import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'
import { serve } from '../../src/serve/serve.mjs'

const REPOSITORY = resolve(fileURLToPath(import.meta.url), '../../..')
const PAGES = join(REPOSITORY, 'tests/bench/pages')

/**
 * Builds our page and the bench's own pages by the page's own settings into a folder of their own, and serves both from
 * one server.
 * @returns {Promise<{ url: string, close: () => Promise<void> }>} the page is at `url` + `page/index.html`, the others
 * at `url` + `bench/`
 */
export async function builtPages() {
  const folder = await mkdtemp(join(tmpdir(), 'overfoot-bench-'))
  const clear = () => rm(folder, { recursive: true, force: true })
  const settings = /** @type {const} */ ({
    configFile: join(REPOSITORY, 'vite.config.ts'),
    logLevel: 'error',
  })
  try {
    await build({ ...settings, root: join(REPOSITORY, 'src'), build: { outDir: join(folder, 'page') } })
    await build({
      ...settings,
      root: PAGES,
      publicDir: false,
      build: {
        outDir: join(folder, 'bench'),
        rollupOptions: { input: ['frames.html', 'barePicture.html'].map((page) => join(PAGES, page)) },
      },
    })
    const { url, close } = await serve({ root: folder, port: 0 })
    return { url, close: () => close().then(clear) }
  } catch (reason) {
    await clear()
    throw reason
  }
}
