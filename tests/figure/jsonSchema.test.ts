import { readdirSync, readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, test } from 'vitest'
import { parse } from 'yaml'
import { parseFigure } from '../../src/figure/parse.ts'
import type { ProblemCode } from '../../src/problem.ts'
import { publishedSchema } from '../tools/jsonSchema.ts'
import { cases, RIGHT, WARNINGS } from './problemTable.ts'

const schema = publishedSchema()
const ajv = new Ajv2020({ allowUnionTypes: true, allErrors: true })
const isValid = ajv.compile(schema)
/** As an editor reads it: YAML's core, numbers and all. */
const seen = (text: string): unknown =>
  parse(text, { version: '1.2', schema: 'core', uniqueKeys: false, logLevel: 'error' })

/** What a schema without the dance and the timing can know. */
const KNOWN: readonly ProblemCode[] = [
  ...(['version-missing', 'version-unknown', 'key-missing', 'value-unknown', 'turn-not-a-turn'] as const),
  ...(['not-a-mapping', 'no-actions', 'too-many-actions', 'list-too-long'] as const),
]
/** Words inside a text that has no pattern: beat values, footwork, tracks. */
const INSIDE = /values: 2 1|footwork|rise and fall:|sway:/

describe('public/figure.schema.json', () => {
  test('is what the one schema gives; `npm run schema` writes it anew', async () => {
    await expect(`${JSON.stringify(schema, null, 2)}\n`).toMatchFileSnapshot('../../public/figure.schema.json')
  })

  test('is a schema by its own meta-schema, and says something of every key', () => {
    expect(ajv.validateSchema(schema)).toBe(true)
    const properties = schema.properties as Readonly<Record<string, Readonly<Record<string, unknown>>>>
    for (const [key, { description }] of Object.entries(properties)) expect(description, key).toMatch(/^[A-Z].{10,}\.$/)
  })

  const demos = new URL('../../figures-demo/', import.meta.url)
  const texts: readonly (readonly [string, string])[] = [
    ...readdirSync(demos).map((name) => [name, readFileSync(new URL(name, demos), 'utf8')] as const),
    [
      'version 1',
      readFileSync(new URL('version1.figure.yaml', import.meta.url), 'utf8')
        .replace(/^ {4}pivot.*\n/m, '')
        .replace(/^ends.*\n/m, ''),
    ],
    ['three walks', RIGHT],
    ['numbers as an editor reads them', RIGHT.replace('S Q Q', '1').replace('Three walks', '1234')],
  ]
  test.each(texts)('takes %s', (_, text) => {
    isValid(seen(text))
    expect(isValid.errors ?? []).toEqual([])
  })

  const wrong = KNOWN.flatMap((code) => cases[code].map(([text]) => ({ code, text })))
  test.each(wrong.filter(({ text }) => !INSIDE.test(text)))('refuses what the parser refuses: $code', ({ text }) => {
    expect(parseFigure(text, 'x').ok).toBe(false)
    expect(isValid(seen(text))).toBe(false)
  })

  test('takes what the parser takes, warnings and all', () => {
    const warned = WARNINGS.filter((code) => code !== 'key-newer').flatMap((code) => cases[code])
    expect(warned.length).toBeGreaterThan(0)
    for (const [text] of warned) {
      expect(parseFigure(text, 'x').ok).toBe(true)
      expect(isValid(seen(text))).toBe(true)
    }
  })
})
