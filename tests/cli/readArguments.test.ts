import { describe, expect, test } from 'vitest'
import { readArguments } from '../../src/cli/readArguments.ts'

const chart = { kind: 'chart', file: 'a', as: 'table', way: { kind: 'in time' }, every: null, timing: 0 }

describe('readArguments(args), in order', () => {
  test.each<[string[], object]>([
    [['check', 'a'], { kind: 'check', files: ['a'] }],
    [['check', 'a', 'b'], { kind: 'check', files: ['a', 'b'] }],
    [['check', '--', '-a'], { kind: 'check', files: ['-a'] }],
    [['chart', 'a'], chart],
    [['--as', 'csv', 'chart', 'a'], { ...chart, as: 'csv' }],
    [['chart', 'a', '--performance', 'late'], { ...chart, way: { kind: 'late', by: 0.5 } }],
    [['chart', 'a', '--performance=late', '--late=1/4'], { ...chart, way: { kind: 'late', by: 0.25 } }],
    [['chart', 'a', '--performance', 'late', '--late', '0'], { ...chart, way: { kind: 'late', by: 0 } }],
    [['chart', 'a', '--performance', 'early'], { ...chart, way: { kind: 'early', part: 0.5 } }],
    [['chart', 'a', '--performance', 'early', '--early-part', '¾'], { ...chart, way: { kind: 'early', part: 0.75 } }],
    [['chart', 'a', '--every', '1/8', '--timing', '2'], { ...chart, every: 0.125, timing: 1 }],
    [['--help'], { kind: 'help' }],
    [['chart', '-h'], { kind: 'help' }],
  ])('%j', (args, command) => {
    expect(readArguments(args)).toEqual({ ok: true, command })
  })
})

describe('readArguments(args), wrong', () => {
  test.each<[string[], object[]]>([
    [[], [{ kind: 'no command' }]],
    [['cheque'], [{ kind: 'unknown command', name: 'cheque' }]],
    [['check'], [{ kind: 'no file', command: 'check' }]],
    [['check', ''], [{ kind: 'no file', command: 'check' }]],
    [['check', 'x', '--as', 'csv'], [{ kind: 'option not of', option: 'as', command: 'check' }]],
    [['chart'], [{ kind: 'no file', command: 'chart' }]],
    [['chart', 'a', 'b'], [{ kind: 'several files', command: 'chart' }]],
    [['chart', 'a', '--as', 'xml'], [{ kind: 'not one of', option: 'as', value: 'xml' }]],
    [['chart', 'a', '--as'], [{ kind: 'option without value', option: 'as' }]],
    [['chart', 'a', '--as', ''], [{ kind: 'option without value', option: 'as' }]],
    [['chart', 'a', '--performance', 'in time'], [{ kind: 'not one of', option: 'performance' }]],
    [['chart', 'a', '--late', '2'], [{ kind: 'no part', option: 'late', value: '2' }]],
    [['chart', 'a', '--late', '-1/2'], [{ kind: 'no part', option: 'late', value: '-1/2' }]],
    [['chart', 'a', '--early-part', '0'], [{ kind: 'no part', option: 'early-part', value: '0' }]],
    [['chart', 'a', '--every', '1/3'], [{ kind: 'not one of', option: 'every', value: '1/3' }]],
    [['chart', 'a', '--every', 'constructor'], [{ kind: 'not one of', option: 'every', value: 'constructor' }]],
    [['chart', 'a', '--timing', '0'], [{ kind: 'no timing', value: '0' }]],
    // 30 may be its value: not said to be a second file as well.
    [['chart', 'a', '--tempo', '30'], [{ kind: 'unknown option', name: '--tempo' }]],
    [['check', 'a', '--__proto__'], [{ kind: 'unknown option', name: '--__proto__' }]],
    [
      ['chart', '-x', '--as', 'xml', '--late', 'x'],
      [{ kind: 'unknown option', name: '-x' }, { kind: 'no file' }, { kind: 'not one of' }, { kind: 'no part' }],
    ],
  ])('%j', (args, wrong) => {
    const read = readArguments(args)
    expect(read).toMatchObject({ ok: false, wrong })
    expect(read.ok || read.wrong).toHaveLength(wrong.length)
  })
})
