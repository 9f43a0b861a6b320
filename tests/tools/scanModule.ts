import { parseSync } from 'vite'

export type Import = {
  /** As written, without a query: `./clock.ts`, `pixi.js/graphics`. */
  readonly specifier: string
  /** 1-based. */
  readonly line: number
  /** `export ... from` rather than an import. */
  readonly reExport: boolean
}

export type Scan = {
  readonly imports: readonly Import[]
  /** Names under which something is exported, types included; `default` for a default export. */
  readonly exports: readonly string[]
  readonly lines: number
}

/** Calls `visit` for every object in the tree that has a `type`, i.e. for every node. */
function walk(value: unknown, visit: (node: Readonly<Record<string, unknown>>) => void): void {
  if (typeof value !== 'object' || value === null) return
  if (Array.isArray(value)) {
    for (const item of value) walk(item, visit)
    return
  }
  const node = value as Readonly<Record<string, unknown>>
  if (typeof node.type === 'string') visit(node)
  for (const child of Object.values(node)) walk(child, visit)
}

const literal = (node: unknown): string | null => {
  const { type, value } = (node ?? {}) as { type?: unknown; value?: unknown }
  return type === 'Literal' && typeof value === 'string' ? value : null
}

/**
 * What a module imports (types, dynamic imports and `import('x').Type` included) and exports. Read from the syntax
 * tree: no comment, string or text between JSX tags can pass for an import.
 * @throws Error when the source cannot be parsed or an `import()` has no plain string, which nothing could check
 */
export function scanModule(file: string, source: string): Scan {
  const { program, module, errors } = parseSync(file, source)
  if (errors.length > 0) throw new Error(`${file}: ${errors[0]?.message}`)

  const lineAt = (offset: number) => source.slice(0, offset).split('\n').length
  const imports: Import[] = []
  walk(program, (node) => {
    const reExport = node.type === 'ExportAllDeclaration' || node.type === 'ExportNamedDeclaration'
    const asks = reExport || ['ImportDeclaration', 'ImportExpression', 'TSImportType'].includes(String(node.type))
    if (!asks || (reExport && node.source === null)) return
    const specifier = literal(node.source)
    const line = lineAt(Number(node.start))
    if (specifier === null) throw new Error(`${file}:${line}: an import() needs a plain string`)
    imports.push({ specifier: specifier.replace(/\?.*$/, ''), line, reExport })
  })

  const exports = module.staticExports.flatMap(({ entries }) =>
    entries.flatMap(({ exportName: { kind, name } }) => (kind === 'Default' ? ['default'] : name ? [name] : [])),
  )
  return { imports, exports, lines: source.replace(/\n$/, '').split('\n').length }
}
