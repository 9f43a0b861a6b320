import { describe, expect, test } from 'vitest'
import { parseFigure } from '../../src/figure/parse.ts'
import type { Problem } from '../../src/problem.ts'
import { but, cases, type Expected, RIGHT, WARNINGS } from './problemTable.ts'

const summary = ({ code, where: { line, column, action } }: Problem): Expected =>
  action === undefined ? [code, line, column] : [code, line, column, action]

const problemsOf = (text: string): readonly Problem[] => {
  const result = parseFigure(text, 'walks.figure.yaml')
  return result.ok ? result.warnings : result.problems
}

describe('parseFigure(text, file)', () => {
  test('has nothing against the text that the cases change', () => {
    expect(parseFigure(RIGHT, 'walks.figure.yaml')).toMatchObject({ ok: true, warnings: [] })
  })

  test.each(
    Object.entries(cases).flatMap(([code, texts]) =>
      texts.map(([text, ...expected], index) => ({ name: `${code}, case ${index + 1}`, text, expected })),
    ),
  )('finds $name where it stands', ({ text, expected }) => {
    expect(parseFigure(text, 'walks.figure.yaml').ok).toBe(expected.every(([code]) => WARNINGS.includes(code)))
    expect(problemsOf(text).map(summary)).toEqual(expected)
  })

  test('names the file', () => {
    expect(problemsOf('')[0]?.where.file).toBe('walks.figure.yaml')
  })

  test('reports two faults at once, in the order of the file', () => {
    const text = but('- forward', '- forwrad', but('leader', 'leeder'))
    expect(problemsOf(text).map(summary)).toEqual([
      ['value-unknown', 4, 7],
      ['value-unknown', 8, 5, 1],
    ])
  })

  test('reports faults of every kind at once: words, timing, own moments, weight, unknown keys', () => {
    const text = `titel: Three walks
dance: foxtrot
role: leader
first foot: middle
timing: S Q Q
actions:
  - direction: forward
    size: far
    full: 7
  - direction: hold
    weight: half
    turn: round
`
    expect(problemsOf(text).map(summary)).toEqual([
      ['version-missing', 1, 1],
      ['key-missing', 1, 1],
      ['key-unknown', 1, 1],
      ['value-unknown', 4, 13],
      ['timing-length', 5, 9],
      ['value-unknown', 8, 11, 1],
      ['moment-not-a-count', 9, 11, 1],
      ['weight-on-hold', 11, 13, 2],
      ['turn-not-a-turn', 12, 11, 2],
    ])
  })

  test('says what start, turns and own moments disagree in beside other faults', () => {
    const text = `overfoot: 2
title: Three walks
dance: foxtrot
role: leder
first foot: right
starts: facing wall
ends: facing centre
timing: S Q Q
actions:
  - forward
  - direction: side
    full: 3 &
  - direction: close
    leaves: 3
`
    expect(problemsOf(text).map(summary)).toEqual([
      ['value-unknown', 4, 7],
      ['alignment-disagrees', 7, 7],
      ['moments-clash', 14, 13, 3],
    ])
  })

  test('says nothing of alignments after a turn that cannot be read', () => {
    const text = but('timing:', 'starts: facing wall\nends: facing centre\ntiming:', but('overfoot: 1', 'overfoot: 2'))
    expect(problemsOf(but('side', 'side\n    turn: 1/2', text)).map(summary)).toEqual([['turn-not-a-turn', 12, 11, 2]])
  })

  test('two keys twice are reported with what is wrong besides', () => {
    const text = but('- close', '- closed', but('title: Three walks', 'title: Three walks\ntitle: Four\ndance: tango'))
    expect(problemsOf(text).map(summary)).toEqual([
      ['not-yaml', 3, 1],
      ['not-yaml', 5, 1],
      ['value-unknown', 12, 5, 3],
    ])
  })

  test('lets unknown keys pass as warnings, with the word that is near', () => {
    const text = but('side', 'side\n    sise: 40 cm', but('role: leader', 'role: leader\ncolour: red'))
    expect(parseFigure(text, 'walks.figure.yaml').ok).toBe(true)
    expect(problemsOf(text)).toEqual([
      {
        code: 'key-unknown',
        severity: 'warning',
        where: { file: 'walks.figure.yaml', line: 5, column: 1 },
        values: { key: 'colour', nearest: '', hasValue: true },
      },
      {
        code: 'key-unknown',
        severity: 'warning',
        where: { file: 'walks.figure.yaml', line: 11, column: 5, action: 2 },
        values: { key: 'sise', nearest: 'size', hasValue: true },
      },
    ])
  })

  test('suggests the nearest word, and says what can stand there', () => {
    const [problem] = problemsOf(but('- close', '- clsoe'))
    expect(problem?.values).toMatchObject({ key: 'direction', value: 'clsoe', nearest: 'close' })
    expect(problem?.values).toHaveProperty('allowed', expect.stringContaining('side and slightly forward'))
  })

  test('counts columns without a byte order mark, and lines with either ending', () => {
    const text = `\uFEFF${but('- close', '- clsoe', but('overfoot: 1', 'overfoot: 3'))}`
    expect(problemsOf(text).map(summary)).toEqual([['version-unknown', 1, 11]])
    expect(problemsOf(but('- close', '- clsoe').replaceAll('\n', '\r\n')).map(summary)).toEqual([
      ['value-unknown', 10, 5, 3],
    ])
  })

  test('shows what a file says without its control characters', () => {
    const [problem] = problemsOf(but('leader', '"\\u001b[2J\\u202eleader"'))
    expect(problem?.values).toHaveProperty('value', '\\u{1b}[2J\\u{202e}leader')
  })

  test('leaves objects in general as they are', () => {
    const text = but('role: leader', 'role: leader\n__proto__:\n  polluted: yes')
    expect(parseFigure(text, 'walks.figure.yaml').ok).toBe(false)
    expect(({} as Record<string, unknown>).polluted).toBeUndefined()
  })

  test.each([
    ['brackets', '['.repeat(65_000)],
    ['braces', '{a: '.repeat(16_000)],
    ['list dashes', '- '.repeat(32_000)],
    ['list lines', Array.from({ length: 340 }, (_, depth) => `${' '.repeat(depth)}-`).join('\n')],
    ['keys', Array.from({ length: 11_000 }, (_, index) => `${index.toString(36)}:`).join('\n')],
    ['quotation marks', '"'.repeat(65_000)],
    ['unknown signs', but('S Q Q', 'x '.repeat(32_000))],
    ['open brackets in a timing', but('S Q Q', `"${'('.repeat(64_000)}"`)],
  ])('answers 64 KB of %s in a moment', (_, text) => {
    const started = performance.now()
    expect(parseFigure(text, 'hostile.yaml').ok).toBe(false)
    // Some tenths of a second at the most; each of these would take many seconds, or end the program, without care.
    expect(performance.now() - started).toBeLessThan(4000)
  })
})
