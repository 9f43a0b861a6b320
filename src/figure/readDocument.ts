import { Composer, isAlias, isMap, isScalar, isSeq, LineCounter, type Node, type Pair, Scalar } from 'yaml'
import { type Fault, fault, type ProblemPlace } from '../problem.ts'
import { tokensOf } from './tokensOf.ts'

/** Keys and list positions (from 0) that lead to a value. */
export type Path = readonly (string | number)[]

/** `onKey`: at the key, not at its value. `offset`: this far inside the value's text, from 0. */
export type PlaceOptions = { readonly onKey?: boolean; readonly offset?: number }

type At = Pick<ProblemPlace, 'line' | 'column'>

export type Description = {
  /** Text, null, lists, and mappings without a prototype: every value as it is written, none read as a number. */
  readonly value: unknown
  /** Where the value is, or the nearest thing around it. */
  placeOf(path: Path, options?: PlaceOptions): At
}

export type DocumentReading =
  | { readonly description: Description; readonly faults: readonly (At & { readonly fault: Fault })[] }
  | { readonly description: null; readonly faults: readonly (At & { readonly fault: Fault })[] }

type Branch = { readonly key: Node | null; readonly node: Node | null; readonly children: Map<string | number, Branch> }

/** One slip in YAML makes many errors after it: the first of a line is said, and no more than this many are looked at. */
const MOST_ERRORS = 20

const options = {
  version: '1.2',
  schema: 'core',
  strict: true,
  merge: false,
  resolveKnownTags: false,
  // Looked for below: the library compares every key with every other.
  uniqueKeys: false,
  prettyErrors: false,
} as const

const written = (scalar: Scalar): string | null => {
  if (scalar.value === null || scalar.value === undefined) return null
  return scalar.type === Scalar.PLAIN ? (scalar.source ?? String(scalar.value)) : String(scalar.value)
}

/** How many characters of `value` stand in `text` from `from` on. */
function commonLength(text: string, from: number, value: string): number {
  let length = 0
  while (length < value.length && text[from + length] === value[length]) length++
  return length
}

/**
 * A description's text as values that know where they stand. YAML's core is read strictly: no anchors brought in again,
 * no merging, no tags, no key twice, no deep nesting.
 * @param text without a byte order mark
 */
export function readDocument(text: string): DocumentReading {
  const lines = new LineCounter()
  for (let start = 0; start >= 0; start = text.indexOf('\n', start) + 1 || -1) lines.addNewLine(start)
  const at = (offset: number): At => {
    const { line, col } = lines.linePos(offset)
    return { line, column: col }
  }
  const faults: (At & { fault: Fault })[] = []
  const complain = (offset: number, detail: string) =>
    faults.push({ fault: fault('not-yaml', { detail }), ...at(offset) })

  const read = tokensOf(text)
  if ('tooDeep' in read) {
    complain(read.tooDeep, 'TOO_DEEP')
    return { description: null, faults }
  }
  // Not the library's parseDocument: it would make the tokens once more, half of all the work.
  const [document, second] = new Composer(options).compose(read.tokens, true, text.length)
  if (document === undefined) throw new Error('the library has made no document, although it must')
  const slips = [...document.errors, ...document.warnings].map(({ pos, code }) => ({ from: pos[0], code }))
  if (second !== undefined) slips.splice(document.errors.length, 0, { from: second.range[0], code: 'MULTIPLE_DOCS' })
  let line = 0
  for (const { from, code } of slips.slice(0, MOST_ERRORS)) {
    if (at(from).line !== line) complain(from, code)
    line = at(from).line
  }
  if (faults.length > 0) return { description: null, faults }

  const start = (node: unknown): number => (node as Node | null)?.range?.[0] ?? 0

  function pair(item: Pair, value: Record<string, unknown>, children: Branch['children']): void {
    const name = isScalar(item.key) ? written(item.key) : null
    if (name === null) complain(start(item.key), 'KEY_NOT_TEXT')
    else if (children.has(name)) complain(start(item.key), 'DUPLICATE_KEY')
    else {
      const [inner, branch] = walk(item.value as Node | null, item.key as Node)
      value[name] = inner
      children.set(name, branch)
    }
  }

  function walk(node: Node | null, key: Node | null): [unknown, Branch] {
    const children: Branch['children'] = new Map()
    const branch = { key, node, children }
    if (isAlias(node)) complain(start(node), 'ALIAS')
    if (isMap(node)) {
      const value: Record<string, unknown> = Object.create(null)
      for (const item of node.items) pair(item, value, children)
      return [value, branch]
    }
    if (isSeq(node)) {
      const value = node.items.map((item, index) => {
        const [inner, child] = walk(item as Node | null, null)
        children.set(index, child)
        return inner
      })
      return [value, branch]
    }
    return [isScalar(node) ? written(node) : null, branch]
  }

  const [value, root] = walk(document.contents, null)

  /** How far each value asked for stands in the file as it reads: up to the first fold or escape. */
  const agreed = new Map<Node, number>()

  /** Exact as far as the value stands in the file as it reads; beyond that the value's beginning. */
  function inside({ node }: Branch, offset: number): number {
    const from = start(node)
    if (!isScalar(node)) return from
    const first = from + (node.type === Scalar.QUOTE_SINGLE || node.type === Scalar.QUOTE_DOUBLE ? 1 : 0)
    const length = agreed.get(node) ?? commonLength(text, first, written(node) ?? '')
    agreed.set(node, length)
    return offset < length ? first + offset : from
  }

  function placeOf(path: Path, { onKey = false, offset }: PlaceOptions = {}): At {
    let branch = root
    let found = true
    for (const step of path) {
      const child: Branch | undefined = branch.children.get(step)
      if (!child) {
        found = false
        break
      }
      branch = child
    }
    const isEmpty = !branch.node?.range || branch.node.range[0] === branch.node.range[1]
    if (branch.key && (isEmpty || (found && onKey))) return at(start(branch.key))
    return at(offset === undefined || !found ? start(branch.node) : inside(branch, offset))
  }

  return { description: { value, placeOf }, faults }
}
