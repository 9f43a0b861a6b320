import { isDeepStrictEqual } from 'node:util'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Edit, editDescription } from '../../src/figure/editDescription.ts'
import { parseFigure } from '../../src/figure/parse.ts'
import { readDocument } from '../../src/figure/readDocument.ts'
import { writeFigure } from '../../src/figure/writeFigure.ts'
import { generatedDescription } from '../tools/generateDescription.ts'
import { styled, styleSeed } from '../tools/styleDescription.ts'

const TEXT = `# by Tomke
overfoot: 2
title: 'Walks'   # of the warm-up
colour: red      # nobody knows this key
dance: foxtrot
role: leader
first foot: right
timing: S Q Q
actions:
  # the first
  - forward      # a walk
  - direction: side
    size: 40 cm  # small
    teacher: Idony
  - { direction: close, footwork: HT }
`

const edited = (text: string, ...edits: readonly Edit[]): string => {
  const result = editDescription(text, edits)
  if (!result.ok) throw new Error(`${JSON.stringify(result)} ${JSON.stringify(edits)}\n${text}`)
  return result.text
}

describe('editDescription(text, edits)', () => {
  test.each<[string, Edit, from: string, to: string]>([
    ['a value', { kind: 'set', path: ['title'], value: 'Three walks' }, "'Walks'", 'Three walks'],
    ['a value that needs marks', { kind: 'set', path: ['title'], value: 'Walks: three' }, "'Walks'", '"Walks: three"'],
    ['a key of an action', { kind: 'set', path: ['actions', 1, 'size'], value: '50 cm' }, '40 cm', '50 cm'],
    [
      'a new key of an action',
      { kind: 'set', path: ['actions', 1, 'turn'], value: '1/4 right' },
      '# small\n',
      '# small\n    turn: 1/4 right\n',
    ],
    ['a bare word', { kind: 'set', path: ['actions', 0], value: 'back' }, '- forward ', '- back '],
    [
      'a new key of a bare word',
      { kind: 'set', path: ['actions', 0, 'weight'], value: 'half' },
      '- forward ',
      '- { direction: forward, weight: half } ',
    ],
    [
      'a new key in braces',
      { kind: 'set', path: ['actions', 2, 'note'], value: 'slow, please' },
      'footwork: HT }',
      'footwork: HT, note: "slow, please" }',
    ],
    [
      'a new key of the figure',
      { kind: 'set', path: ['about'], value: 'Look at 2.' },
      'timing: S Q Q\n',
      'timing: S Q Q\nabout: Look at 2.\n',
    ],
    [
      'a source of the timing',
      { kind: 'set', path: ['timing', 'source'], value: 'common practice' },
      'timing: S Q Q',
      'timing: { say: S Q Q, source: common practice }',
    ],
    ['a key taken out', { kind: 'remove', path: ['actions', 1, 'size'] }, '    size: 40 cm  # small\n', ''],
    [
      'the key on the dash’s line',
      { kind: 'remove', path: ['actions', 1, 'direction'] },
      'direction: side\n    size',
      'size',
    ],
    ['a key in braces taken out', { kind: 'remove', path: ['actions', 2, 'footwork'] }, ', footwork: HT', ''],
    ['an action taken out', { kind: 'remove', path: ['actions', 0] }, '  - forward      # a walk\n', ''],
    [
      'an action put in',
      { kind: 'insert', path: ['actions', 1], value: 'back' },
      '  - direction',
      '  - back\n  - direction',
    ],
    [
      'an action put at the end',
      { kind: 'insert', path: ['actions', 9], value: { direction: 'side', turn: '1/8 left' } },
      'HT }\n',
      'HT }\n  - { direction: side, turn: 1/8 left }\n',
    ],
  ])('changes only %s', (_, edit, from, to) => {
    expect(TEXT).toContain(from)
    expect(edited(TEXT, edit)).toBe(TEXT.replace(from, () => to))
    // Line ends and a byte order mark stay as they are.
    const windows = `\uFEFF${TEXT.replace(/\n/g, '\r\n')}`
    expect(edited(windows, edit)).toBe(`\uFEFF${TEXT.replace(from, () => to).replace(/\n/g, '\r\n')}`)
  })

  test('without edits gives the same bytes', () => {
    for (const text of [TEXT, `\uFEFF${TEXT}`, TEXT.replace(/\n/g, '\r\n'), `${TEXT}   \n\n# end`]) {
      expect(edited(text)).toBe(text)
    }
  })

  test.each<[what: string, text: string, Edit, after: string]>([
    ['a key of nothing', 'title: # x\nrole: y', { kind: 'set', path: ['title'], value: 'a' }, 'title: a # x\nrole: y'],
    [
      'a text of lines',
      'about: | # x\n  a\n\n  b\n# y',
      { kind: 'set', path: ['about'], value: 'c' },
      'about: c # x\n# y',
    ],
    ['a text to lines', 'about: a', { kind: 'set', path: ['about'], value: 'b\nc' }, 'about: "b\\nc"'],
    ['a text that is a number', 'overfoot: 1', { kind: 'set', path: ['overfoot'], value: '2' }, 'overfoot: 2'],
    ['a text that is no value', 'title: a', { kind: 'set', path: ['title'], value: 'null' }, 'title: "null"'],
    ['a hidden sign', 'title: a', { kind: 'set', path: ['title'], value: '\u202Eb\0' }, 'title: "\\u202eb\\u0000"'],
    ['the same', "title: 'a'", { kind: 'set', path: ['title'], value: 'a' }, "title: 'a'"],
    ['a new key that is odd', '{ a: b, }', { kind: 'set', path: ['x: y'], value: ']' }, '{ a: b, "x: y": "]", }'],
    [
      'a new key after a list',
      'actions:\n- a\n# x',
      { kind: 'set', path: ['z'], value: 'b' },
      'actions:\n- a\nz: b\n# x',
    ],
    ['a key without a value', '{ a, b }', { kind: 'set', path: ['a'], value: 'c' }, '{ a: c, b }'],
    [
      'a key of an empty entry',
      'actions:\n  -\n',
      { kind: 'set', path: ['actions', 0, 'note'], value: 'c' },
      'actions:\n  - { note: c }\n',
    ],
    [
      'a key of no key',
      'actions: [{}]',
      { kind: 'set', path: ['actions', 0, 'note'], value: 'c' },
      'actions: [{ note: c }]',
    ],
    ['the only entry', 'actions:\n  - a # x\n# y', { kind: 'remove', path: ['actions', 0] }, 'actions:\n    []\n# y'],
    ['the only entry, not indented', 'actions:\n- a\n', { kind: 'remove', path: ['actions', 0] }, 'actions:\n  []\n'],
    [
      'the only key',
      'actions:\n  - note: a # x\n',
      { kind: 'remove', path: ['actions', 0, 'note'] },
      'actions:\n  - {}\n',
    ],
    ['the only key of all', 'a: b', { kind: 'remove', path: ['a'] }, '{}'],
    ['the last in brackets', 'a: [b, c, ]', { kind: 'remove', path: ['a', 1] }, 'a: [b, ]'],
    [
      'one of lines in brackets',
      'a: [\n  b, # x\n  # y\n  c # z\n  ]',
      { kind: 'remove', path: ['a', 0] },
      'a: [\n  # y\n  c # z\n  ]',
    ],
    [
      'the last of lines in brackets',
      'a: [\n  b, # x\n  # y\n  c # z\n  ]',
      { kind: 'remove', path: ['a', 1] },
      'a: [\n  b, # x\n  # y\n  ]',
    ],
    [
      'a key before a remark',
      'a:\n  - b: c # x\n    # y\n    d: e\n',
      { kind: 'remove', path: ['a', 0, 'b'] },
      'a:\n  -\n    # y\n    d: e\n',
    ],
    ['into an empty list', 'actions: []', { kind: 'insert', path: ['actions', 0], value: 'hold' }, 'actions: [hold]'],
    ['into brackets', 'actions: [a,b,]', { kind: 'insert', path: ['actions', 2], value: 'c' }, 'actions: [a,b, c,]'],
    [
      'under the remarks of others',
      'a:\n  # x\n  - b\n  # y\n  - c',
      { kind: 'insert', path: ['a', 1], value: 'd' },
      'a:\n  # x\n  - b\n  - d\n  # y\n  - c',
    ],
    [
      'at the end of a text without a last break',
      'a:\n- b',
      { kind: 'insert', path: ['a', 1], value: 'd' },
      'a:\n- b\n- d',
    ],
    [
      'an entry with an anchor',
      'a:\n  - &x-y b\n',
      { kind: 'insert', path: ['a', 0], value: 'd' },
      'a:\n  - d\n  - &x-y b\n',
    ],
    [
      'an inner list',
      'a:\n  - - b # x\n    - c\n',
      { kind: 'insert', path: ['a', 0, 0], value: 'd' },
      'a:\n  - - d\n    - b # x\n    - c\n',
    ],
  ])('finds room: %s', (_, text, edit, after) => {
    expect(edited(text, edit)).toBe(after)
  })

  test.each<Edit>([
    { kind: 'set', path: ['actions', 7], value: 'back' },
    { kind: 'set', path: ['nobody', 'x'], value: 'y' },
    { kind: 'set', path: ['actions'], value: 'y' },
    { kind: 'set', path: ['title', 'direction', 'x'], value: 'y' },
    { kind: 'set', path: ['actions', 0, 'direction'], value: 'y' },
    { kind: 'set', path: [], value: 'y' },
    { kind: 'remove', path: ['about'] },
    { kind: 'remove', path: ['actions', 3] },
    { kind: 'remove', path: ['actions', -1] },
    { kind: 'remove', path: ['__proto__'] },
    { kind: 'insert', path: ['title', 0], value: 'x' },
    { kind: 'insert', path: ['actions', 'x'], value: 'x' },
  ])('%j leads nowhere', (edit) => {
    const before: Edit = { kind: 'set', path: ['title'], value: 'x' }
    expect(editDescription(TEXT, [before, edit])).toEqual({ ok: false, reason: 'nowhere', edit: 1 })
  })

  test.each([
    ['a: [', 'not-yaml', 1],
    ['x: y\na: b\na: c', 'not-yaml', 3],
    ['a: &x b\nc: *x', 'not-yaml', 2],
    [`a: ${'b'.repeat(70_000)}`, 'too-large', 1],
  ])('leaves a text that cannot be read (%#)', (text, code, line) => {
    const result = editDescription(text, [{ kind: 'set', path: ['a'], value: 'b' }])
    const fault = expect.objectContaining({ line, fault: expect.objectContaining({ code }) })
    expect(result).toEqual({ ok: false, reason: 'unreadable', faults: [fault] })
  })

  test('says when a text leaves no room, and leaves it', () => {
    const edit: Edit = { kind: 'remove', path: ['a'] }
    expect(editDescription('? a\n: b\nc: d\n', [edit])).toEqual({ ok: false, reason: 'not in place', edit: 0 })
  })
})

type Values = { [key: string]: Values | Values[] | string | null }

/** The values of a text; what they should be after an edit is made out without the program's own idea of it. */
const valuesOf = (text: string): Values => {
  const { description, faults } = readDocument(text.replace(/^\uFEFF/, ''))
  if (!description || faults.length > 0) throw new Error(`${JSON.stringify(faults)}\n${text}`)
  return JSON.parse(JSON.stringify(description.value)) as Values
}

const SAID = [
  'back',
  'half',
  '1/4 right',
  'A: b # c',
  '',
  'null',
  ' x',
  '[',
  'a\nb',
  '%',
  "it's",
  '\u202E',
  '- a',
  'a, b}',
]

/** An edit that leads somewhere, and what the values are after it. */
const editOf = (values: Values, [kind, place, at, said]: readonly [number, number, number, string]) => {
  const after = structuredClone(values)
  const actions = after.actions as (Values | string)[]
  const index = at % actions.length
  const action = actions[index] as Values | string
  const entry = said.length > 3 ? said : { direction: said, note: 'a, b: c' }
  const keys = Object.keys(place % 2 === 0 || typeof action === 'string' ? after : action)
  const key = keys[at % keys.length] as string
  const inAction = !(place % 2 === 0 || typeof action === 'string')
  const holder = inAction ? (action as Values) : after
  const path = inAction ? ['actions', index, key] : [key]
  let edit: Edit
  if (kind === 0) {
    edit = { kind: 'insert', path: ['actions', index + (place % 2)], value: entry }
    actions.splice(index + (place % 2), 0, structuredClone(entry))
  } else if (kind === 1) {
    edit = { kind: 'remove', path: ['actions', index] }
    actions.splice(index, 1)
  } else if (kind === 2) {
    edit = { kind: 'remove', path }
    delete holder[key]
  } else if (kind === 3) {
    const name = place % 3 === 0 ? 'note' : place % 3 === 1 ? 'size' : 'new'
    edit = { kind: 'set', path: ['actions', index, name], value: said }
    if (typeof action === 'string') actions[index] = { direction: action, [name]: said }
    else action[name] = said
  } else if (kind === 4 || typeof holder[key] === 'object') {
    edit = { kind: 'set', path: ['about'], value: said }
    after.about = said
  } else {
    edit = { kind: 'set', path, value: said }
    holder[key] = said
  }
  return { edit, after }
}

test('editDescription(text, edits): the edits and nothing else, in texts of every style', { timeout: 120_000 }, () => {
  const choice = fc.tuple(fc.nat(5), fc.nat(100), fc.nat(100), fc.constantFrom(...SAID))
  fc.assert(
    fc.property(
      generatedDescription,
      styleSeed,
      fc.array(choice, { minLength: 1, maxLength: 3 }),
      (figure, seed, choices) => {
        const { text, remarks } = styled(valuesOf(writeFigure(figure)) as never, seed)
        let [now, left, values] = [text, remarks.length, valuesOf(text)]
        for (const one of choices) {
          if (!Array.isArray(values.actions) || values.actions.length === 0) break
          const { edit, after } = editOf(values, one)
          const next = edited(now, edit)
          const found = valuesOf(next)
          if (!isDeepStrictEqual(found, after)) expect(found).toEqual(after)
          const still = remarks.filter((remark) => next.includes(remark)).length
          // What is taken out takes its own remarks along; nothing else takes any.
          if (edit.kind !== 'remove' && still !== left)
            throw new Error(`${JSON.stringify(edit)}\n${now}\n=====\n${next}`)
          // Line ends stay as they were, each of them.
          expect(/(^|[^\r])\n/.test(next)).toBe(/(^|[^\r])\n/.test(now))
          expect(next.startsWith('\uFEFF')).toBe(text.startsWith('\uFEFF'))
          ;[now, left, values] = [next, still, found]
        }
        // A figure without a remark's or a key's own words is the same figure still.
        if (choices.length === 0) expect(parseFigure(now, 'x').ok).toBe(true)
      },
    ),
    { numRuns: 400, seed: 20261125 },
  )
})

test('editDescription(text, edits): what is taken out takes no other thing’s remark along', () => {
  fc.assert(
    fc.property(generatedDescription, styleSeed, fc.nat(100), (figure, seed, at) => {
      const { text, remarks } = styled(valuesOf(writeFigure(figure)) as never, seed)
      const values = valuesOf(text)
      const keys = Object.keys(values).filter((key) => typeof values[key] === 'string')
      const key = keys[at % keys.length] as string
      const after = edited(text, { kind: 'remove', path: [key] })
      const lost = remarks.filter((remark) => !after.includes(remark))
      // Behind the key, and behind its text where that is on a line of its own.
      expect(lost.length).toBeLessThanOrEqual(2)
      const lines = text.split('\n').map((line) => line.trim())
      for (const remark of lost) expect(lines).not.toContain(remark)
    }),
    { numRuns: 200, seed: 20261125 },
  )
})
