import { describe, expect, test } from 'vitest'
import { parseFigure } from '../../src/figure/parse.ts'
import type { Problem } from '../../src/problem.ts'
import { problemSentence } from '../../src/words/problemWords.ts'
import { but, cases } from '../figure/problemTable.ts'

function problemsOf(text: string, file = 'walks.figure.yaml'): readonly Problem[] {
  const result = parseFigure(text, file)
  return result.ok ? result.warnings : result.problems
}

const first = (text: string, file?: string) => {
  const [problem] = problemsOf(text, file)
  if (!problem) throw new Error('the text has no problem')
  return problemSentence(problem)
}

describe('problemSentence(problem)', () => {
  test.each(Object.entries(cases))('says what is wrong and what mends it: %s', (_, texts) => {
    for (const problem of texts.flatMap(([text]) => problemsOf(text))) {
      const { rule, mend, line } = problemSentence(problem)
      for (const sentence of [rule, mend]) {
        expect(sentence).toMatch(/^\S.*[.?]$/)
        expect(sentence).not.toMatch(/undefined|NaN|\[object|\bnull\b| {2}/)
      }
      expect(line).toBe(line.replace(/\p{Cc}/gu, ''))
    }
  })

  test('is one line for a terminal, with the action', () => {
    expect(first(but('- close', '- clsoe'))).toEqual({
      rule: '“clsoe” is not known as “direction”.',
      mend: expect.stringMatching(/^Did you mean “close”\? It can be: forward, back, side/),
      line: expect.stringMatching(
        /^walks\.figure\.yaml:10:5 value-unknown action 3: “clsoe” is not known as “direction”\. Did you mean “close”\?/,
      ),
    })
  })

  test('says of a key without a value that a comma may have cut a text in two', () => {
    const cut = but('- close', '- { direction: close, note: a check, then back }', but('overfoot: 1', 'overfoot: 2'))
    expect(first(cut)).toMatchObject({
      rule: '“then back” is not known here: what it says is not used.'.replace('“', 'The key “'),
      mend: expect.stringMatching(/a comma ends a value.*quotation marks/),
    })
  })

  test('keeps a file name from moving the cursor', () => {
    expect(first('', 'a\u001b[2J\nb.yaml').line).toMatch(/^a\\u\{1b\}\[2J\\u\{a\}b\.yaml:1:1 not-a-mapping /)
  })

  test.each([
    [but('S Q Q', 'S Q'), 'Each action has one sign: “S Q” has 2 signs, and there are 3 actions.'],
    [
      but('S Q Q', '1 3', but('foxtrot', 'waltz')),
      'Counts follow each other through the bar: “3” stands where “2” comes.',
    ],
    [
      but('S Q Q', 'Q & &'),
      '“&” takes its time from the step before it, which has only ½ beat: nothing would be left of it.',
    ],
    [
      but('S Q Q', 'S Q Q', but('foxtrot', 'waltz')),
      'Waltz is counted in numbers, not in slows and quicks: “S” says no length there.',
    ],
    [
      but('side', 'side\n    touches: 3 &\n    split: 2 a'),
      '“split” cannot come before “touches”: here it is ¼ beat before the action’s count, and “touches” ½ beat after the action’s count.',
    ],
    [but('side', 'tap\n    weight: full'), 'A tap carries a part of the weight at most; here is 100 %.'],
    [but('side', 'side\n    size: 3 m'), '“size” is from 0 to 2 m; here is “3 m”.'],
    [
      but('title: Three walks', 'title: Walks: three'),
      'A value that holds a colon followed by a space reads as another key.',
    ],
    [but('role: leader\n', ''), 'The key “role” is missing.'],
    [
      but('timing:', 'starts: facing wall\nends: facing centre\ntiming:', but('overfoot: 1', 'overfoot: 2')),
      'From the start, the turns lead to “facing wall” here; “ends” says “facing centre”.',
    ],
    [
      but(
        'side',
        'side\n    turn: 1/16 right\n    alignment: backing line of dance',
        but('timing:', 'starts: backing line of dance\ntiming:', but('overfoot: 1', 'overfoot: 2')),
      ),
      'From the start, the turns lead to none of the room’s eight directions here (the nearest: backing line of dance); “alignment” says “backing line of dance”.',
    ],
    [but('S Q Q', '[]'), '“timing” wants a text, or a list of timings, and here is nothing.'],
    [but('role: leader', 'role:'), '“role” wants a text, and here is nothing.'],
  ])('says of %j: %s', (text, rule) => {
    expect(first(text).rule).toBe(rule)
  })
})
