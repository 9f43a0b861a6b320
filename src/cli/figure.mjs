// `npm run figure -- …`: Node 20 cannot read TypeScript, so Vite's own runner loads the rest. Only Node's own modules may
// be imported at the top: in a fresh clone nothing else is there yet.
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { ensureInstalled } from '../install/ensureInstalled.mjs'

const REPOSITORY = resolve(fileURLToPath(import.meta.url), '../../..')

// npm goes to the repository first; files are named from where its user is.
const folder = (process.env.npm_lifecycle_event === 'figure' && process.env.INIT_CWD) || process.cwd()

// Whoever reads only the first lines closes the pipe: no fault of ours.
process.stdout.on('error', (error) => {
  if ('code' in error && error.code === 'EPIPE') process.exit()
  throw error
})

/** @param {readonly string[]} args what follows the program's name */
export async function figure(args) {
  await ensureInstalled(REPOSITORY)
  const { runnerImport } = await import('vite')
  const file = join(REPOSITORY, 'src/cli/run.ts')
  const { module } = await runnerImport(file, { configFile: false, logLevel: 'error' })
  const { run } = /** @type {typeof import('./run.ts')} */ (module)
  return run(args, {
    folder,
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
  })
}

try {
  process.exitCode = await figure(process.argv.slice(2))
} catch (error) {
  console.error(error)
  // Not 1: that is said of a figure.
  process.exitCode = 2
}
