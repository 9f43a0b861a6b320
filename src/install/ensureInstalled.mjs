// Apart from serve and cli, which start programs and may not import each other: both need it before anything else, and
// so do the tests. Only Node's own modules may be imported here.
import { spawnSync } from 'node:child_process'
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'

/** Vite's own floor; package.json says the same to npm. */
const NODE_FLOOR = /** @type {const} */ ([20, 19])

/**
 * @typedef {{ packages?: Record<string, { version?: string, integrity?: string, optional?: boolean }> }} Lockfile
 */

/**
 * Whether the installed packages are those of the lockfile. Compared by content, not by date: a checkout gives every
 * file a new date. Optional packages may be missing, for most of them are for other systems.
 * @param {Lockfile} wanted package-lock.json
 * @param {Lockfile | null} installed node_modules/.package-lock.json, which npm writes; null when there is none
 */
export function isInstalled(wanted, installed) {
  const have = installed?.packages
  if (have === undefined) return false
  return Object.entries(wanted.packages ?? {}).every(([path, entry]) => {
    if (path === '') return true
    const there = have[path]
    if (there === undefined) return entry.optional === true
    return there.version === entry.version && there.integrity === entry.integrity
  })
}

/**
 * @param {string} file
 * @returns {Promise<Lockfile | null>}
 */
async function readLock(file) {
  try {
    return JSON.parse(await readFile(file, 'utf8'))
  } catch {
    return null
  }
}

/**
 * Runs `npm ci` in the repository unless what is installed is what the lockfile says. What it says goes to stderr: on
 * the command line stdout is for the answer.
 * @param {string} repository
 * @throws when Node is too old, the lockfile cannot be read or npm fails, with what to do about it
 */
export async function ensureInstalled(repository) {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)
  if (major < NODE_FLOOR[0] || (major === NODE_FLOOR[0] && minor < NODE_FLOOR[1])) {
    throw new Error(`Node ${NODE_FLOOR.join('.')} or newer is needed, this is ${process.versions.node}`)
  }
  const wanted = await readLock(join(repository, 'package-lock.json'))
  if (wanted === null) throw new Error('package-lock.json cannot be read: is this a whole copy of the repository?')
  if (isInstalled(wanted, await readLock(join(repository, 'node_modules', '.package-lock.json')))) return
  console.error('Installing packages (once)...')
  const { status, error } = spawnSync('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'], {
    cwd: repository,
    stdio: ['inherit', process.stderr, 'inherit'],
    // On Windows npm is a command file, which only a shell can start.
    shell: process.platform === 'win32',
  })
  if (error) throw new Error(`npm could not be started: ${error.message}`)
  if (status !== 0) throw new Error('npm ci failed: its message is above')
}
