import { toJsonSchema } from '@valibot/to-json-schema'
import type { GenericSchema } from 'valibot'
import { figureSchema, shapes } from '../../src/figure/figureSchema.ts'
import { CURRENT_VERSION } from '../../src/figure/migrations.ts'

type Json = { [key: string]: unknown }

const converted = (schema: GenericSchema): Json => {
  // What it cannot say (an own check of length, a reader) is left out: the published schema refuses less than the parser.
  const { $schema: _, ...json } = toJsonSchema(schema, {
    typeMode: 'input',
    errorMode: 'ignore',
    target: 'draft-2020-12',
  }) as Json
  return json
}

/** Whether an editor's number can be meant: to our reader every scalar is text. */
const takesNumbers = ({ pattern }: Json): boolean => pattern === undefined || new RegExp(String(pattern)).test('1')

/** Texts that YAML's core reads as numbers or as true and false are texts to us. */
function withScalars(node: unknown): unknown {
  if (Array.isArray(node)) return node.map(withScalars)
  if (typeof node !== 'object' || node === null) return node
  const json = Object.fromEntries(Object.entries(node as Json).map(([key, value]) => [key, withScalars(value)]))
  if (json.type !== 'string' || json.enum !== undefined) return json
  if (json.pattern === undefined) return { ...json, type: ['string', 'number', 'boolean'] }
  return takesNumbers(json) ? { ...json, type: ['string', 'number'] } : json
}

/** The published JSON Schema (draft 2020-12) of a description: made from the one schema, `src/figure/figureSchema.ts`. */
export function publishedSchema(): Json {
  const { properties, ...whole } = converted(figureSchema) as Json & { properties: Json }
  const { $defs: _, ...rest } = whole
  const oneTiming = { anyOf: shapes.timing.map(converted) }
  const versions = Array.from({ length: CURRENT_VERSION }, (__, index) => index + 1)
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'A figure of Overfoot',
    description:
      'The steps of a ballroom figure with their timing. YAML; keys that are not known are kept and not used.',
    ...rest,
    properties: withScalars({
      ...properties,
      overfoot: {
        description: (properties.overfoot as Json).description,
        enum: [...versions, ...versions.map(String)],
      },
      timing: {
        description: 'When the actions are danced: one timing, or several for the same actions.',
        anyOf: [...oneTiming.anyOf, { type: 'array', items: oneTiming, minItems: 1, maxItems: shapes.mostTimings }],
      },
      actions: { ...(properties.actions as Json), items: { anyOf: shapes.action.map(converted) } },
    }),
  }
}
