import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { serve } from '../../src/serve/serve.mjs'

/** Serves the built page, with the headers it has in use, for as long as the browser tests run. */
export default async function serveDist(): Promise<() => Promise<void>> {
  const root = join(import.meta.dirname, '../../dist')
  if (!existsSync(join(root, 'index.html'))) throw new Error('dist/ holds no page: run `npm run build` first')
  const { url, close } = await serve({ root, port: 0 })
  process.env.OVERFOOT_URL = url
  return close
}
