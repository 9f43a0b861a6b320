import { readdirSync, readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parse } from 'yaml'
import { knownKeys } from '../../src/figure/figureSchema.ts'
import { parseFigure } from '../../src/figure/parse.ts'
import type { ProblemCode } from '../../src/problem.ts'
import { publishedSchema } from '../tools/jsonSchema.ts'
import { but, cases, RIGHT, WARNINGS } from './problemTable.ts'

type Json = { readonly [key: string]: unknown }

const schema = publishedSchema()
const ajv = new Ajv2020({ allowUnionTypes: true, allErrors: true, strictTypes: false })
const isValid = ajv.compile(schema)
/** As an editor reads it: YAML's core, numbers and all. */
const seen = (text: string): unknown =>
  parse(text, { version: '1.2', schema: 'core', uniqueKeys: false, logLevel: 'error' })
const taken = (text: string): boolean => parseFigure(text, 'x.figure.yaml').ok

/** What is wrong with one value alone, whatever the dance. */
const KNOWN: readonly ProblemCode[] = [
  ...(['not-a-mapping', 'version-missing', 'version-unknown', 'key-missing', 'value-unknown'] as const),
  ...(['value-wrong-kind', 'turn-not-a-turn', 'number-out-of-range', 'text-too-long'] as const),
  ...(['no-actions', 'too-many-actions', 'list-too-long'] as const),
]
/** Of these, what no pattern says: sums, sizes, and the length of a text without the spaces around it. */
const BEYOND = /1\/7|2 1 17|2 1 0|40 m|9\/4 left|3 right|timing source: published/

describe('public/figure.schema.json', () => {
  test('is what the one schema gives; `npm run schema` writes it anew', async () => {
    await expect(`${JSON.stringify(schema, null, 2)}\n`).toMatchFileSnapshot('../../public/figure.schema.json')
  })

  test('is a schema by its own meta-schema', () => {
    expect(ajv.validateSchema(schema)).toBe(true)
    expect(schema).not.toHaveProperty('$defs')
    expect(schema).not.toHaveProperty('$id')
  })

  test('has no pattern that takes long over a long text', () => {
    const patterns = [...JSON.stringify(schema).matchAll(/"pattern":("(?:[^"\\\\]|\\\\.)*")/g)]
    expect(patterns.length).toBeGreaterThan(20)
    const long = ['1', 'bar 1', 'none', '1/2', '1 1/2 ', 'H', 'H(T)', 'H ', 'published', '½'].flatMap((text) => [
      `${text.repeat(2000)}!`,
      `${text}${' '.repeat(4000)}!`,
      `${text} ${' '.repeat(1000)} ${text} ${' '.repeat(1000)}!`,
    ])
    const started = performance.now()
    for (const pattern of new Set(patterns.map(([, text]) => JSON.parse(text ?? '') as string))) {
      const rule = new RegExp(pattern, 'u')
      for (const text of long) rule.test(text)
    }
    // Some tenths of a second; with three runs of spaces side by side in a pattern it takes a minute.
    expect(performance.now() - started).toBeLessThan(4000)
  })

  test('says something of every key, in a sentence', () => {
    const described = (keys: readonly string[], properties: unknown) => {
      expect(Object.keys(properties as Json)).toEqual(keys)
      for (const [key, { description }] of Object.entries(properties as { readonly [key: string]: Json })) {
        expect(description, key).toMatch(/^[A-Z].{8,}\.$/)
      }
    }
    const { properties } = schema as {
      readonly properties: Record<string, { anyOf: Json[]; items: { anyOf: Json[] } }>
    }
    described(knownKeys.figure, properties)
    described(knownKeys.timing, properties.timing?.anyOf[1]?.properties)
    described(knownKeys.action, properties.actions?.items.anyOf[1]?.properties)
  })

  const demos = new URL('../../figures-demo/', import.meta.url)
  test.each([
    ...readdirSync(demos).map((name) => [name, readFileSync(new URL(name, demos), 'utf8')] as const),
    ['a file of version 1', readFileSync(new URL('version1.figure.yaml', import.meta.url), 'utf8')],
    ['three walks', RIGHT],
    ['numbers and truths', but('Three walks', 'true', but('side', 'side\n    full: 3\n    leaves: 2 &'))],
  ] as const)('takes %s', (_, text) => {
    expect(taken(text)).toBe(true)
    isValid(seen(text))
    expect(isValid.errors ?? []).toEqual([])
  })

  const wrong = KNOWN.flatMap((code) => cases[code].map(([text]) => ({ code, text })))
  test.each(wrong.filter(({ text }) => !BEYOND.test(text)))('refuses, as the parser does, a $code', ({ text }) => {
    expect(taken(text)).toBe(false)
    expect(isValid(seen(text))).toBe(false)
  })

  test('takes what the parser takes with a warning', () => {
    const warned = WARNINGS.flatMap((code) => cases[code])
    expect(warned.length).toBeGreaterThan(0)
    for (const [text] of warned) {
      expect(taken(text)).toBe(true)
      expect(isValid(seen(text)), text).toBe(true)
    }
  })

  const V2 = but('overfoot: 1', 'overfoot: 2')
  const ofFigure = (key: string) => [key, but('role: leader', `role: leader\n${key}: VALUE`, V2)] as const
  const ofAction = (key: string, direction = 'side') =>
    [key, but('side', `${direction}\n    ${key}: VALUE`, V2)] as const
  const instead = (line: string, key = line.split(':', 1)[0]) =>
    [key ?? '', but(line, line.replace(/: .*$/, ': VALUE'))] as const
  const ofTiming = (key: string, others: string) => [key, but('S Q Q', `{ ${others}${key}: VALUE }`)] as const
  const ofTrack = (track: string, to: string): (readonly [string, string])[] => [
    [`${track}, at`, `${V2}${track}:\n  - { at: VALUE, to: ${to} }\n`],
    [`${track}, to`, `${V2}${track}:\n  - { at: 1, to: VALUE }\n`],
  ]
  /** Right texts with one value left open. */
  const open: readonly (readonly [name: string, text: string])[] = [
    ...[
      'overfoot: 1',
      'title: Three walks',
      'dance: foxtrot',
      'role: leader',
      'first foot: right',
      'timing: S Q Q',
    ].map((line) => instead(line)),
    ...['starts', 'ends', 'free foot', 'convention', 'timing source', 'steps source', 'about'].map(ofFigure),
    ['written in', but('foxtrot', 'tango\nwritten in: VALUE', V2)],
    ofTiming('say', ''),
    ofTiming('values', 'say: S Q Q, '),
    ofTiming('source', 'say: S Q Q, '),
    ['direction', but('- close', '- VALUE')],
    ...['size', 'turn', 'pivot', 'twist', 'position', 'leading', 'alignment', 'weight'].map((key) => ofAction(key)),
    ...['leaves', 'touches', 'split', 'full', 'footwork', 'note'].map((key) => ofAction(key)),
    ofAction('heel turn', 'close'),
    ofAction('placed', 'forward'),
    ...ofTrack('body turn', 'none'),
    ...ofTrack('rise and fall', 'up'),
    ...ofTrack('sway', 'none'),
  ]

  /** Every word and every example of the schema. */
  const words = [
    ...new Set(
      [...JSON.stringify(schema).matchAll(/"(?:enum|examples)":(\[[^\]]*\])/g)].flatMap(
        ([, list]) => JSON.parse(list ?? '') as string[],
      ),
    ),
  ]
  /** What such texts are made of, and what YAML reads as something else than text. */
  const PIECES: readonly string[] = [
    ...[
      '0',
      '1',
      '2',
      '3',
      '08',
      '12',
      '1/2',
      '3/4',
      '4/4',
      '0/1',
      '½',
      '⅔',
      '1½',
      '1  ½',
      '100',
      '0.5',
      '1e1',
      '0x1',
      '-1',
    ],
    ...[
      'true',
      'null',
      '~',
      '%',
      'cm',
      'm',
      'left',
      'right',
      'to',
      '&',
      'a',
      'bar',
      ',',
      ':',
      '|',
      '(',
      ')',
      'T',
      '(T)',
    ],
    ...['published', 'none', 'up', 'x', 'é', '\t', '\n', '\u00a0', ' '.repeat(70)],
  ]
  const piece = fc.constantFrom(...PIECES)
  const word = fc.constantFrom(...words)
  const value = fc.oneof(
    word,
    fc
      .tuple(fc.array(piece, { minLength: 1, maxLength: 4 }), fc.constantFrom('', ' '))
      .map(([list, between]) => list.join(between)),
    fc.tuple(piece, word, piece).map((three) => three.join(' ')),
    fc.tuple(fc.constantFrom(' ', '\n', '\t'), word).map(([space, inside]) => `${space}${inside}${space}`),
  )
  /** What can stand in braces without quotation marks. */
  const PLAIN = /^[a-zA-Z0-9½⅔é.~(][a-zA-Z0-9½⅔é./%&() -]*$/

  test.each(open)('refuses no %s that the parser takes', (_, text) => {
    let takes = 0
    const check = (scalar: string) => {
      const file = text.replace('VALUE', () => scalar)
      if (!taken(file)) return
      takes++
      if (!isValid(seen(file))) expect.fail(`refused:\n${file}`)
    }
    for (const one of words) check(JSON.stringify(one))
    expect(takes).toBeGreaterThan(0)
    fc.assert(
      fc.property(value, fc.boolean(), (written, quoted) =>
        check(quoted || !PLAIN.test(written) ? JSON.stringify(written) : written),
      ),
      { numRuns: 150, seed: 20261125 },
    )
  })
})
