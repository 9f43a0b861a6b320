import { readdir, readFile } from 'node:fs/promises'
import { join, resolve, sep } from 'node:path'

const REPOSITORY = resolve(import.meta.dirname, '../..')

/** The texts of all files below a folder whose path fits, by path from the repository's root, with `/`. */
export async function readSources(folder: string, fits: RegExp): Promise<Record<string, string>> {
  const entries = await readdir(join(REPOSITORY, folder), { recursive: true, withFileTypes: true })
  const sources: Record<string, string> = {}
  for (const entry of entries) {
    const path = join(entry.parentPath, entry.name)
    const name = path.slice(REPOSITORY.length + 1).replaceAll(sep, '/')
    if (entry.isFile() && fits.test(name)) sources[name] = await readFile(path, 'utf8')
  }
  return sources
}
