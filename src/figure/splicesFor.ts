import { type CST, isCollection, isMap, isScalar, isSeq, type Node, type Pair, parseDocument, Scalar } from 'yaml'
import type { Edit, NewEntry } from './editDescription.ts'
import { bareKey } from './editedValue.ts'
import { knownKeys } from './figureSchema.ts'
import { flowSplice } from './flowSplice.ts'
import type { Path } from './readDocument.ts'
import { scalarText } from './scalarText.ts'

/** A piece of the text and what comes in its place. */
export type Splice = { readonly from: number; readonly to: number; readonly text: string }

type Entry = { readonly key: Node | null; readonly value: Node | null; readonly from: number; readonly to: number }

const rangeOf = (node: Node): readonly [number, number] => [node.range?.[0] ?? 0, node.range?.[1] ?? 0]

/** As it is written: what a path says of a key. */
const nameOf = (key: Node | null): string | null =>
  isScalar(key) ? (key.type === Scalar.PLAIN ? (key.source ?? String(key.value)) : String(key.value)) : null

/** Where a node's own text ends: remarks and empty lines after it are not its own. */
function endOf(node: Node): number {
  if (!isCollection(node) || node.flow === true) return rangeOf(node)[1]
  return entriesOf(node).at(-1)?.to ?? rangeOf(node)[1]
}

function entriesOf(node: Node | null): readonly Entry[] {
  if (isMap(node)) {
    return (node.items as Pair<Node, Node | null>[]).map(({ key, value }) => ({
      key,
      value,
      from: rangeOf(key)[0],
      to: value === null ? rangeOf(key)[1] : Math.max(endOf(value), rangeOf(key)[1]),
    }))
  }
  if (!isSeq(node)) return []
  // In a block the entry begins with its dash.
  const token = node.srcToken as CST.BlockSequence | CST.FlowCollection | undefined
  const dashes =
    token?.type === 'block-seq'
      ? token.items.flatMap(({ start }) => start.filter(({ type }) => type === 'seq-item-ind'))
      : []
  return (node.items as Node[]).map((value, index) => {
    const dash = dashes[index]?.offset
    const [from] = rangeOf(value)
    return { key: null, value, from: dash ?? from, to: Math.max(endOf(value), (dash ?? from - 1) + 1) }
  })
}

const indexIn = (node: Node | null, step: string | number): number =>
  isMap(node) ? node.items.findIndex(({ key }) => nameOf(key as Node) === step) : typeof step === 'number' ? step : -1

function nodeAt(root: Node | null, path: Path): Node | null {
  let node = root
  for (const step of path) node = entriesOf(node)[indexIn(node, step)]?.value ?? null
  return node
}

const entryText = (value: NewEntry): string =>
  typeof value === 'string'
    ? scalarText(value, true)
    : `{ ${Object.entries(value)
        .map(([key, text]) => `${scalarText(key, true)}: ${scalarText(text, true)}`)
        .join(', ')} }`

/** The keys of the mapping at a path, in the order of the documentation. */
function orderAt(path: Path): readonly string[] {
  if (path.length === 0) return knownKeys.figure
  if (path[0] === 'timing') return knownKeys.timing
  return path[0] === 'actions' ? knownKeys.action : knownKeys.checkpoint
}

/**
 * The ways to make an edit, the most natural first. Whether one does it shows when its text is read again: YAML can be
 * written in more ways than are thought of here.
 * @param text without a byte order mark, without a fault
 * @param edit one whose path leads somewhere
 */
export function splicesFor(text: string, edit: Edit): readonly Splice[] {
  const document = parseDocument(text, { version: '1.2', schema: 'core', uniqueKeys: false, keepSourceTokens: true })
  const eol = text.includes('\r\n') ? '\r\n' : '\n'
  const lineStart = (at: number): number => text.lastIndexOf('\n', at - 1) + 1
  /** Where the line's own text ends: before its break. */
  const lineEnd = (at: number): number => {
    const end = text.slice(at).search(/\r?\n/)
    return end < 0 ? text.length : at + end
  }
  const nextLine = (at: number): number => {
    const found = text.indexOf('\n', at)
    return found < 0 ? text.length : found + 1
  }
  /** Behind the last line of something that ends at `to`: a text of several lines ends with its own break. */
  const behind = (to: number): number => (to > 0 && text[to - 1] === '\n' ? to : nextLine(to))
  const column = (at: number): string => ' '.repeat(at - lineStart(at))
  const isFirstOnLine = (at: number): boolean => text.slice(lineStart(at), at).trim() === ''

  const step = edit.path.at(-1) as string | number
  const parentPath = edit.path.slice(0, -1)
  const parent = nodeAt(document.contents as Node | null, parentPath)
  if (parent === null) return []
  const entries = entriesOf(parent)
  const index = indexIn(parent, step)
  const inFlow = isCollection(parent) && parent.flow === true

  /** New lines behind those of what ends at `to`. */
  function linesBehind(to: number, lines: string): Splice {
    const at = behind(to)
    const isBroken = text[at - 1] === '\n'
    return { from: at, to: at, text: isBroken ? lines + eol : eol + lines }
  }

  /** Where nothing stands yet: right behind the colon or the dash, before a remark. */
  function behindSign(at: number, put: string): Splice {
    const sign = text.slice(0, at).trimEnd().length
    return { from: sign, to: sign, text: ` ${put}` }
  }

  function replaced(entry: Entry, value: string): Splice {
    const put = scalarText(value, inFlow)
    const node = entry.value
    // `{ tap }`: a key without so much as a colon.
    if (node === null) return { from: entry.to, to: entry.to, text: `: ${put}` }
    const [from, to] = rangeOf(node)
    if (from === to) return behindSign(from, put)
    const isBlock = isScalar(node) && (node.type === Scalar.BLOCK_FOLDED || node.type === Scalar.BLOCK_LITERAL)
    if (!isBlock) return { from, to, text: put }
    // A remark may stand behind the sign that begins a text of several lines.
    const [remark = ''] = / #.*$/.exec(text.slice(from, lineEnd(from))) ?? []
    return { from, to, text: put + remark + (text[to - 1] === '\n' ? eol : '') }
  }

  function added(value: string): readonly Splice[] {
    if (isScalar(parent)) {
      const [from, to] = rangeOf(parent)
      if (from === to) return [behindSign(from, entryText({ [step]: value }))]
      return [{ from, to, text: entryText({ [bareKey(edit.path)]: nameOf(parent) ?? '', [step]: value }) }]
    }
    const pair = `${scalarText(String(step), inFlow)}: ${scalarText(value, inFlow)}`
    const [first] = entries
    if (!first) {
      const inside = rangeOf(parent as Node)[0] + 1
      return [{ from: inside, to: inside, text: ` ${pair} ` }]
    }
    const order = orderAt(parentPath)
    const own = order.indexOf(String(step))
    const rank = ({ key }: Entry): number => order.indexOf(nameOf(key) ?? '')
    const last = entries.at(-1) as Entry
    const earlier = own < 0 ? [last] : entries.filter((entry) => rank(entry) >= 0 && rank(entry) < own)
    const before = earlier.toSorted((a, b) => rank(a) - rank(b)).at(-1)
    const atFront: Splice = inFlow
      ? { from: first.from, to: first.from, text: `${pair}, ` }
      : { from: first.from, to: first.from, text: `${pair}${eol}${column(first.from)}` }
    const after = ({ to }: Entry): Splice =>
      inFlow ? { from: to, to, text: `, ${pair}` } : linesBehind(to, column(first.from) + pair)
    return [...(before ? [after(before)] : []), atFront, after(last)]
  }

  function removed(): readonly Splice[] {
    const entry = entries[index] as Entry
    const next = entries[index + 1]
    const { from, to } = entry
    if (inFlow) return [flowSplice(text, entries, index, rangeOf(parent as Node)[1])]
    const ownEnd = text[to - 1] === '\n' ? lineEnd(to - 2) : lineEnd(to)
    // A list or mapping that has nothing left.
    if (entries.length === 1)
      return [{ from, to: ownEnd, text: isMap(parent) ? '{}' : isFirstOnLine(from) ? '  []' : '[]' }]
    if (isFirstOnLine(from)) return [{ from: lineStart(from), to: behind(to), text: '' }]
    // On a dash's line: the next takes its place, unless a remark stands between.
    if (next && text.slice(behind(to), next.from).trim() === '') return [{ from, to: next.from, text: '' }]
    return [{ from: text.slice(0, from).trimEnd().length, to: ownEnd, text: '' }]
  }

  function inserted(value: NewEntry): readonly Splice[] {
    const put = entryText(value)
    const there = entries[index]
    const last = entries.at(-1)
    if (!last) {
      const inside = rangeOf(parent as Node)[0] + 1
      return [{ from: inside, to: inside, text: put }]
    }
    if (inFlow) {
      return there
        ? [{ from: there.from, to: there.from, text: `${put}, ` }]
        : [{ from: last.to, to: last.to, text: `, ${put}` }]
    }
    const like = there ?? last
    const line = `- ${put}`
    if (!there) return [linesBehind(last.to, column(like.from) + line)]
    const inPlace: Splice = { from: there.from, to: there.from, text: `${line}${eol}${column(there.from)}` }
    if (!isFirstOnLine(there.from)) return [inPlace]
    // The remarks on the lines above stay with the entry that they stand above.
    let at = lineStart(there.from)
    const bound = index > 0 ? behind((entries[index - 1] as Entry).to) : 0
    while (at > bound && /^\s*#/.test(text.slice(lineStart(at - 1), at))) at = lineStart(at - 1)
    return [{ from: at, to: at, text: column(there.from) + line + eol }, inPlace]
  }

  if (edit.kind === 'remove') return removed()
  if (edit.kind === 'insert') return inserted(edit.value)
  const there = entries[index]
  return there ? [replaced(there, edit.value)] : added(edit.value)
}
