import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, describe, expect, test } from 'vitest'
import { run, type Status } from '../../src/cli/run.ts'

const repository = fileURLToPath(new URL('../..', import.meta.url))
const demo = join(repository, 'figures-demo/01-three-walks-slow-quick-quick.figure.yaml')
const folder = mkdtempSync(join(tmpdir(), 'overfoot-cli-'))
afterAll(() => rmSync(folder, { recursive: true }))

function file(name: string, ...lines: readonly string[]): string {
  writeFileSync(join(folder, name), `${lines.join('\n')}\n`)
  return name
}
const HEAD = ['overfoot: 2', 'title: x', 'role: leader', 'first foot: right']
const bad = file('bad.yaml', ...HEAD, 'dance: foxtrott', 'timing: S', 'actions:', '  - forwrad')
const warned = file('warned.yaml', ...HEAD, 'dance: foxtrot', 'timing: [S, Q]', 'colour: red', 'actions: [forward]')

async function called(...args: readonly string[]): Promise<{ status: Status; out: string; err: string }> {
  let [out, err] = ['', '']
  const status = await run(args, {
    folder,
    out: (text) => {
      out += text
    },
    err: (text) => {
      err += text
    },
  })
  return { status, out, err }
}

describe('run(check …)', () => {
  test('says nothing of good files and ends with 0', async () => {
    expect(await called('check', demo)).toEqual({ status: 0, out: '', err: '' })
  })

  test('has a line for each problem of all files, warnings marked, and ends with 1', async () => {
    const { status, out, err } = await called('check', bad, demo, warned)
    expect([status, err]).toEqual([1, ''])
    expect(out.split('\n')).toEqual([
      expect.stringMatching(/^bad\.yaml:5:8 value-unknown “foxtrott” .*Did you mean “foxtrot”\?.*[^)]$/),
      expect.stringMatching(/^bad\.yaml:8:5 value-unknown action 1: “forwrad” .*[^)]$/),
      expect.stringMatching(/^warned\.yaml:7:1 key-unknown .* \(warning\)$/),
      '',
    ])
  })

  test('warnings alone end with 0', async () => {
    expect((await called('check', warned)).status).toBe(0)
  })

  test('goes on after files that cannot be read, says each, and ends with 2', async () => {
    const { status, out, err } = await called('check', 'none', '.', bad)
    expect(status).toBe(2)
    expect(err).toBe('none: there is no such file\n.: this is a folder; name the files in it\n')
    expect(out).toMatch(/foxtrott/)
  })

  test('a large file is an error of that file', async () => {
    const large = file('large.yaml', `#${'x'.repeat(1_000_000)}`)
    const { status, out } = await called('check', large)
    expect([status, out]).toEqual([1, expect.stringMatching(/^large\.yaml:1:1 too-large .* 977 KB/)])
  })

  test('a file’s name cannot move the cursor', async () => {
    expect((await called('check', 'a\u001b[2Jb')).err).toBe('a\\u{1b}[2Jb: there is no such file\n')
  })
})

describe('run(…), called wrongly', () => {
  test('says all that is wrong at once, then how to call it, on stderr', async () => {
    const { status, out, err } = await called('chart', '--as', 'xml', '--every', '1/3', '--late', 'x', '--speed')
    expect([status, out]).toEqual([2, ''])
    expect(err.split('\n').slice(0, 6)).toEqual([
      '--speed is no option',
      'chart wants a file',
      '--as is one of table, csv, json; here is “xml”',
      '--late is a fraction from 0 to 1, such as 1/2; here is “x”',
      '--every is one of 1/2, 1/4, 1/8; here is “1/3”',
      'npm run --silent figure -- check FILES…',
    ])
  })

  test.each([
    [[], 'say what to do: check, chart or measure'],
    [['cheque\u001b'], '“cheque\\u{1b}” is no command; there are check, chart and measure'],
    [['check'], 'check wants a file'],
    [['check', 'x', '--as', 'csv'], 'check has no option --as'],
    [['chart', 'a', 'b'], 'chart takes one file at a time'],
    [['chart', 'a', '--as'], '--as wants a value'],
    [
      ['chart', 'a', '--performance', 'gaining', '--amount', '1'],
      '--amount is a fraction from 0 to 1/4, such as 1/8; here is “1”',
    ],
    [['chart', 'a', '--performance', 'placed', '--amount', '1'], '--performance placed has no --amount'],
    [['chart', 'a', '--performance', 'ahead', '--steps', '1'], '--performance ahead has no --steps'],
    [
      ['chart', 'a', '--performance', 'slip', '--steps', '1,2,4'],
      '--performance slip is made on one step; --steps names 1, 2 and 4',
    ],
    [
      ['chart', 'a', '--performance', 'early', '--early-part', '1/2', '--amount', '1/2'],
      '--amount and --early-part say the same; one of them is enough',
    ],
    [
      ['chart', 'a', '--performance', 'late', '--steps', '0'],
      '--steps are numbers from 1 with commas between them, such as 2,3; here is “0”',
    ],
    [['chart', 'a', '--tempo', 'x'], '--tempo is a number of bars a minute, such as 29 or 29.5; here is “x”'],
    [['chart', 'a', '--shortest', '1'], '--shortest is seconds from 0.25 to 0.42; here is “1”'],
    [['measure', 'a', '--every', '1/2'], 'measure has no option --every'],
    [['chart', 'a', '--timing', 'S'], '--timing is 1 for the figure’s first timing, 2 for its second; here is “S”'],
  ])('%j', async (args, says) => {
    const { status, err } = await called(...args)
    expect([status, err.split('\n')[0]]).toEqual([2, says])
  })

  test('--help says how to call it on stdout, and ends with 0', async () => {
    expect(await called('--help')).toEqual({ status: 0, out: expect.stringMatching(/figure -- check FILES/), err: '' })
  })
})

describe('run(chart …)', () => {
  test('a table of S Q Q at half beats', async () => {
    const { status, out, err } = await called('chart', demo)
    expect([status, err]).toEqual([0, ''])
    await expect(out).toMatchFileSnapshot('threeWalks.chart.txt')
  })

  test('charts the timing that is asked for, and keeps warnings off stdout', async () => {
    const { status, out, err } = await called('chart', warned, '--timing', '2', '--as', 'json')
    expect(status).toBe(0)
    expect(err).toMatch(/^warned\.yaml:7:1 key-unknown .* \(warning\)\n$/)
    expect(JSON.parse(out)).toMatchObject({ figure: { id: 'warned', timing: 'Q' }, every: 0.5 })
  })

  test('a timing that the figure does not have', async () => {
    const err = 'warned.yaml: --timing is from 1 to 2 in this figure; here is 3'
    expect(await called('chart', warned, '--timing', '3')).toEqual({
      status: 2,
      out: '',
      err: expect.stringContaining(err),
    })
  })

  test('says at once all that the figure cannot give, with the range of its dance', async () => {
    const asked = ['--performance', 'late', '--steps', '1,2,9', '--tempo', '36.3', '--timing', '3']
    const { status, out, err } = await called('chart', warned, ...asked)
    expect([status, out]).toEqual([2, ''])
    // Slow Foxtrot is played at 29 bars a minute, and from 20 to 125 % of that.
    expect(err.split('\n').slice(1)).toEqual([
      'warned.yaml: --timing is from 1 to 2 in this figure; here is 3',
      'warned.yaml: this figure has 1 step; --steps names 2 and 9',
      'warned.yaml: --tempo is from 5.8 to 36.25 bars a minute in Slow Foxtrot; here is 36.3',
      '',
    ])
  })

  test('takes every tempo of the dance, its ends included', async () => {
    for (const tempo of ['5.8', '36.25']) expect((await called('chart', demo, '--tempo', tempo)).status).toBe(0)
    for (const tempo of ['5.79', '36.26']) expect((await called('chart', demo, '--tempo', tempo)).status).toBe(2)
  })

  test('says in one line that a fault changes nothing, charts it, and ends with 0', async () => {
    const [asked, plan] = [await called('chart', demo, '--performance', 'no-change'), await called('chart', demo)]
    expect([asked.status, asked.err]).toEqual([
      0,
      `${demo}: “No change of weight” changes nothing in this figure (warning)\n`,
    ])
    expect(asked.out.split('\n').slice(1)).toEqual(plan.out.split('\n').slice(1))
    const nothing = await called('chart', demo, '--performance', 'late', '--amount', '0')
    expect([nothing.status, nothing.err]).toEqual([0, expect.stringMatching(/^\S+ “Late.*” changes nothing .*\n$/)])
  })

  test('makes a slip on the step that is asked for, and up for it as quickly as the tempo allows', async () => {
    const { out } = await called('chart', demo, '--performance', 'slip', '--steps', '2', '--as', 'json')
    const { rows, performance } = JSON.parse(out)
    expect(performance).toMatchObject({ kind: 'slip', by: 0.5, steps: [2] })
    const stageAt = (at: number) => rows.find(({ beat }: { beat: number }) => beat === at).stage
    expect([stageAt(1.5), stageAt(2)]).toEqual([
      'fully over the right foot, left passing',
      'late by ½ beat: fully over the right foot, left passing',
    ])
  })

  test('a figure with errors gives no chart but its problems, on stderr', async () => {
    const { status, out, err } = await called('chart', bad)
    expect([status, out]).toEqual([1, ''])
    expect(err.split('\n')).toHaveLength(3)
  })

  test('a file that cannot be read', async () => {
    expect(await called('chart', 'none')).toEqual({ status: 2, out: '', err: 'none: there is no such file\n' })
  })

  test('has rows as close as the figure’s own grid, unless told', async () => {
    const quarters = file(
      'quarters.yaml',
      ...HEAD,
      'dance: samba',
      'timing: 1 a 2',
      'actions: [side, cross behind, in place]',
    )
    const every = async (...args: string[]) =>
      JSON.parse((await called('chart', quarters, '--as', 'json', ...args)).out).every
    expect([await every(), await every('--every', '1/2'), await every('--every', '1/8')]).toEqual([0.25, 0.5, 0.125])
  })
})

describe('npm run figure', () => {
  const npm = (args: readonly string[], cwd: string) =>
    spawnSync('npm', ['--prefix', repository, 'run', '--silent', 'figure', '--', ...args], {
      ...{ cwd, encoding: 'utf8', shell: process.platform === 'win32' },
      // Not of the npm that runs this test.
      env: { ...process.env, INIT_CWD: undefined, npm_lifecycle_event: undefined },
    })

  test('checks files named from where one is, and passes the status on', { timeout: 60_000 }, () => {
    const good = npm(['check', demo], repository)
    expect([good.status, good.stdout, good.stderr]).toEqual([0, '', ''])
    const wrong = npm(['check', demo, bad], folder)
    expect([wrong.status, wrong.stderr]).toEqual([1, ''])
    expect(wrong.stdout).toMatch(/^bad\.yaml:5:8 value-unknown .*\nbad\.yaml:8:5 value-unknown .*\n$/)
  })

  test.skipIf(process.platform === 'win32')('a reader that closes early breaks nothing', { timeout: 60_000 }, () => {
    const entry = join(repository, 'src/cli/figure.mjs')
    // 200 KB, three times what a pipe holds, so that the rest meets a closed one.
    const many = Array.from({ length: 300 }, () => `"${join(folder, bad)}"`).join(' ')
    const { stdout, stderr } = spawnSync('sh', ['-c', `"${process.execPath}" "${entry}" check ${many} | head -n 1`], {
      encoding: 'utf8',
    })
    expect([stdout.split('\n').length, stderr]).toEqual([2, ''])
  })
})
