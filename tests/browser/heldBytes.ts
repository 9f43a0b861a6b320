import type { CDPSession } from '@playwright/test'

type Snapshot = {
  readonly snapshot: {
    readonly meta: { readonly node_fields: readonly string[]; readonly node_types: readonly (readonly string[])[] }
  }
  readonly nodes: readonly number[]
}

/** What a program makes; the engine's own code and shapes, which grow as it learns, are left out. */
const MADE: ReadonlySet<string> = new Set([
  'object',
  'closure',
  'array',
  'string',
  'concatenated string',
  'number',
  'regexp',
])

/** Bytes that the page's own objects hold after a collection, by a heap snapshot. */
export async function heldBytes(browser: CDPSession): Promise<number> {
  await browser.send('HeapProfiler.enable')
  await browser.send('HeapProfiler.collectGarbage')
  const chunks: string[] = []
  const keep = ({ chunk }: { chunk: string }): void => {
    chunks.push(chunk)
  }
  browser.on('HeapProfiler.addHeapSnapshotChunk', keep)
  await browser.send('HeapProfiler.takeHeapSnapshot', { reportProgress: false })
  browser.off('HeapProfiler.addHeapSnapshotChunk', keep)
  const { snapshot, nodes } = JSON.parse(chunks.join('')) as Snapshot
  const fields = snapshot.meta.node_fields
  const [type, size] = [fields.indexOf('type'), fields.indexOf('self_size')]
  const types = snapshot.meta.node_types[0] ?? []
  let bytes = 0
  for (let node = 0; node < nodes.length; node += fields.length) {
    if (MADE.has(types[nodes[node + type] ?? -1] ?? '')) bytes += nodes[node + size] ?? 0
  }
  return bytes
}
