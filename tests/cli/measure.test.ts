import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import Papa from 'papaparse'
import { describe, expect, test } from 'vitest'
import { run, type Status } from '../../src/cli/run.ts'
import { bodyWithFeet } from '../../src/pose/body.ts'
import { layOutFloor } from '../../src/pose/floor.ts'
import { pose } from '../../src/pose/pose.ts'
import { schedule } from '../../src/timing/schedule.ts'
import { faults } from '../../src/transfer/faults.ts'
import { perform } from '../../src/transfer/perform.ts'
import { share } from '../../src/units.ts'
import { demos } from '../tools/demos.ts'

const demoFile = (name: string): string =>
  fileURLToPath(new URL(`../../figures-demo/${name}.figure.yaml`, import.meta.url))
const walks = demoFile('01-three-walks-slow-quick-quick')
const quickRun = demoFile('23-quick-run')
const chasse = demoFile('07-waltz-chasse')
const held = demoFile('05-walk-and-tap')

async function measured(
  file: string,
  ...args: readonly string[]
): Promise<{ status: Status; out: string; err: string }> {
  let [out, err] = ['', '']
  const status = await run(['measure', basename(file), ...args], {
    folder: dirname(file),
    out: (text) => {
      out += text
    },
    err: (text) => {
      err += text
    },
  })
  return { status, out, err }
}

/** By another reader than our own. */
function readCsv(text: string): Record<string, string>[] {
  const { data, errors } = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true })
  expect(errors).toEqual([])
  expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
  return data
}
const csvOf = async (file: string, ...args: string[]) => readCsv((await measured(file, '--as', 'csv', ...args)).out)
const jsonOf = async (file: string, ...args: string[]) =>
  JSON.parse((await measured(file, '--as', 'json', ...args)).out)

describe('run(measure …), as a table', () => {
  test('demo 01, early', async () => {
    const { status, out, err } = await measured(walks, '--performance', 'early')
    expect([status, err]).toEqual([0, ''])
    await expect(out).toMatchFileSnapshot('threeWalks.early.measure.txt')
  })

  test('demo 23, a slip on step 2, at half the tempo', async () => {
    const { status, out, err } = await measured(quickRun, '--performance', 'slip', '--steps', '2', '--tempo', '25')
    expect([status, err]).toEqual([0, ''])
    await expect(out).toMatchFileSnapshot('quickRun.slip.measure.txt')
  })

  test('the first line is the sentence, and nothing is wrong with who is in time', async () => {
    const { out } = await measured(walks)
    expect(out.split('\n').slice(0, 2)).toEqual([
      'In time throughout.',
      'Three walks, slow quick quick: In time, at 29 bars a minute',
    ])
    expect(out).toMatch(/\nno waits, no rushes\n/)
  })

  test('all: a block for each kind that changes something in the figure, in the order of the faults', async () => {
    const { status, out, err } = await measured(walks, '--performance', 'all')
    expect([status, err]).toEqual([0, ''])
    const blocks = out.split('\n\n\n')
    const json = await jsonOf(walks, '--performance', 'all')
    expect(blocks.map((block) => block.split('\n')[0])).toEqual(
      json.performances.map(({ says }: { says: string }) => says),
    )
  })
})

/** From the published descriptions, apart from our own code: see `tests/transfer/smoothness.test.ts` for the sources. */
function smoothnessOf(speed: readonly number[], hertz: number): { sparc: number; ldlj: number; peakOverMean: number } {
  const [n, peak, dt] = [speed.length, Math.max(...speed), 1 / hertz]
  const jerk = speed.slice(1, -1).map((v, k) => ((speed[k + 2] as number) - 2 * v + (speed[k] as number)) / dt ** 2)
  const integral = jerk.reduce((sum, j) => sum + j * j * dt, 0)
  const padded = 2 ** (Math.ceil(Math.log2(n)) + 4)
  const spectrum: { f: number; size: number }[] = []
  for (let k = 0; (k * hertz) / padded <= 10; k++) {
    const real = speed.reduce((sum, v, j) => sum + v * Math.cos((2 * Math.PI * j * k) / padded), 0)
    const imaginary = speed.reduce((sum, v, j) => sum - v * Math.sin((2 * Math.PI * j * k) / padded), 0)
    spectrum.push({ f: (k * hertz) / padded, size: Math.hypot(real, imaginary) })
  }
  const highest = Math.max(...spectrum.map(({ size }) => size))
  const kept = spectrum.slice(0, spectrum.findLastIndex(({ size }) => size / highest >= 0.05) + 1)
  const span = kept.at(-1)?.f as number
  const arc = kept.slice(1).map(({ f, size }, k) => {
    const before = kept[k] as (typeof kept)[number]
    return Math.hypot((f - before.f) / span, (size - before.size) / highest)
  })
  const way = speed.slice(1).reduce((sum, v, k) => sum + ((v + (speed[k] as number)) / 2) * dt, 0)
  return {
    sparc: -arc.reduce((sum, one) => sum + one, 0),
    ldlj: -Math.log(((n * dt) ** 3 / peak ** 2) * integral),
    peakOverMean: (peak * (n - 1) * dt) / way,
  }
}

describe('run(measure …), in numbers', () => {
  /** Foxtrot at 29 bars of four beats. */
  const MILLISECONDS = 60_000 / (29 * 4)

  test('demo 01, early, as reckoned by hand', async () => {
    // Split on the count, S Q Q: each step begins half a beat before its count; across in half of its time.
    const by: [string, number, number][] = [
      ['leaves', -0.5, -0.5],
      ['split', 0.5, 0],
      ['full', 1.5, 0.5],
      ['leaves', 1.5, 1.5],
      ['split', 2, 1.75],
      ['full', 2.5, 2],
      ['leaves', 2.5, 2.5],
      ['split', 3, 2.75],
      ['full', 3.5, 3],
    ]
    const [json, csv] = [await jsonOf(walks, '--performance', 'early'), await csvOf(walks, '--performance', 'early')]
    const [{ moments, waits, rushes }] = json.performances
    expect(moments).toEqual(
      by.map(([moment, planned, danced], k) => ({
        ...{ action: Math.floor(k / 3) + 1, sign: k < 3 ? 'S' : 'Q', moment, planned, danced },
        ...{ beats: danced - planned, milliseconds: expect.closeTo((danced - planned) * MILLISECONDS, 3) },
      })),
    )
    expect(waits).toMatchObject([
      { from: 0.5, to: 1.5, beats: 1, milliseconds: expect.closeTo(MILLISECONDS, 3) },
      { from: 2, to: 2.5, beats: 0.5, milliseconds: expect.closeTo(MILLISECONDS / 2, 3) },
    ])
    expect(rushes).toMatchObject([
      { from: -0.5, to: 0.5 },
      { from: 1.5, to: 2 },
      { from: 2.5, to: 3 },
    ])
    const column = (name: string) => csv.map((row) => Number(row[name]))
    expect(column('late beats')).toEqual(by.map(([, planned, danced]) => danced - planned))
    // A wait stands with the moment after which it begins, a rush with the one with which it does.
    expect(column('then waits beats')).toEqual([0, 0, 1, 0, 0, 0.5, 0, 0, 0])
    expect(column('then rushes beats')).toEqual([1, 0, 0, 0.5, 0, 0, 0.5, 0, 0])
  })

  test('demo 01, early: smoothness as computed apart from this program, from the weight’s path', async () => {
    const [figure] = demos
    if (figure === undefined) throw new Error('no demos')
    const { curve, carried } = perform(schedule(figure), { kind: 'early', part: share(0.5) })
    const floor = layOutFloor(figure, carried, [null, null, null], bodyWithFeet(1))
    const weightAt = (second: number) => pose(floor, curve.at(curve.from + (second * 1000) / MILLISECONDS)).weight
    // Three and a half beats take 1.81 s: 182 hundredths and the first.
    const speed = Array.from({ length: 183 }, (_, k) => {
      const steps = Array.from({ length: 5 }, (_, j) => weightAt(k / 100 + (j - 2) * 2e-5))
      const along = (axis: 'x' | 'y') => {
        const [a, b, , d, e] = steps.map((place) => place[axis]) as [number, number, number, number, number]
        return (a - 8 * b + 8 * d - e) / (12 * 2e-5)
      }
      return Math.hypot(along('x'), along('y'))
    })
    const apart = smoothnessOf(speed, 100)
    const [{ smoothness }] = (await jsonOf(walks, '--performance', 'early')).performances
    // Three decimals, for a speed is taken over a thousandth of a second here and over less there.
    expect(smoothness.sparc).toBeCloseTo(apart.sparc, 3)
    expect(smoothness.ldlj).toBeCloseTo(apart.ldlj, 2)
    expect(smoothness.peakOverMean).toBeCloseTo(apart.peakOverMean, 3)
    const [first] = await csvOf(walks, '--performance', 'early')
    expect([first?.SPARC, first?.LDLJ, first?.['peak over mean']].map(Number)).toEqual([
      ...[smoothness.sparc, smoothness.ldlj, smoothness.peakOverMean],
    ])
  })

  test('half the tempo doubles the milliseconds and leaves the beats', async () => {
    const [full, half] = [
      await jsonOf(walks, '--performance', 'late'),
      await jsonOf(walks, '--performance', 'late', '--tempo', '14.5'),
    ]
    const [a, b] = [full, half].map(({ performances: [{ moments }] }) => moments)
    expect(b.map(({ beats }: { beats: number }) => beats)).toEqual(a.map(({ beats }: { beats: number }) => beats))
    expect(b[0].milliseconds).toBeCloseTo(2 * a[0].milliseconds, 3)
    expect([full.barsPerMinute, half.barsPerMinute]).toEqual([29, 14.5])
  })

  test('demo 23, a slip on step 2: what is left of it, as reckoned by hand from the shortest time', async () => {
    const late = async (...args: string[]): Promise<number[]> => {
      const [{ moments }] = (await jsonOf(quickRun, '--performance', 'slip', '--steps', '2', ...args)).performances
      return moments.flatMap(({ moment, beats }: { moment: string; beats: number }) =>
        moment === 'full' ? [beats] : [],
      )
    }
    // 51 bars of four beats: a beat lasts 0.294 s, less than 0.42 s, so nothing is made up for.
    expect(await late()).toEqual([0, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5])
    // 20 bars: 0.42 s are 0.56 of a beat, so step 2 goes from 1 to 1.56, and step 3 is in time.
    expect(await late('--tempo', '20')).toEqual([0, 0.06, 0, 0, 0, 0, 0, 0])
    // 0.25 s at 51 bars are 0.85 of a beat: 0.15 are gained each step.
    expect(await late('--shortest', '0.25')).toEqual([0, 0.35, 0.2, 0.05, 0, 0, 0, 0])
  })

  test('who stops on the way is less smooth than the plan by SPARC', async () => {
    const sparc = async (...args: string[]) => (await jsonOf(walks, ...args)).performances[0].smoothness.sparc
    const plan = await sparc()
    for (const kind of ['early', 'stops', 'foot-first']) expect(await sparc('--performance', kind)).toBeLessThan(plan)
  })
})

describe('run(measure …), all', () => {
  test.each([walks, chasse, quickRun, held])(
    '%s: a row or an entry for each kind that changes something',
    async (file) => {
      const json = await jsonOf(file, '--performance', 'all')
      const csv = await csvOf(file, '--performance', 'all')
      const shown = new Set<string>(csv.map(({ kind }) => kind ?? ''))
      expect(csv.map(({ kind }) => kind)).toEqual(faults.map(({ kind }) => kind).filter((kind) => shown.has(kind)))
      expect(json.performances.map(({ kind }: { kind: string }) => kind)).toEqual([...shown])
      for (const { kind } of faults) {
        const { err } = await measured(file, '--performance', kind.replace(' ', '-'))
        expect([kind, err.includes('changes nothing')]).toEqual([kind, !shown.has(kind)])
      }
    },
  )

  test('says the same of each as when it is asked for alone', async () => {
    const all = await jsonOf(chasse, '--performance', 'all')
    for (const one of all.performances) {
      const alone = await jsonOf(chasse, '--performance', one.kind.replace(' ', '-'))
      expect(alone.performances).toEqual([one])
    }
    const csv = await csvOf(chasse, '--performance', 'all')
    expect(csv.map(({ says, name }) => ({ says, name }))).toEqual(
      all.performances.map(({ says, name }: { says: string; name: string }) => ({ says, name })),
    )
  })

  test('takes its amounts of late and early', async () => {
    const csv = await csvOf(walks, '--performance', 'all', '--late', '1/4', '--early-part', '3/4')
    const most = (kind: string) => Number(csv.find((row) => row.kind === kind)?.['most late beats'])
    // The slow takes two beats: in three quarters of it, half a beat too soon.
    expect([most('late'), most('early')]).toEqual([0.25, -0.5])
  })
})

describe('run(measure …), as JSON', () => {
  test('names its units, figure and performance, and explains every number', async () => {
    const json = await jsonOf(walks, '--performance', 'stops', '--steps', '1,3')
    expect(json).toMatchObject({
      overfoot: 'measure 1',
      figure: { title: 'Three walks, slow quick quick', dance: 'foxtrot', role: 'leader', timing: 'S Q Q' },
      barsPerMinute: 29,
      shortest: 0.42,
      performances: [{ kind: 'stops', steps: [1, 3], name: expect.stringContaining('steps 1 and 3') }],
    })
    const numbers = new Set<string>()
    JSON.stringify(json.performances, (key, value) => {
      if (typeof value === 'number' && !/^\d+$/.test(key)) numbers.add(key)
      return value
    })
    expect([...numbers].filter((key) => key !== 'action' && !Object.hasOwn(json.units, key))).toEqual([])
  })

  test('has no key, and the table and CSV no column, that the README does not explain', async () => {
    const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8')
    const { units, ...json } = await jsonOf(walks, '--performance', 'early', '--steps', '1')
    const keys = new Set<string>()
    JSON.stringify(json, (key, value) => {
      if (!/^\d*$/.test(key)) keys.add(key)
      return value
    })
    expect(Object.keys(units).length).toBeGreaterThan(0)
    expect([...keys].filter((key) => !readme.includes(`\`${key}\``))).toEqual([])
    const [moment] = await csvOf(walks, '--performance', 'early')
    const [whole] = await csvOf(walks, '--performance', 'all')
    const columns = Object.keys({ ...moment, ...whole })
    expect(columns.filter((name) => !readme.includes(`\`${name}\``))).toEqual([])
  })
})

test('run(measure …) says that a fault changes nothing, measures it, and ends with 0', async () => {
  const { status, out, err } = await measured(walks, '--performance', 'misplaced')
  expect([status, err]).toEqual([
    0,
    '01-three-walks-slow-quick-quick.figure.yaml: “Split beat misplaced” changes nothing in this figure (warning)\n',
  ])
  expect(out.split('\n')[0]).toBe('In time throughout.')
})

test('run(measure …): every demo in every way has finite numbers, and a last line break', {
  timeout: 60_000,
}, async () => {
  for (const [k, { id }] of demos.entries()) {
    const form = ['table', 'csv', 'json'][k % 3] as string
    const { out } = await measured(demoFile(id), '--performance', 'all', '--as', form)
    expect(out).not.toMatch(/NaN|Infinity|null|undefined|(^|[\s,:])-0(\.0*)?($|[\s,])/m)
    expect(out.endsWith('\n')).toBe(true)
  }
})

test('run(measure …): where nothing moves, no smoothness is told', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'overfoot-measure-'))
  const file = join(folder, 'still.yaml')
  writeFileSync(
    file,
    [
      'overfoot: 2',
      'title: x',
      'role: leader',
      'first foot: right',
      'dance: foxtrot',
      'timing: S',
      'actions: [hold]',
    ].join('\n'),
  )
  try {
    expect((await jsonOf(file)).performances[0].smoothness).toBeNull()
    expect((await csvOf(file))[0]).toMatchObject({ SPARC: '', LDLJ: '', 'peak over mean': '' })
    expect((await measured(file)).out).toMatch(/too little movement to tell how smooth it is\n$/)
  } finally {
    rmSync(folder, { recursive: true })
  }
})
