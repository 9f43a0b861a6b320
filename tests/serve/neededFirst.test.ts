import { describe, expect, it } from 'vitest'
import { neededFirst } from '../../src/serve/neededFirst.ts'

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
}
const first = (id: string) => neededFirst(id, (one) => ({ importers: importers[one] ?? [] }))

describe('neededFirst(id, moduleOf)', () => {
  it('is so for the entry, the stage and all that they import, at whatever remove', () => {
    for (const id of ['main.tsx', 'stage/stage.ts', 'player.ts', 'scene/view.ts', 'pose/floor.ts'])
      expect(first(`/r/src/${id}`)).toBe(true)
  })

  it('is not so for what only later parts import, in circles too, and for what nobody knows', () => {
    for (const id of ['ui/mountPage.tsx', 'words/labels.ts', 'words/listed.ts'])
      expect(first(`/r/src/${id}`)).toBe(false)
    expect(neededFirst('/r/src/a.ts', () => null)).toBe(false)
  })
})
