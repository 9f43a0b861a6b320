import { describe, expect, it } from 'vitest'
import { readSources } from './tools/readSources.ts'

describe('NOTICE', () => {
  it('names every package that the page depends on, with the licence that the package states', async () => {
    const { 'package.json': own = '', NOTICE: notice = '' } = await readSources('.', /^(package\.json|NOTICE)$/)
    const packages = Object.keys(JSON.parse(own).dependencies)
    expect(packages).toContain('gsap')
    const flat = notice.replaceAll(/\s+/g, ' ')
    for (const name of packages) {
      const { license } = (await import(`../node_modules/${name}/package.json`)) as { license: string }
      // A long licence runs over two lines, with the copyright of the first between.
      const [first = ''] = license.split(/(?<=:) /)
      expect(flat).toContain(` ${name} ${first}`)
    }
  })
})
