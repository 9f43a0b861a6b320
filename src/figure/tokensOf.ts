import { type CST, Lexer, Parser } from 'yaml'

/** Of the parser's open parts; the deepest that a description needs is 10. */
const DEEPEST = 30

/** The tokens of a text, or the offset (from 0) where it nests deeper than any description does. */
export type Tokens = { readonly tokens: readonly CST.Token[] } | { readonly tooDeep: number }

/**
 * The first half of reading YAML, stopped where a text nests too deep. The second half, composing, goes by recursion, and on
 * some texts the engine then ends the program instead of throwing (64 KB of "- ", yaml 2.9.1 on Node 20.20). This half keeps
 * a list of its own instead.
 */
export function tokensOf(text: string): Tokens {
  const parser = new Parser()
  const tokens: CST.Token[] = []
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) tokens.push(token)
    if (parser.stack.length > DEEPEST) return { tooDeep: parser.offset }
  }
  for (const token of parser.end()) tokens.push(token)
  return { tokens }
}
