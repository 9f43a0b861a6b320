import { toJsonSchema } from '@valibot/to-json-schema'
import type { GenericSchema } from 'valibot'
import { figureSchema, knownKeys, shapes } from '../../src/figure/figureSchema.ts'
import { migrations } from '../../src/figure/migrations.ts'

type Json = { readonly [key: string]: unknown }
type Properties = { readonly [key: string]: Json }

/** What the library cannot say in JSON Schema, and need not: the readers, and the ways to look at the input first. */
const UNSAID = ['check', 'raw_transform', 'transform']

function converted(schema: GenericSchema): Json {
  const {
    $schema: _,
    $defs: __,
    ...json
  } = toJsonSchema(schema, {
    target: 'draft-2020-12',
    typeMode: 'input',
    ignoreActions: UNSAID,
  })
  return json as Json
}

/** Whole numbers that are tried on a pattern, to know which an editor may read in place of the text. */
const TRIED = Array.from({ length: 1000 }, (_, number) => number)

/** To our reader every scalar is text; an editor reads 1 as a number and true as no text either. */
function scalar(json: Json): Json {
  const looksRight = (text: string) => json.pattern === undefined || new RegExp(String(json.pattern), 'u').test(text)
  if (looksRight('true') && looksRight('-0.5')) return { ...json, type: ['string', 'number', 'boolean'] }
  const numbers = TRIED.filter((number) => looksRight(String(number)))
  if (numbers.length === 0) return json
  return { ...json, type: ['string', 'integer'], minimum: numbers[0], maximum: numbers.at(-1) }
}

function withScalars(node: unknown): unknown {
  if (Array.isArray(node)) return node.map(withScalars)
  if (typeof node !== 'object' || node === null) return node
  const json: Json = Object.fromEntries(Object.entries(node).map(([key, value]) => [key, withScalars(value)]))
  return json.type === 'string' && json.enum === undefined ? scalar(json) : json
}

/** Every key of the description, with nothing beside it. */
const everyKey: Json = {
  ...Object.fromEntries(knownKeys.figure.map((key) => [key, null])),
  actions: [Object.fromEntries(knownKeys.action.map((key) => [key, null]))],
}

/** The figure's and the actions' keys that a version did not know: whatever stands there is set aside, not judged. */
function unknownTo(from: number): { readonly figure: readonly string[]; readonly action: readonly string[] } {
  const aside = migrations.filter((migration) => migration.from === from).flatMap(({ step }) => step(everyKey).aside)
  const named = (length: number) => aside.filter((path) => path.length === length).map((path) => String(path.at(-1)))
  return { figure: named(1), action: named(3) }
}

/** What people read of a key, and what a program checks. */
const told = ({ description, examples }: Json): Json => ({ description, ...(examples ? { examples } : {}) })
const checked = ({ description: _, examples: __, ...rest }: Json): Json => rest

const mapped = (properties: Properties, keys: readonly string[], part: (json: Json) => Json): Properties =>
  Object.fromEntries(Object.entries(properties).map(([key, json]) => [key, keys.includes(key) ? part(json) : json]))
const picked = (properties: Properties, keys: readonly string[]): Properties =>
  Object.fromEntries(keys.map((key) => [key, checked(properties[key] as Json)]))

/** The published JSON Schema of a description, made from the one schema: `src/figure/figureSchema.ts`. */
export function publishedSchema(): Json {
  const whole = withScalars(converted(figureSchema)) as { readonly properties: Properties; readonly required: unknown }
  const [direction, action] = withScalars(shapes.action.map(converted)) as [Json, { readonly properties: Properties }]
  const timing = withScalars(shapes.timing.map(converted)) as readonly Json[]
  const versions = migrations.map(({ from }) => ({ from, unknown: unknownTo(from) }))
  const newer = {
    figure: versions.flatMap(({ unknown }) => unknown.figure),
    action: versions.flatMap(({ unknown }) => unknown.action),
  }
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'A figure for Overfoot',
    description: 'The steps of a figure and their timing, in YAML. Keys that are not known are left alone.',
    type: 'object',
    required: whole.required,
    properties: {
      ...mapped(whole.properties, newer.figure, told),
      timing: {
        ...told(whole.properties.timing as Json),
        anyOf: [...timing, { type: 'array', items: { anyOf: timing }, minItems: 1, maxItems: shapes.mostTimings }],
      },
      actions: {
        ...whole.properties.actions,
        items: { anyOf: [direction, { ...action, properties: mapped(action.properties, newer.action, told) }] },
      },
    },
    // A key is judged only in files of the versions that know it.
    allOf: versions.map(({ from, unknown }) => ({
      if: { properties: { overfoot: withScalars({ type: 'string', pattern: `^\\s*[1-${from}]\\s*$` }) } },
      else: {
        properties: {
          ...picked(whole.properties, unknown.figure),
          actions: { items: { properties: picked(action.properties, unknown.action) } },
        },
      },
    })),
  }
}
