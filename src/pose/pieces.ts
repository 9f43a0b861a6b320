/** c0 + c1 x + c2 x² + c3 x³ for x from 0 to 1. */
export type Cubic = readonly [c0: number, c1: number, c2: number, c3: number]

/** A stretch of progress in which everything that is asked for is a cubic of how far it has gone. */
export type Piece = {
  readonly from: number
  /** Above `from`. */
  readonly to: number
  readonly cubics: readonly Cubic[]
  /** Where x is 0 and 1, if not at the ends: a part of a longer way. */
  readonly of?: { readonly from: number; readonly to: number }
  /** Further numbers that the stretch carries along. */
  readonly more?: readonly number[]
}

/** Pieces one after another, as flat rows of numbers: a pose is looked up in them, however long the figure is. */
export type Rows = {
  readonly values: Float64Array
  /** Numbers in a row: its end, where x is 0, how fast x grows, then four for each cubic, then what else it carries. */
  readonly size: number
  /** For each action the offset of the first row that ends after the action's beginning, in each table: side by side. */
  readonly firstOf: Int32Array
  /** How many tables, and which of them this is. */
  readonly tables: number
  readonly table: number
}

/** Where a row's cubics begin. */
const HEAD = 3

/** From `from` (leaving with `fromVelocity`) to `to` (reaching it with `toVelocity`); velocities per unit of x. */
export const hermite = (from: number, fromVelocity: number, to: number, toVelocity: number): Cubic => [
  from,
  fromVelocity,
  3 * (to - from) - 2 * fromVelocity - toVelocity,
  fromVelocity + toVelocity - 2 * (to - from),
]
export const constant = (value: number): Cubic => [value, 0, 0, 0]
export const linear = (from: number, way: number): Cubic => [from, way, 0, 0]
/** From `from` to `to`, flat at both ends (smoothstep). */
export const easing = (from: number, to: number): Cubic => hermite(from, 0, to, 0)

/**
 * Tables of one figure. What is looked up at one moment lies side by side, for a long figure is larger than a processor's cache.
 * @param tables each: pieces one after another from 0 on, at least one; the last holds for ever
 * @param actions how many there are
 */
export function rowsOf<Tables extends readonly (readonly Piece[])[]>(
  tables: readonly [...Tables],
  actions: number,
): { [Key in keyof Tables]: Rows } {
  const firstOf = new Int32Array(actions * tables.length)
  return tables.map((pieces, table) => tableOf(pieces, firstOf, tables.length, table)) as {
    [Key in keyof Tables]: Rows
  }
}

function tableOf(pieces: readonly Piece[], firstOf: Int32Array, tables: number, table: number): Rows {
  const [{ cubics, more = [] }] = pieces as [Piece]
  const size = HEAD + 4 * cubics.length + more.length
  const values = new Float64Array(pieces.length * size)
  for (const [k, piece] of pieces.entries()) {
    const { from, to } = piece.of ?? piece
    const rate = Number.isFinite(to) ? 1 / (to - from) : 0
    const end = k === pieces.length - 1 ? Number.POSITIVE_INFINITY : piece.to
    values.set([end, from, rate, ...piece.cubics.flat(), ...(piece.more ?? [])], k * size)
  }
  for (let index = 0, at = 0; index * tables < firstOf.length; index++) {
    while ((values[at] as number) <= index) at += size
    firstOf[index * tables + table] = at
  }
  return { values, size, firstOf, tables, table }
}

/** The offset of the row in which `p` lies. @param index the action that `p` lies in */
export function rowAt({ values, size, firstOf, tables, table }: Rows, index: number, p: number): number {
  let at = firstOf[index * tables + table] as number
  while (p >= (values[at] as number)) at += size
  return at
}

/** How far a row has gone at `p`, 0 to 1. */
export const goneIn = (values: Float64Array, row: number, p: number): number =>
  (p - (values[row + 1] as number)) * (values[row + 2] as number)

/** One of a row's cubics. @param which 0 = the first */
export function cubicIn(values: Float64Array, row: number, which: number, x: number): number {
  const at = row + HEAD + 4 * which
  return (
    (values[at] as number) +
    x * ((values[at + 1] as number) + x * ((values[at + 2] as number) + x * (values[at + 3] as number)))
  )
}

/** What a row carries besides its `cubics` cubics. @param which 0 = the first */
export const moreIn = (values: Float64Array, row: number, cubics: number, which: number): number =>
  values[row + HEAD + 4 * cubics + which] as number
