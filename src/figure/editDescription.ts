import {
  isCollection,
  isMap,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  parseDocument,
  Scalar,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml'
import type { Path } from './readDocument.ts'
import { readDocument } from './readDocument.ts'

/** What to put into a list: a word, or a few keys. */
export type NewEntry = string | Readonly<Record<string, string>>

export type Edit =
  /** A text at a path; a key that is missing is added, an entry that is a bare word becomes a mapping. */
  | { readonly kind: 'set'; readonly path: Path; readonly value: string }
  /** A key with its value, or an entry of a list; a remark on the same line goes with it. */
  | { readonly kind: 'remove'; readonly path: Path }
  /** Into a list, before the entry that has this position now, or at the end. */
  | { readonly kind: 'insert'; readonly path: Path; readonly value: NewEntry }

type Splice = { readonly from: number; readonly to: number; readonly text: string }

const BYTE_ORDER_MARK = '\uFEFF'

const rangeOf = (node: Node): [number, number, number] => node.range ?? [0, 0, 0]

/** Where a node's own text ends: remarks and empty lines after it are not its own. */
function endOf(node: Node | null): number | null {
  if (node === null || node.range === null || node.range === undefined) return null
  if (isCollection(node) && node.flow !== true) {
    const last = node.items.at(-1)
    if (last === undefined) return rangeOf(node)[1]
    if (isMap(node)) {
      const { key, value } = last as Pair<Node, Node | null>
      return endOf(value) ?? endOf(key)
    }
    return endOf(last as Node)
  }
  return rangeOf(node)[1]
}

/** A text as a scalar that reads back as itself: plain where it can be, else in quotation marks. */
function scalarText(value: string, flow: boolean): string {
  const around = flow ? `{ a: ${value}, b: c }` : `a: ${value}\nb: c`
  const read = readDocument(around)
  const back = read.description?.value as Readonly<Record<string, unknown>> | undefined
  const plain = /^[^\s"'&*!|>%@`#?-]/.test(value) && !/[\n\r]/.test(value)
  return plain && back?.a === value && back?.b === 'c' ? value : JSON.stringify(value)
}

const entryText = (value: NewEntry): string =>
  typeof value === 'string'
    ? scalarText(value, true)
    : `{ ${Object.entries(value)
        .map(([key, text]) => `${key}: ${scalarText(text, true)}`)
        .join(', ')} }`

const pairOf = (map: YAMLMap, key: string | number): Pair<Node, Node | null> | null =>
  (map.items.find((item) => isScalar(item.key) && (item.key.source ?? String(item.key.value)) === String(key)) as
    | Pair<Node, Node | null>
    | undefined) ?? null

const nowhere = (path: Path): RangeError => new RangeError(`there is nothing at ${JSON.stringify(path)}`)

/** The key under which a bare word stands when it becomes a mapping. */
const bareKey = (path: Path): string => (path[0] === 'timing' ? 'say' : 'direction')

function spliceFor(text: string, edit: Edit): Splice {
  const document = parseDocument(text, { version: '1.2', schema: 'core', uniqueKeys: false, keepSourceTokens: true })
  const eol = text.includes('\r\n') ? '\r\n' : '\n'
  const lineStart = (at: number): number => text.lastIndexOf('\n', at - 1) + 1
  /** Behind the line's break, or the end of the text. */
  const lineEnd = (at: number): number => {
    const found = text.indexOf('\n', at)
    return found < 0 ? text.length : found + 1
  }
  const parentPath = edit.path.slice(0, -1)
  const last = edit.path.at(-1) as string | number
  const parent = (parentPath.length === 0 ? document.contents : document.getIn(parentPath, true)) as
    | Node
    | null
    | undefined
  if (parent === null || parent === undefined) throw nowhere(edit.path)

  function set(value: string): Splice {
    if (isScalar(parent)) {
      const [from, to] = rangeOf(parent)
      const bare = parent.type === Scalar.PLAIN ? (parent.source ?? String(parent.value)) : String(parent.value)
      const key = bareKey(edit.path)
      return { from, to, text: entryText({ [key]: bare.trim(), [String(last)]: value }) }
    }
    const flow = isCollection(parent) && parent.flow === true
    const node = isMap(parent) ? pairOf(parent, last)?.value : isSeq(parent) ? parent.items[Number(last)] : undefined
    if (isScalar(node)) {
      const [from, to] = rangeOf(node as Node)
      const isBlock = node.type === Scalar.BLOCK_FOLDED || node.type === Scalar.BLOCK_LITERAL
      const isEmpty = from === to
      return { from, to, text: `${isEmpty ? ' ' : ''}${scalarText(value, flow)}${isBlock ? eol : ''}` }
    }
    if (!isMap(parent) || (node !== undefined && node !== null)) throw nowhere(edit.path)
    if (node === null) throw nowhere(edit.path)
    const pairText = `${last}: ${scalarText(value, flow)}`
    const first = parent.items[0] as Pair<Node, Node | null> | undefined
    if (flow || first === undefined) {
      const lastPair = parent.items.at(-1) as Pair<Node, Node | null> | undefined
      const at = lastPair ? (endOf(lastPair.value) ?? endOf(lastPair.key) ?? 0) : rangeOf(parent)[0] + 1
      return { from: at, to: at, text: lastPair ? `, ${pairText}` : ` ${pairText} ` }
    }
    const start = rangeOf(first.key)[0]
    // Behind the first key where that is one line, else before it.
    const end = endOf(first.value)
    const indent = ' '.repeat(start - lineStart(start))
    if (isScalar(first.value) && end !== null && !text.slice(start, end).includes('\n')) {
      const at = lineEnd(end)
      const broken = text.slice(0, at).endsWith('\n')
      return { from: at, to: at, text: `${broken ? '' : eol}${indent}${pairText}${broken ? eol : ''}` }
    }
    return { from: start, to: start, text: `${pairText}${eol}${indent}` }
  }

  /** One of the entries of a flow collection, with its comma. */
  function outOfFlow(starts: readonly number[], ends: readonly number[], index: number): Splice {
    const next = starts[index + 1]
    if (next !== undefined) return { from: starts[index] as number, to: next, text: '' }
    return {
      from: index > 0 ? (ends[index - 1] as number) : (starts[index] as number),
      to: ends[index] as number,
      text: '',
    }
  }

  function remove(): Splice {
    if (isMap(parent)) {
      const pair = pairOf(parent, last)
      const index = pair === null ? -1 : (parent.items as unknown[]).indexOf(pair)
      if (index < 0) throw nowhere(edit.path)
      const pairs = parent.items as Pair<Node, Node | null>[]
      const starts = pairs.map(({ key }) => rangeOf(key)[0])
      const ends = pairs.map(({ key, value }) => endOf(value) ?? endOf(key) ?? 0)
      if (parent.flow === true) return outOfFlow(starts, ends, index)
      const start = starts[index] as number
      const end = lineEnd(
        Math.max(start, (ends[index] as number) - (text[(ends[index] as number) - 1] === '\n' ? 1 : 0)),
      )
      const alone = text.slice(lineStart(start), start).trim() === ''
      if (alone) return { from: lineStart(start), to: end, text: '' }
      // On a dash's line: the next key takes its place.
      const next = starts[index + 1]
      if (next === undefined) throw new RangeError(`${JSON.stringify(edit.path)} is the only key there`)
      return { from: start, to: next, text: '' }
    }
    if (!isSeq(parent)) throw nowhere(edit.path)
    const entry = parent.items[Number(last)] as Node | undefined
    if (entry === undefined) throw nowhere(edit.path)
    const nodes = parent.items as Node[]
    if (parent.flow === true) {
      return outOfFlow(
        nodes.map((node) => rangeOf(node)[0]),
        nodes.map((node) => endOf(node) ?? 0),
        Number(last),
      )
    }
    if (nodes.length === 1) throw new RangeError(`${JSON.stringify(edit.path)} is the only entry there`)
    const start = lineStart(rangeOf(entry)[0])
    return {
      from: start,
      to: lineEnd((endOf(entry) ?? start) - (text[(endOf(entry) ?? 1) - 1] === '\n' ? 1 : 0)),
      text: '',
    }
  }

  function insert(value: NewEntry): Splice {
    if (!isSeq(parent) || parent.items.length === 0) throw nowhere(edit.path)
    const nodes = (parent as YAMLSeq).items as Node[]
    const at = Math.min(nodes.length, Math.max(0, Number(last)))
    const there = nodes[at]
    if (parent.flow === true) {
      const place = there ? rangeOf(there)[0] : (endOf(nodes.at(-1) as Node) as number)
      return { from: place, to: place, text: there ? `${entryText(value)}, ` : `, ${entryText(value)}` }
    }
    const like = there ?? (nodes.at(-1) as Node)
    const start = rangeOf(like)[0]
    const dash = text.lastIndexOf('-', start - 1)
    const line = `${text.slice(lineStart(dash), dash)}- ${entryText(value)}`
    if (there) return { from: lineStart(dash), to: lineStart(dash), text: line + eol }
    const end = endOf(like) as number
    const place = text[end - 1] === '\n' ? end : lineEnd(end)
    const broken = text.slice(0, place).endsWith('\n')
    return { from: place, to: place, text: `${broken ? '' : eol}${line}${broken ? eol : ''}` }
  }

  return edit.kind === 'set' ? set(edit.value) : edit.kind === 'remove' ? remove() : insert(edit.value)
}

/**
 * A description changed where it stands: remarks, unknown keys, order, quotation marks and line ends stay as they were,
 * and without edits every byte does. A key that the text's version does not know wants its version set too.
 * @param text that can be read as YAML
 * @param edits one after the other; each path is of the text as the edits before have left it
 * @throws RangeError when the text cannot be read, or a path leads nowhere
 */
export function editDescription(text: string, edits: readonly Edit[]): string {
  const mark = text.startsWith(BYTE_ORDER_MARK) ? BYTE_ORDER_MARK : ''
  let now = text.slice(mark.length)
  for (const edit of edits) {
    if (readDocument(now).description === null) throw new RangeError('the text cannot be read')
    const { from, to, text: put } = spliceFor(now, edit)
    now = now.slice(0, from) + put + now.slice(to)
  }
  return mark + now
}
