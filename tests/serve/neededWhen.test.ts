import { describe, expect, it } from 'vitest'
import { neededWhen } from '../../src/serve/neededWhen.ts'

/** Who imports whom. */
const importers: Readonly<Record<string, readonly string[]>> = {
  '/r/src/main.tsx': [],
  '/r/src/stage/stage.ts': [],
  '/r/src/ui/mountPage.tsx': [],
  '/r/src/scene/view.ts': ['/r/src/pose/floor.ts', '/r/src/player.ts'],
  '/r/src/player.ts': ['/r/src/main.tsx'],
  // A circle, which no one of the first enters.
  '/r/src/pose/floor.ts': ['/r/src/scene/view.ts', '/r/src/words/labels.ts'],
  '/r/src/words/labels.ts': ['/r/src/ui/mountPage.tsx', '/r/src/words/listed.ts'],
  '/r/src/words/listed.ts': ['/r/src/words/labels.ts'],
  '/r/src/keep/link.ts': ['/r/src/keep/viewOfLink.ts'],
}
const when = (id: string) => neededWhen(id, (one) => ({ importers: importers[one] ?? [] }))

describe('neededWhen(id, moduleOf)', () => {
  it('first: the entry, the stage and all that they import, at whatever remove', () => {
    for (const id of ['main.tsx', 'stage/stage.ts', 'player.ts', 'scene/view.ts', 'pose/floor.ts'])
      expect(when(`/r/src/${id}`)).toBe('first')
  })

  it('then what the page imports besides, in circles too; later what nobody of them does', () => {
    for (const id of ['ui/mountPage.tsx', 'words/labels.ts', 'words/listed.ts'])
      expect(when(`/r/src/${id}`)).toBe('page')
    for (const id of ['keep/link.ts', 'export/wavFile.ts']) expect(when(`/r/src/${id}`)).toBe('later')
    expect(neededWhen('/r/src/a.ts', () => null)).toBe('later')
  })
})
