import { describe, expect, it } from 'vitest'
import { checkArchitecture } from './tools/checkArchitecture.ts'
import { AUDIO_FILE, GSAP_FILE, LAST_CORE_LAYER, LAYERS, LINE_LIMIT } from './tools/layers.ts'
import { readSources } from './tools/readSources.ts'
import { scanModule } from './tools/scanModule.ts'

const CODE = /\.(tsx?|mjs)$/

describe('the repository', () => {
  it('keeps the order of its layers', async () => {
    const sources = await readSources('src', CODE)
    expect(Object.keys(sources)).toContain('src/serve/serve.mjs')
    expect(checkArchitecture(sources)).toEqual([])
  })

  it(`has no file over ${LINE_LIMIT} lines, tests and styles included`, async () => {
    const sources = { ...(await readSources('src', /\.css$/)), ...(await readSources('tests', CODE)) }
    expect(Object.keys(sources)).toContain('tests/architecture.test.ts')
    const long = Object.entries(sources).filter(([, text]) => text.split('\n').length - 1 > LINE_LIMIT)
    expect(long.map(([file]) => file)).toEqual([])
  })

  it('compiles every core layer without the DOM library', async () => {
    const { 'tsconfig.core.json': text = '' } = await readSources('.', /^tsconfig\.core\.json$/)
    const { include, exclude } = JSON.parse(text.replace(/^\s*\/\/.*$/gm, '')) as Record<string, string[]>
    const core = LAYERS.slice(0, LAYERS.indexOf(LAST_CORE_LAYER) + 1)
    expect(include?.map((path) => path.replace(/^src\/|\.ts$/g, ''))).toEqual(core)
    expect(exclude).toEqual([GSAP_FILE, AUDIO_FILE])
  })
})

/** The complaints about one small file. */
const check = (file: string, source: string) => checkArchitecture({ [file]: source })

describe('checkArchitecture(sources)', () => {
  it.each([
    [
      'src/pose/footAt.ts',
      "import { x } from '../timing/x.ts'\nimport { y } from './y.ts'\nexport const footAt = x + y",
    ],
    ['src/player.ts', "import { createStage } from './stage/stage.ts'\nexport const createPlayer = createStage"],
    [
      'src/ui/App.tsx',
      "import { useState } from 'react'\nimport '../app.css'\nexport const App = () => <p>{useState}</p>",
    ],
    ['src/main.tsx', "import { createRoot } from 'react-dom/client'\nvoid createRoot\nvoid import('./stage/stage.ts')"],
    [
      'src/stage/stage.ts',
      "import 'pixi.js/unsafe-eval'\nimport type { S } from '../scene/s.ts'\nexport type Stage = S",
    ],
    ['src/figure/parse.ts', "import { parseDocument } from 'yaml'\nexport const parseFigure = parseDocument"],
    [GSAP_FILE, "import gsap from 'gsap'\nexport const gsapDriver = gsap"],
    [
      'src/cli/chart.ts',
      "import { argv } from 'node:process'\nimport { w } from '../words/w.ts'\nexport const chart = [argv, w]",
    ],
    [
      'src/serve/p.ts',
      "import type { Plugin } from 'vite'\nimport { f } from '../figure/f.ts'\nexport const p = f as Plugin",
    ],
    ['src/timing/grid.ts', "// import { x } from 'pixi.js'\nexport const grid = \"import('pixi.js')\""],
  ])('has nothing against %s when it is in order', (file, source) => {
    expect(check(file, source)).toEqual([])
  })

  it.each([
    [
      'a later layer',
      'src/pose/a.ts',
      "import { b } from '../scene/b.ts'\nexport const a = b",
      'a.ts:1: imports "../scene/b.ts": scene comes after pose',
    ],
    [
      'a later layer, only its type',
      'src/pose/a.ts',
      "\nimport type { B } from '../scene/b.ts'\nexport type A = B",
      'a.ts:2: imports',
    ],
    [
      'a later layer, by an import type',
      'src/pose/a.ts',
      "export type A = import('../scene/b.ts').B",
      'scene comes after pose',
    ],
    ['a later layer, lazily', 'src/pose/a.ts', "export const a = () => import('../ui/b.ts')", 'ui comes after pose'],
    [
      'a later top-level file',
      'src/stage/a.ts',
      "import { p } from '../player.ts'\nexport const a = p",
      'draws a scene',
    ],
    [
      'a figure in the stage',
      'src/stage/a.ts',
      "import { p } from '../figure/p.ts'\nexport const a = p",
      'draws a scene',
    ],
    [
      'the clock in the command line',
      'src/cli/a.ts',
      "import { c } from '../clock/c.ts'\nexport const a = c",
      'up to words',
    ],
    ['the stage in serve', 'src/serve/a.ts', "import { c } from '../stage/c.ts'\nexport const a = c", 'build time'],
    ['serve in the page', 'src/main.tsx', "import { s } from './serve/s.mjs'\nvoid s", 'nobody imports it'],
    ['main', 'src/ui/A.tsx', "import { m } from '../main.tsx'\nexport const A = m", 'nobody imports it'],
    [
      'pixi outside the stage',
      'src/ui/A.tsx',
      "import { Container } from 'pixi.js'\nexport const A = Container",
      'only stage may import pixi.js',
    ],
    [
      'a subpath of pixi',
      'src/player.ts',
      "import 'pixi.js/graphics'\nexport const player = 1",
      'only stage may import pixi.js',
    ],
    [
      'react outside ui',
      'src/stage/a.ts',
      "import { useState } from 'react'\nexport const a = useState",
      'only ui, main may import react',
    ],
    [
      'gsap in another file',
      'src/clock/a.ts',
      "import gsap from 'gsap'\nexport const a = gsap",
      `only ${GSAP_FILE} may import gsap`,
    ],
    [
      'the gsap file in the core',
      'src/session/a.ts',
      "import { gsapDriver } from '../clock/gsapDriver.ts'\nexport const a = gsapDriver",
      'must not reach gsap',
    ],
    [
      'yaml outside figure',
      'src/dance/a.ts',
      "import { parse } from 'yaml'\nexport const a = parse",
      'only figure may import yaml',
    ],
    [
      'valibot outside figure',
      'src/session/a.ts',
      "import * as v from 'valibot'\nexport const a = v",
      'only figure may import valibot',
    ],
    [
      'Node in the page',
      'src/keep/a.ts',
      "import 'node:fs'\nexport const a = 1",
      'only install, serve, cli may import node:',
    ],
    [
      'a package nobody listed',
      'src/timing/a.ts',
      "import { line } from 'd3-shape'\nexport const a = line",
      'not in the list',
    ],
    ['an import without its ending', 'src/pose/a.ts', "import { b } from './b'\nexport const a = b", 'ends in .ts'],
    ['a file outside src', 'src/pose/a.ts', "import { b } from '../../tests/b.ts'\nexport const a = b", 'outside src'],
    ['a style in the core', 'src/words/a.ts', "import './a.css'\nexport const a = 1", 'only ui and main bring styles'],
    ['a re-export', 'src/pose/a.ts', "export { a } from './b.ts'", 'no re-exports'],
    ['a re-export of everything', 'src/pose/a.ts', "export * from './b.ts'\nexport const a = 1", 'no re-exports'],
    ['a default export', 'src/pose/a.ts', 'export default function a() {}\nexport type A = 1', 'a default export'],
    [
      'a default export by renaming',
      'src/pose/a.ts',
      'export const a = 1\nexport { a as default }',
      'a default export',
    ],
    ['an index file', 'src/pose/index.ts', 'export const index = 1', 'an index file'],
    [
      'a file that is named after nothing',
      'src/pose/utils.ts',
      'export const turn = 1',
      'not named after one of its exports (turn)',
    ],
    ['a folder that is no layer', 'src/helpers/a.ts', 'export const a = 1', '"helpers" is not a layer'],
    ['a top-level file that is no layer', 'src/helper.ts', 'export const helper = 1', '"helper" is not a layer'],
    ['a file that is too long', 'src/pose/a.ts', `export const a = 1\n${'// line\n'.repeat(LINE_LIMIT)}`, '351 lines'],
  ])('refuses %s', (_what, file, source, complaint) => {
    const found = check(file, source)
    expect(found).toHaveLength(1)
    expect(found[0]).toContain(complaint)
  })

  it('gives all complaints of all files', () => {
    const bad = {
      'src/pose/a.ts': "import 'pixi.js'\nimport 'react'\nexport const a = 1",
      'src/pose/b.ts': "import 'yaml'\nexport const b = 1",
    }
    expect(checkArchitecture(bad)).toHaveLength(3)
  })
})

describe('scanModule(file, source)', () => {
  it('throws on an import() that nothing could check, and on what is no module', () => {
    expect(() => scanModule('src/a.ts', 'export const a = (b: string) => import(b)')).toThrow('plain string')
    expect(() => scanModule('src/a.ts', 'export const = 1')).toThrow('src/a.ts')
  })

  it('is not led astray by quotes between JSX tags', () => {
    const { imports } = scanModule('src/a.tsx', "export const A = () => <p>don't</p>\nvoid import('./b.ts')")
    expect(imports).toEqual([{ specifier: './b.ts', line: 2, reExport: false }])
  })
})
