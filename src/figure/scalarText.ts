import { readDocument } from './readDocument.ts'
import { escapeUnseen } from './writeYaml.ts'

/** What may stand without quotation marks, if it reads back as itself. */
const PLAIN = /^[^\s"'&*!|>%@`#?-][^\n\r]*$/

/**
 * A text as YAML that reads back as itself: plain where it can be, else in double quotation marks; on one line.
 * @param flow inside braces or brackets, where commas and brackets end a text
 */
export function scalarText(value: string, flow: boolean): string {
  if (PLAIN.test(value) && escapeUnseen(value) === value) {
    const { description, faults } = readDocument(flow ? `{ a: ${value}, b: c }` : `a: ${value}\nb: c`)
    const back = description?.value as Readonly<Record<string, unknown>> | undefined
    if (faults.length === 0 && back?.a === value && back.b === 'c') return value
  }
  return escapeUnseen(JSON.stringify(value))
}
