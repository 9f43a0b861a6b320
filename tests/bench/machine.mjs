import { readFile } from 'node:fs/promises'
import { cpus, release, totalmem, type } from 'node:os'
import { join } from 'node:path'

/** Whose versions decide what is measured. */
const PACKAGES = ['pixi.js', 'react', 'gsap', 'vite']

/**
 * What the numbers were measured on.
 * @param {string} repository
 * @param {{ version: string, userAgent: string }} browser
 */
export async function machine(repository, browser) {
  const version = async (/** @type {string} */ file) => JSON.parse(await readFile(file, 'utf8')).version
  const versions = await Promise.all(
    PACKAGES.map(async (name) => [name, await version(join(repository, 'node_modules', name, 'package.json'))]),
  )
  return {
    machine: {
      cpu: cpus()[0]?.model ?? 'unknown',
      cores: cpus().length,
      memory: `${(totalmem() / 2 ** 30).toFixed(1)} GiB`,
      os: `${type()} ${release()}`,
      node: process.versions.node,
    },
    browser,
    versions: { ...Object.fromEntries(versions), overfoot: await version(join(repository, 'package.json')) },
  }
}
