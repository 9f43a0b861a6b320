import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { knownKeys } from '../../src/figure/figureSchema.ts'
import { parseFigure } from '../../src/figure/parse.ts'
import { usualWeights } from '../../src/figure/usualWeights.ts'
import { cases } from './problemTable.ts'

const guide = readFileSync(new URL('../../DEVELOPERS.md', import.meta.url), 'utf8')
const part = (heading: string): string => guide.split(`\n## ${heading}\n`)[1]?.split('\n## ')[0] ?? ''
const page = part('A figure file')

describe('DEVELOPERS.md', () => {
  test('has one heading for each problem, and no other', () => {
    const headings = [...part('Problems').matchAll(/^### (.+)$/gm)].map(([, code]) => code)
    expect(headings.toSorted()).toEqual(Object.keys(cases).toSorted())
  })

  test('has whole figures that parse without a warning', () => {
    const figures = [...page.matchAll(/```yaml\n(overfoot: [\s\S]*?)```/g)].map(([, text]) => text ?? '')
    expect(figures.length).toBeGreaterThanOrEqual(2)
    for (const text of figures) expect(parseFigure(text, 'page')).toMatchObject({ ok: true, warnings: [] })
  })

  test('has actions that parse inside a figure', () => {
    const [, lines = ''] = /```yaml\n( {2}- \{[\s\S]*?)```/.exec(page) ?? []
    const count = lines.trim().split('\n').length
    const head = `overfoot: 2\ntitle: x\ndance: tango\nrole: leader\nfirst foot: left\ntiming: ${'S '.repeat(count)}\n`
    expect(parseFigure(`${head}actions:\n${lines}`, 'page')).toMatchObject({ ok: true, warnings: [] })
  })

  test('names every key and every direction', () => {
    const keys = [...knownKeys.figure, ...knownKeys.timing, ...knownKeys.action, ...knownKeys.checkpoint]
    for (const word of [...keys, ...Object.keys(usualWeights)]) {
      expect(page.includes(`\`${word}\``) || new RegExp(`^ *(- )?\\{?.*\\b${word}:`, 'm').test(page), word).toBe(true)
    }
  })
})
