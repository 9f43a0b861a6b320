/** What stands in one column of a table or of a spreadsheet. */
export type Column<Row> = {
  /** What several columns share: "left foot"; empty where a column stands alone. */
  readonly group: string
  /** With its unit. */
  readonly name: string
  /** Whole numbers are shown without decimals. */
  readonly whole: boolean
  readonly cell: (row: Row) => string | number | boolean
}

/** A column that stands alone. */
export const column = <Row>(name: string, cell: Column<Row>['cell'], whole = false): Column<Row> => ({
  ...{ group: '', name, whole, cell },
})

/** The same columns under one head. */
export const grouped = <Row>(group: string, columns: readonly Column<Row>[]): readonly Column<Row>[] =>
  columns.map((one) => ({ ...one, group }))
