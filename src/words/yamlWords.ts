/** A rule that a description breaks, and what mends it: a sentence or two each. */
export type Advice = { readonly rule: string; readonly mend: string }

const unfinished: Advice = {
  rule: 'Brackets, braces and quotation marks come in pairs.',
  mend: 'Close what was opened, or put the whole value in quotation marks.',
}
const indent: Advice = {
  rule: 'Lines that belong together begin in the same column.',
  mend: 'Give each “- ” of a list, and each key of an action, the same number of spaces before it.',
}
const stray: Advice = {
  rule: 'Something stands here that does not belong to the value.',
  mend: 'Put the whole value in quotation marks, or begin a new line with a key and a colon.',
}
const colon: Advice = {
  rule: 'A value that holds a colon followed by a space reads as another key.',
  mend: 'Put the value in quotation marks: "published: title, page".',
}
const tag: Advice = {
  rule: 'A value that begins with ! is a tag, and descriptions have none.',
  mend: 'Leave the tag out, or put the value in quotation marks.',
}
const anchor: Advice = {
  rule: 'A value that begins with & or * points to another place, and descriptions have no such pointers.',
  mend: 'Put the value in quotation marks, or write it out.',
}

/** What the YAML library's codes, and our own (the last four), mean to someone who writes a description. */
export const yamlWords: Readonly<Record<string, Advice>> = {
  MISSING_CHAR: unfinished,
  BAD_INDENT: indent,
  UNEXPECTED_TOKEN: stray,
  IMPOSSIBLE: stray,
  BLOCK_AS_IMPLICIT_KEY: colon,
  BLOCK_IN_FLOW: indent,
  MULTILINE_IMPLICIT_KEY: {
    rule: 'A key is followed by a colon, on one line.',
    mend: 'Write a colon and a space after the key.',
  },
  TAB_AS_INDENT: {
    rule: 'Lines are indented with spaces, not with tabs.',
    mend: 'Put two spaces in place of the tab.',
  },
  BAD_SCALAR_START: {
    rule: 'A value cannot begin with @ or `.',
    mend: 'Put the value in quotation marks.',
  },
  BAD_DQ_ESCAPE: {
    rule: 'In double quotation marks a backslash begins a special character.',
    mend: 'Use single quotation marks.',
  },
  BAD_ALIAS: anchor,
  MULTIPLE_ANCHORS: anchor,
  MULTIPLE_TAGS: tag,
  TAG_RESOLVE_FAILED: tag,
  MULTIPLE_DOCS: {
    rule: 'A file holds one figure.',
    mend: 'Put what comes after the line --- into a file of its own.',
  },
  ALIAS: anchor,
  DUPLICATE_KEY: { rule: 'A key stands once.', mend: 'Keep one of the two lines.' },
  KEY_NOT_TEXT: { rule: 'A key is a word.', mend: 'Write a word and a colon, and what belongs to it after the colon.' },
  TOO_DEEP: {
    rule: 'A description has lists inside mappings, and no more than a few levels.',
    mend: 'Take the extra brackets or the extra “- ” away.',
  },
}
