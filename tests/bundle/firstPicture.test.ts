import { describe, expect, it } from 'vitest'
import { firstPicture } from './firstPicture.mjs'

const manifest = {
  'index.html': {
    file: 'assets/index.js',
    isEntry: true,
    imports: ['_react.js'],
    dynamicImports: ['stage/stage.ts', 'stage/canvasRenderer.ts', 'export/clip.ts'],
  },
  '_react.js': { file: 'assets/react.js' },
  'stage/stage.ts': { file: 'assets/stage.js', imports: ['_pixi.js', 'index.html'], dynamicImports: ['stage/foot.ts'] },
  'stage/foot.ts': { file: 'assets/foot.js' },
  'stage/canvasRenderer.ts': { file: 'assets/canvas.js', imports: ['_pixi.js'] },
  '_pixi.js': { file: 'assets/pixi.js' },
  'export/clip.ts': { file: 'assets/clip.js' },
  'icon.svg': { file: 'assets/icon.svg' },
}

describe('firstPicture(manifest)', () => {
  it('follows imports and the lazy stage, not the canvas stage and other lazy parts, and counts a file once', () => {
    expect(firstPicture(manifest)).toEqual(
      ['foot', 'index', 'pixi', 'react', 'stage'].map((name) => `assets/${name}.js`),
    )
  })

  it('throws when there is no single entry or a chunk is missing', () => {
    expect(() => firstPicture({})).toThrow('one entry expected, got 0')
    expect(() => firstPicture({ a: { file: 'a.js', isEntry: true, imports: ['b'] } })).toThrow('"b"')
  })
})
