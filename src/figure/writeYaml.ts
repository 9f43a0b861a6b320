import { Document, isScalar, Scalar, visit } from 'yaml'

/** What a description is made of: texts, lists, and keys with values. */
export type Written = string | readonly Written[] | { readonly [key: string]: Written }

/** Signs that do not show, turn the direction of a line, are no text, or that a reader takes for a damaged file. */
const UNSEEN = /[\p{Cf}\p{Zl}\p{Zp}\p{Cs}\u007F-\u009F\uFFFD]/gu

/** Plain, it would be read as no value at all. */
const NO_VALUE = /^(~|null|Null|NULL)?$/

/** The signs that do not show, as YAML writes them inside double quotation marks. */
export const escapeUnseen = (text: string): string =>
  text.replace(UNSEEN, (sign) => {
    const code = (sign.codePointAt(0) ?? 0).toString(16)
    return code.length > 4 ? `\\U${code.padStart(8, '0')}` : `\\u${code.padStart(4, '0')}`
  })

const needsMarks = (text: string): boolean => NO_VALUE.test(text) || text.search(UNSEEN) >= 0

/**
 * Values as YAML: quotation marks only where they are needed, the entries of tracks in braces. What is read back is the
 * same texts, for the reader takes every value as text.
 */
export function writeYaml(value: Written): string {
  const document = new Document(value, { version: '1.2', schema: 'failsafe', aliasDuplicateObjects: false })
  visit(document, {
    Scalar: (key, node) => {
      if (key !== 'key' && needsMarks(String(node.value))) node.type = Scalar.QUOTE_DOUBLE
    },
    Map: (_, node) => {
      node.flow = node.has('at') && node.items.every((item) => isScalar(item.value))
    },
  })
  // Only texts in double quotation marks hold any of them.
  return escapeUnseen(document.toString({ lineWidth: 0 }))
}
