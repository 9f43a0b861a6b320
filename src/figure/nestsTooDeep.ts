import { Lexer, Parser } from 'yaml'

/** Of the parser's open parts; the deepest that a description needs is 10. */
const DEEPEST = 30

/**
 * Where a text nests deeper than any description does; null when it does not.
 * Asked before the text is composed: that goes by recursion, and on some texts the engine then ends the program instead
 * of throwing (64 KB of "- ", yaml 2.9.1 on Node 20.20). This part of the library keeps a list of its own instead.
 * @returns an offset in the text, from 0
 */
export function nestsTooDeep(text: string): number | null {
  const parser = new Parser()
  for (const lexeme of new Lexer().lex(text)) {
    for (const _ of parser.next(lexeme)) {
      // Whole documents come out here; only how deep the parser is counts.
    }
    if (parser.stack.length > DEEPEST) return parser.offset
  }
  return null
}
