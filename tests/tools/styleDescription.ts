import fc from 'fast-check'
import type { Written } from '../../src/figure/writeYaml.ts'

export type Styled = {
  readonly text: string
  /** Each is there once. */
  readonly remarks: readonly string[]
  /** Unknown keys, of the figure and of its actions. */
  readonly unknown: number
}

type Mapping = { readonly [key: string]: Written }

const PLAIN = /^[a-z0-9½¼¾⅜(][\w ½¼¾⅜()./%&×–]*[\w%&)]$|^[a-z0-9]$/i
const NO_VALUE = /^null$/i

/** Random numbers from a seed, below `limit`: the low bits of a linear congruence are not asked for. */
function dice(seed: number): (limit: number) => number {
  let state = seed >>> 0
  return (limit) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return Math.floor((state / 2 ** 32) * limit)
  }
}

const escaped = (value: string): string =>
  JSON.stringify(value).replace(
    /[\p{Cf}\p{Zl}\p{Zp}\p{Cs}\u007F-\u009F\uFFFD]/gu,
    (sign) => `\\U${(sign.codePointAt(0) ?? 0).toString(16).padStart(8, '0')}`,
  )

const UNKNOWN = ['colour: red', 'Teacher: "Idony, Tomke"', 'moods: [calm, { slow: yes }]', '"2": two', 'x: {}', 'y:']

/**
 * One of the many ways to write the same values: block and flow, quotation marks, remarks, orders of keys, indents,
 * unknown keys, empty lines, line ends, a byte order mark. Made without the library that the program reads with.
 */
export function styled(value: Mapping, seed: number): Styled {
  const roll = dice(seed)
  const one = <Value>(...values: readonly Value[]): Value => values[roll(values.length)] as Value
  const chattiness = roll(4)
  const remarks: string[] = []
  let unknown = 0
  const remark = (): string => {
    const text = `# remark ${remarks.length}: "said", - {by} [no] one; ${seed}`
    remarks.push(text)
    return text
  }
  const behind = (): string => (roll(9) < chattiness ? `${one(' ', '   ')}${remark()}` : '')
  const above = (indent: string): string => (roll(12) < chattiness ? `${one(indent, '')}${remark()}\n` : '')

  const scalar = (text: string): string => {
    const marks = roll(5)
    if (marks > 1 && PLAIN.test(text) && !NO_VALUE.test(text)) return text
    if (marks === 1 && /^[ -~½¼¾é]*$/.test(text)) return `'${text.replaceAll("'", "''")}'`
    return escaped(text)
  }

  const shuffled = (entries: readonly (readonly [string, Written])[]): (readonly [string, Written])[] => {
    const list = [...entries]
    if (roll(2) === 0) return list
    for (let at = list.length - 1; at > 0; at--) {
      const other = roll(at + 1)
      ;[list[at], list[other]] = [list[other] as (typeof list)[number], list[at] as (typeof list)[number]]
    }
    return list
  }

  /** Inside braces or brackets, on one line or on several. */
  function flow(now: Written, indent: string): string {
    if (typeof now === 'string') return scalar(now)
    const isList = Array.isArray(now)
    const entries = isList
      ? (now as readonly Written[]).map((entry) => flow(entry, `${indent}  `))
      : shuffled(Object.entries(now as Mapping)).map(([key, entry]) => `${key}: ${flow(entry, `${indent}  `)}`)
    const [open, close] = isList ? '[]' : '{}'
    const trailing = roll(4) === 0 && entries.length > 0 ? ',' : ''
    if (roll(3) > 0) return `${open}${one('', ' ')}${entries.join(one(', ', ',  '))}${trailing}${one('', ' ')}${close}`
    const lines = entries.map((entry, index) => {
      const comma = index < entries.length - 1 ? ',' : trailing
      return `${above(`${indent}  `)}${indent}  ${entry}${comma}${behind()}\n`
    })
    return `${open}${behind()}\n${lines.join('')}${indent}  ${close}`
  }

  /** A text over several lines, where the value allows it. */
  function block(text: string, indent: string): string | null {
    const lines = text.split('\n')
    const isPlain =
      lines.every((line) => /^[!-~é][ -~é]*[!-~é]$|^$/.test(line)) && lines.at(-1) !== '' && lines[0] !== ''
    if (!isPlain || roll(3) > 0) return null
    return `|-${behind()}\n${lines.map((line) => (line === '' ? '' : `${indent}  ${line}`)).join('\n')}`
  }

  const pairs = (map: Mapping, indent: string, withUnknown: boolean): string[] => {
    const known = shuffled(Object.entries(map)).map(([key, inner]) => `${indent}${key}:${valueBehind(inner, indent)}`)
    if (withUnknown && roll(3) === 0) {
      unknown++
      known.splice(roll(known.length + 1), 0, `${indent}${one(...UNKNOWN)}${behind()}\n`)
    }
    return known.map((text) => above(indent) + text)
  }

  function list(entries: readonly Written[], indent: string): string {
    return entries
      .map((entry) => {
        const start = `${above(indent)}${indent}-`
        if (typeof entry === 'string') return `${start} ${scalar(entry)}${behind()}\n`
        if (Array.isArray(entry) || roll(3) === 0) return `${start} ${flow(entry, indent)}${behind()}\n`
        const inner = `${indent}${one('  ', '    ')}`
        const isAction = 'direction' in entry
        const body = pairs(entry as Mapping, inner, isAction).join('')
        // The first key on the dash's line, if no remark is above it.
        const isKeyFirst = body.startsWith(inner) && !body.startsWith(`${inner} `) && !body.trimStart().startsWith('#')
        if (!isKeyFirst || roll(6) === 0) return `${start}${behind()}\n${body}`
        return `${start}${inner.slice(indent.length + 1)}${body.slice(inner.length)}`
      })
      .join('')
  }

  function valueBehind(now: Written, indent: string): string {
    if (typeof now === 'string') {
      const lines = block(now, indent)
      if (lines !== null) return ` ${lines}\n`
      if (roll(12) === 0) return `${behind()}\n${indent}  ${scalar(now)}${behind()}\n`
      return `${one(' ', '  ')}${scalar(now)}${behind()}\n`
    }
    const first = Array.isArray(now) ? (now as readonly Written[]).length > 0 : true
    if (!first || roll(4) === 0) return ` ${flow(now, indent)}${behind()}\n`
    if (Array.isArray(now)) return `${behind()}\n${list(now as readonly Written[], indent + one('', '  ', '   '))}`
    return `${behind()}\n${pairs(now as Mapping, `${indent}  `, false).join('')}`
  }

  const body = pairs(value, '', true).join(one('', '', '\n'))
  const end = one('', '', `${remark()}\n`, '\n\n', ` ${remark()}`)
  const said = `${one('', '', `${remark()}\n`, '---\n', '%YAML 1.2\n---\n')}${body}${end}`
  const kept = remarks.filter((text) => said.includes(text))
  const whole = roll(8) === 0 ? said.replace(/\n+$/, '') : said
  return {
    text: `${one('', '', '\uFEFF')}${roll(3) === 0 ? whole.replaceAll('\n', '\r\n') : whole}`,
    remarks: kept,
    unknown,
  }
}

export const styleSeed: fc.Arbitrary<number> = fc.integer({ min: 0, max: 2 ** 31 })
