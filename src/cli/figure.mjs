// `npm run figure -- …`: Node 20 cannot read TypeScript, so Vite's own runner loads the rest.
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'

/** @typedef {{ run: typeof import('./run.ts').run }} Runner */

const REPOSITORY = resolve(fileURLToPath(import.meta.url), '../../..')

// Whoever reads only the first lines closes the pipe: no fault of ours.
process.stdout.on('error', (error) => {
  if ('code' in error && error.code === 'EPIPE') process.exit(0)
  throw error
})

/** @param {readonly string[]} args what follows the program's name */
export async function figure(args) {
  const vite = await import('vite').catch(() => null)
  if (vite === null) {
    console.error('The packages are missing: run npm ci first (npm start and npm test do it too).')
    return 2
  }
  const file = join(REPOSITORY, 'src/cli/run.ts')
  const { module } = await vite.runnerImport(file, { configFile: false, logLevel: 'error' })
  const { run } = /** @type {Runner} */ (module)
  return run(args, {
    out: (text) => process.stdout.write(`${text}\n`),
    err: (text) => process.stderr.write(`${text}\n`),
  })
}

process.exitCode = await figure(process.argv.slice(2))
