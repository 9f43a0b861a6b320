import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import Papa from 'papaparse'
import { afterAll, describe, expect, test } from 'vitest'
import { run, type Status } from '../../src/cli/run.ts'

const repository = fileURLToPath(new URL('../..', import.meta.url))
const demo = join(repository, 'figures-demo/01-three-walks-slow-quick-quick.figure.yaml')
const folder = mkdtempSync(join(tmpdir(), 'overfoot-cli-'))
afterAll(() => rmSync(folder, { recursive: true }))

function file(name: string, text: string): string {
  writeFileSync(join(folder, name), text)
  return join(folder, name)
}

const bad = file(
  'bad.figure.yaml',
  'overfoot: 2\ntitle: x\ndance: foxtrott\nrole: leader\nfirst foot: right\ntiming: S\nactions:\n  - forwrad\n',
)
const warned = file(
  'warned.figure.yaml',
  'overfoot: 2\ntitle: x\ndance: foxtrot\nrole: leader\nfirst foot: right\ntiming: S\ncolour: red\nactions: [forward]\n',
)

async function called(...args: readonly string[]): Promise<{ status: Status; out: string; err: string }> {
  let [out, err] = ['', '']
  const status = await run(args, {
    out: (text) => {
      out += `${text}\n`
    },
    err: (text) => {
      err += `${text}\n`
    },
  })
  return { status, out, err }
}

describe('figure check', () => {
  test('says nothing of good files and ends with 0', async () => {
    expect(await called('check', demo)).toEqual({ status: 0, out: '', err: '' })
  })

  test('has a line for each problem, of all files, and ends with 1', async () => {
    const { status, out } = await called('check', bad, demo, warned)
    expect(status).toBe(1)
    expect(out.trimEnd().split('\n')).toEqual([
      expect.stringMatching(/bad\.figure\.yaml:3:8 value-unknown “foxtrott” .*Did you mean “foxtrot”\?/),
      expect.stringMatching(/bad\.figure\.yaml:8:5 value-unknown action 1: “forwrad” /),
      expect.stringMatching(/warned\.figure\.yaml:7:1 key-unknown .*\(warning\)$/),
    ])
  })

  test('warnings alone end with 0', async () => {
    expect((await called('check', warned)).status).toBe(0)
  })

  test('goes on after a file that cannot be read, and ends with 2', async () => {
    const { status, out, err } = await called('check', join(folder, 'none'), folder, bad)
    expect(status).toBe(2)
    expect(err).toMatch(/none: cannot be read/)
    expect(out).toMatch(/foxtrott/)
  })

  test('refuses a large file without reading the whole of it', async () => {
    const large = file('large.figure.yaml', `overfoot: 2\n#${'x'.repeat(1_000_000)}`)
    expect((await called('check', large)).out).toMatch(/:1:1 too-large /)
  })

  test('a file’s name cannot move the cursor', async () => {
    const { err } = await called('check', 'a\u001b[2Jb')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: that is what must not be there
    expect(err).not.toMatch(/\u001b/)
  })
})

describe('figure, called wrongly', () => {
  test.each([
    [[], /check or chart; here is nothing/],
    [['cheque'], /here is "cheque"/],
    [['check'], /at least one file/],
    [['check', 'x', '--as', 'csv'], /no options/],
    [['chart'], /wants a file/],
    [['chart', 'a', 'b'], /takes one file/],
    [['chart', 'a', '--as', 'xml'], /table, csv, json; here is "xml"/],
    [['chart', 'a', '--late', '2'], /--late is a fraction/],
    [['chart', 'a', '--early-part', '0'], /--early-part is a fraction/],
    [['chart', 'a', '--every', '1/3'], /--every is one of/],
    [['chart', 'a', '--timing', '0'], /--timing is the number/],
    [['chart', 'a', '--tempo', '30'], /--tempo is no option/],
  ])('%j', async (args, says) => {
    const { status, out, err } = await called(...args)
    expect([status, out]).toEqual([2, ''])
    expect(err).toMatch(says)
    expect(err).toMatch(/figure check FILES/)
  })

  test('says all that is wrong at once', async () => {
    const { err } = await called('chart', 'a', '--as', 'xml', '--every', '1/3', '--late', 'x')
    expect(err.match(/^--/gm)).toHaveLength(3)
  })

  test('a timing that the figure does not have', async () => {
    expect(await called('chart', demo, '--timing', '2')).toMatchObject({ status: 2, out: '' })
  })
})

describe('figure chart', () => {
  test('a table of S Q Q at half beats', async () => {
    const { status, out } = await called('chart', demo)
    expect(status).toBe(0)
    await expect(out).toMatchFileSnapshot('threeWalks.chart.txt')
  })

  test('CSV by RFC 4180, read back by another reader', async () => {
    const { out } = await called(
      'chart',
      demo,
      '--as',
      'csv',
      '--performance',
      'late',
      '--late',
      '1/4',
      '--every',
      '1/4',
    )
    const { data, errors } = Papa.parse<Record<string, string>>(out, { header: true, skipEmptyLines: true })
    expect(errors).toEqual([])
    // S Q Q, a quarter late: from −½ + ¼ to 3½ + ¼.
    expect(data.map(({ beat }) => Number(beat))).toEqual(Array.from({ length: 17 }, (_, k) => -0.25 + k / 4))
    expect(out.split('\r\n')).toHaveLength(data.length + 2)
    for (const row of data) {
      expect(Number(row['left load']) + Number(row['right load'])).toBeCloseTo(1, 3)
      expect(Object.values(row)).not.toContain('-0')
    }
    // On the count of a quick a dancer in time is half way; late by ¼ he is there a quarter beat after it.
    expect(data.find(({ beat }) => beat === '2.25')).toMatchObject({ progress: '1.5', action: '2', sign: 'Q' })
  })

  test('JSON with its units, finite numbers and never −0', async () => {
    const { out } = await called('chart', demo, '--as', 'json', '--performance', 'early', '--early-part', '1/2')
    const chart = JSON.parse(out)
    expect(chart).toMatchObject({
      chart: 1,
      dance: 'foxtrot',
      role: 'leader',
      units: { x: 'm', heading: expect.any(String) },
    })
    // Too soon onto a slow: across in half its time, on the & after its count.
    expect(chart.rows.find(({ beat }: { beat: number }) => beat === 0.5)).toMatchObject({
      progress: 1,
      right: { load: 1, onFloor: true },
      says: 'RF forward',
    })
    expect(out).not.toMatch(/-0[,\n]|null|NaN/)
  })

  test('has the tracks of a figure that has them', async () => {
    const tracks = file(
      'tracks.figure.yaml',
      'overfoot: 2\ntitle: x\ndance: waltz\nrole: leader\nfirst foot: right\ntiming: 1 2 3\nactions: [forward, side, close]\n' +
        'rise and fall: [{ at: 1 &, to: down }, { at: 3, to: up }]\nsway: [{ at: 2, to: right }]\n',
    )
    const { rows } = JSON.parse((await called('chart', tracks, '--as', 'json')).out)
    const at = (beat: number) => rows.find((row: { beat: number }) => row.beat === beat)
    expect([at(0.5).rise, at(2).rise, at(0).sway, at(0).bodyTurn]).toEqual([0, 1, 1, undefined])
  })
})

describe('npm run figure', () => {
  const npm = (...args: readonly string[]) =>
    spawnSync('npm', ['run', '--silent', 'figure', '--', ...args], { cwd: repository, encoding: 'utf8' })

  test('checks files by their real names and passes the status on', { timeout: 60_000 }, () => {
    const { status, stdout, stderr } = npm('check', demo, bad)
    expect([status, stderr]).toEqual([1, ''])
    expect(stdout.trimEnd().split('\n')).toHaveLength(2)
    expect(stdout).toContain(`${bad}:3:8 value-unknown`)
  })
})
