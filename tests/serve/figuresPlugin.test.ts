import { describe, expect, it } from 'vitest'
import type { Figure } from '../../src/figure/figure.ts'
import type { Problem } from '../../src/problem.ts'
import { compileFigures } from '../../src/serve/figuresPlugin.ts'

const problem = (file: string, line: number, severity: Problem['severity'] = 'error'): Problem => ({
  code: 'key-missing',
  severity,
  where: { file, line, column: 3 },
  values: { key: 'dance' },
})

/** Reads a made-up language: a word is a figure's title, `!` a problem, `?` a warning. */
function parse(text: string, file: string) {
  if (text.startsWith('!')) return { ok: false as const, problems: [problem(file, 1), problem(file, 2)] }
  const figure = { id: file, title: text, starts: null } as unknown as Figure
  return { ok: true as const, figure, warnings: text.startsWith('?') ? [problem(file, 7, 'warning')] : [] }
}

describe('compileFigures(files, parse, folder)', () => {
  it('gives the figures in the order of their file names', () => {
    const files = ['b', 'a', 'B', '1'].map((name) => ({ name, text: `figure ${name}` }))
    const { figures, warnings } = compileFigures(files, parse, 'demos')
    expect(figures.map(({ id }) => id)).toEqual(['1', 'B', 'a', 'b'])
    expect(warnings).toEqual([])
  })

  it('lets warnings pass, as lines', () => {
    const { figures, warnings } = compileFigures([{ name: 'a.yaml', text: '?' }], parse, 'demos')
    expect(figures).toHaveLength(1)
    expect(warnings).toEqual(['demos/a.yaml:7:3 key-missing key="dance"'])
  })

  it('throws with all problems of all files', () => {
    const files = ['b', 'a'].map((name) => ({ name, text: '!' }))
    const lines = ['a:1', 'a:2', 'b:1', 'b:2'].map((place) => `demos/${place}:3 key-missing key="dance"`)
    expect(() => compileFigures(files, parse, 'demos')).toThrow(`figures with problems:\n${lines.join('\n')}`)
  })

  it('throws when JSON would change a figure', () => {
    const strange = () => ({ ok: true as const, figure: { actions: Number.NaN } as unknown as Figure, warnings: [] })
    expect(() => compileFigures([{ name: 'a', text: '' }], strange, 'demos')).toThrow('demos/a does not survive JSON')
  })
})
