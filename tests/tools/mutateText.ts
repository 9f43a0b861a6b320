import fc from 'fast-check'

const STRANGE = [
  ...[
    '\0',
    '\uFFFD',
    '\u202e',
    '\u001b[2J',
    '&a',
    '*a',
    '<<: *a',
    '!!js x',
    '---',
    '...',
    '[',
    '{',
    '"',
    "'",
    '|',
    '>',
    ': ',
    ' #',
    '\t',
  ],
  ...[
    '__proto__:',
    'constructor: {x: 1}',
    'prototype: x',
    '.inf',
    '.nan',
    '-1',
    '1e999',
    '0x10',
    '9'.repeat(40),
    '×9',
    '1–99',
    '½',
  ],
  ...[
    '- - - -',
    '{a: {b: {c: d}}}',
    'forwrad',
    'S S S',
    'turn: 9/0 left',
    'weight: 300 %',
    'overfoot: 7',
    'at: bar 99, 1',
  ],
]

/** A good text with one thing wrong with it, or nothing: most often the text is refused, sometimes it is another figure. */
export function mutatedText(text: string): fc.Arbitrary<string> {
  const at = fc.integer({ min: 0, max: text.length })
  const lines = text.split('\n')
  const line = fc.integer({ min: 0, max: lines.length - 1 })
  return fc.oneof(
    at.map((end) => text.slice(0, end)),
    fc
      .tuple(at, fc.integer({ min: 1, max: 9 }))
      .map(([from, length]) => text.slice(0, from) + text.slice(from + length)),
    fc
      .tuple(at, fc.constantFrom(...STRANGE))
      .map(([from, strange]) => text.slice(0, from) + strange + text.slice(from)),
    fc.tuple(line, line).map(([a, b]) => {
      const swapped = [...lines]
      ;[swapped[a], swapped[b]] = [lines[b] as string, lines[a] as string]
      return swapped.join('\n')
    }),
    line.map((doubled) => [...lines.slice(0, doubled + 1), ...lines.slice(doubled)].join('\n')),
    line.map((gone) => lines.toSpliced(gone, 1).join('\n')),
    fc
      .tuple(line, fc.constantFrom(' ', '   ', '\t', '- '))
      .map(([moved, by]) => lines.with(moved, by + lines[moved]).join('\n')),
  )
}
