import { describe, expect, it } from 'vitest'
import { firstPicture } from './firstPicture.mjs'

const manifest = {
  'index.html': {
    file: 'assets/index.js',
    isEntry: true,
    imports: ['_react.js'],
    dynamicImports: ['stage/stage.ts', 'ui/mountPage.tsx', 'stage/canvasRenderer.ts', 'export/clip.ts'],
  },
  '_react.js': { file: 'assets/react.js' },
  'stage/stage.ts': { file: 'assets/stage.js', imports: ['_pixi.js', 'index.html'], dynamicImports: ['stage/foot.ts'] },
  'stage/earlyContext.ts': { file: 'assets/early.js', isEntry: true },
  'ui/mountPage.tsx': { file: 'assets/page.js', imports: ['_react.js'] },
  'stage/foot.ts': { file: 'assets/foot.js' },
  'stage/canvasRenderer.ts': { file: 'assets/canvas.js', imports: ['_pixi.js'] },
  '_pixi.js': { file: 'assets/pixi.js' },
  'export/clip.ts': { file: 'assets/clip.js' },
  'icon.svg': { file: 'assets/icon.svg' },
}

describe('firstPicture(manifest)', () => {
  it('follows imports, the early script, the lazy stage and page, not the canvas stage and other lazy parts, and counts a file once', () => {
    expect(firstPicture(manifest)).toEqual(
      ['early', 'foot', 'index', 'page', 'pixi', 'react', 'stage'].map((name) => `assets/${name}.js`),
    )
  })

  it('throws when there is no single entry or a chunk is missing', () => {
    expect(() => firstPicture({})).toThrow('one entry expected, got 0')
    expect(() => firstPicture({ a: { file: 'a.js', isEntry: true, imports: ['b'] } })).toThrow('"b"')
  })
})
