import { describe, expect, test } from 'vitest'
import { readArguments } from '../../src/cli/readArguments.ts'
import { faults, wayOf } from '../../src/transfer/faults.ts'

const ofFile = { file: 'a', as: 'table', barsPerMinute: null, shortest: 0.42, timing: 0 }
const chart = { kind: 'chart', way: { kind: 'in time' }, every: null, ...ofFile }
const measure = { kind: 'measure', ways: [{ kind: 'in time' }], all: false, ...ofFile }

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
    [['chart', 'a', '--tempo', '29.5'], { ...chart, barsPerMinute: 29.5 }],
    [['chart', 'a', '--shortest', '0.25'], { ...chart, shortest: 0.25 }],
    [
      ['chart', 'a', '--performance', 'foot-first', '--amount', '1/4', '--steps', '2,3'],
      { ...chart, way: { kind: 'foot first', by: 0.25, on: [1, 2] } },
    ],
    // In any order, spaces beside the commas, a number twice.
    [['chart', 'a', '--performance', 'stops', '--steps', '3, 1,3'], { ...chart, way: { kind: 'stops', on: [0, 2] } }],
    [['chart', 'a', '--performance', 'slip', '--steps', '2'], { ...chart, way: { kind: 'slip', by: 0.5, on: [1] } }],
    [['chart', 'a', '--performance', 'late', '--amount', '1'], { ...chart, way: { kind: 'late', by: 1 } }],
    [['chart', 'a', '--performance', 'early', '--amount', '1/4'], { ...chart, way: { kind: 'early', part: 0.25 } }],
    [['measure', 'a'], measure],
    [['measure', 'a', '--as', 'json', '--tempo', '20'], { ...measure, as: 'json', barsPerMinute: 20 }],
    [
      ['measure', 'a', '--performance', 'all', '--late', '1/4'],
      {
        ...measure,
        all: true,
        ways: faults.map(({ kind }) => (kind === 'late' ? { kind, by: 0.25 } : wayOf(kind))),
      },
    ],
    [['--help'], { kind: 'help' }],
    [['chart', '-h'], { kind: 'help' }],
  ])('%j', (args, command) => {
    expect(readArguments(args)).toEqual({ ok: true, command })
  })
})

test.each(faults)('readArguments: --performance takes $kind, with hyphens for spaces', ({ kind }) => {
  const read = readArguments(['chart', 'a', '--performance', kind.split(' ').join('-')])
  expect(read).toMatchObject({ ok: true, command: { way: wayOf(kind) } })
})

test.each(faults)('readArguments: --amount is held to the range of $kind, --steps to where it can be made', (fault) => {
  const { kind, amount, on } = fault
  const performance = kind.split(' ').join('-')
  const wrongOf = (...args: string[]) => {
    const read = readArguments(['measure', 'a', '--performance', performance, ...args])
    return read.ok ? [] : read.wrong
  }
  if (amount === null) {
    expect(wrongOf('--amount', '1/2')).toEqual([{ kind: 'not with', option: 'amount', performance }])
  } else {
    const { from, to } = amount
    expect(wrongOf('--amount', `${to * 16}/16`)).toEqual([])
    const range = { kind: 'no part', option: 'amount', from, to }
    expect(wrongOf('--amount', `${to * 16 + 1}/16`)).toMatchObject([range])
    if (from > 0) expect(wrongOf('--amount', `${from * 16 - 1}/16`)).toMatchObject([range])
    expect(wrongOf('--amount', 'much')).toMatchObject([range])
  }
  const [one, two] = [wrongOf('--steps', '2'), wrongOf('--steps', '2,3')]
  expect(one).toEqual(on === 'all' ? [{ kind: 'not with', option: 'steps', performance }] : [])
  expect(two).toEqual(on === 'one' ? [{ kind: 'one step only', performance, steps: [2, 3] }] : one)
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
    [['chart', 'a', '--speed', '30'], [{ kind: 'unknown option', name: '--speed' }]],
    [['chart', 'a', '--performance', 'all'], [{ kind: 'not one of', option: 'performance', value: 'all' }]],
    [['chart', 'a', '--performance', 'foot first'], [{ kind: 'not one of', option: 'performance' }]],
    // What the mistyped one would take is not known.
    [['chart', 'a', '--performance', 'lat', '--amount', '2'], [{ kind: 'not one of', option: 'performance' }]],
    [['chart', 'a', '--amount', '1/2'], [{ kind: 'not with', option: 'amount', performance: 'in-time' }]],
    [['chart', 'a', '--steps', '1'], [{ kind: 'not with', option: 'steps', performance: 'in-time' }]],
    [['measure', 'a', '--performance', 'all', '--amount', '1/2'], [{ kind: 'not with', performance: 'all' }]],
    [['measure', 'a', '--performance', 'all', '--steps', '1'], [{ kind: 'not with', performance: 'all' }]],
    [
      ['chart', 'a', '--performance', 'late', '--late', '1/4', '--amount', '1/2'],
      [{ kind: 'said twice', options: ['amount', 'late'] }],
    ],
    [['chart', 'a', '--performance', 'late', '--amount', ''], [{ kind: 'option without value', option: 'amount' }]],
    ...['0', '2,', ',2', '2;3', '-1', '1.5', 'two', '12345'].map((value): [string[], object[]] => [
      ['chart', 'a', '--performance', 'late', '--steps', value],
      [{ kind: 'no steps', value }],
    ]),
    ...['0', '-3', '1/2', '1e3', '29,5', 'Infinity'].map((value): [string[], object[]] => [
      ['chart', 'a', '--tempo', value],
      [{ kind: 'no tempo', value }],
    ]),
    ...['0.249', '0.43', '1/3', 'NaN', '0'].map((value): [string[], object[]] => [
      ['chart', 'a', '--shortest', value],
      [{ kind: 'no seconds', option: 'shortest', value, from: 0.25, to: 0.42 }],
    ]),
    [['measure', 'a', '--every', '1/2'], [{ kind: 'option not of', option: 'every', command: 'measure' }]],
    [['measure'], [{ kind: 'no file', command: 'measure' }]],
    [['measure', 'a', 'b'], [{ kind: 'several files', command: 'measure' }]],
    [['check', 'a', '--steps', '1'], [{ kind: 'option not of', option: 'steps', command: 'check' }]],
    [
      ['measure', 'a', '--performance', 'ahead', '--amount', '3', '--steps', 'x', '--tempo', 'y', '--shortest', '1'],
      [
        { kind: 'no part' },
        { kind: 'no steps' },
        { kind: 'not with', option: 'steps' },
        { kind: 'no tempo' },
        { kind: 'no seconds' },
      ],
    ],
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
