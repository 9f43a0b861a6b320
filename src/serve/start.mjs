// `npm start`: installs what is missing, builds, serves. Only Node's own modules may be imported here and below: in a
// fresh clone nothing else is there yet.
import { spawnSync } from 'node:child_process'
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { ensureInstalled } from '../install/ensureInstalled.mjs'
import { serve } from './serve.mjs'

const REPOSITORY = resolve(fileURLToPath(import.meta.url), '../../..')
const DEFAULT_PORT = 4173

/** @throws when PORT is set to something that is no port */
function wishedPort() {
  const text = process.env.PORT || String(DEFAULT_PORT)
  const port = Number(text)
  if (!Number.isInteger(port) || port < 0 || port > 65535) throw new Error(`PORT must be 0 to 65535, got "${text}"`)
  return port
}

function build() {
  const vite = join(REPOSITORY, 'node_modules', 'vite', 'bin', 'vite.js')
  const { status } = spawnSync(process.execPath, [vite, 'build', '--logLevel', 'warn'], {
    cwd: REPOSITORY,
    stdio: 'inherit',
  })
  if (status !== 0) throw new Error('the build failed: its message is above')
}

try {
  const port = wishedPort()
  await ensureInstalled(REPOSITORY)
  build()
  const { url } = await serve({ root: join(REPOSITORY, 'dist'), port })
  console.log(`Overfoot is at ${url}`)
} catch (error) {
  console.error(error instanceof Error ? error.message : error)
  process.exitCode = 1
}
