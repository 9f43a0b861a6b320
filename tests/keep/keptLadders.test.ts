import { describe, expect, test } from 'vitest'
import { dances } from '../../src/dance/dances.ts'
import { keptLadders, type Shelf } from '../../src/keep/keptLadders.ts'
import { newLadder, remembered, restored, up } from '../../src/session/ladder.ts'

const foxtrot = remembered(up(newLadder(dances.foxtrot)))

function shelfWith(text: string | null): Shelf & { text: string | null } {
  return {
    text,
    getItem() {
      return this.text
    },
    setItem(_key, value) {
      this.text = value
    },
  }
}

describe('keptLadders(shelf)', () => {
  test('what was kept is there on the next visit', () => {
    const shelf = shelfWith(null)
    keptLadders(shelf).write('feather', foxtrot)
    const again = keptLadders(shelf).read('feather')
    expect(again).toEqual(foxtrot)
    expect(restored(dances.foxtrot, again).rung).toBe(1)
    expect(keptLadders(shelf).read('another')).toBeUndefined()
  })

  test.each(['', '{', '7', '{"a":1}', '[[1,2]]', '["feather"]', '[["feather",null]]', '[["__proto__",{"rung":1}]]'])(
    'anything else that lies there is no ladder: %s',
    (text) => {
      const kept = keptLadders(shelfWith(text)).read('feather')
      expect(restored(dances.foxtrot, kept)).toEqual(newLadder(dances.foxtrot))
      expect(Object.prototype).not.toHaveProperty('rung')
    },
  )

  test('a shelf that is full, forbidden or missing costs the next visit only', () => {
    const full: Shelf = {
      getItem: () => {
        throw new Error('forbidden')
      },
      setItem: () => {
        throw new Error('full')
      },
    }
    for (const shelf of [full, null]) {
      const ladders = keptLadders(shelf)
      ladders.write('feather', foxtrot)
      expect(ladders.read('feather')).toEqual(foxtrot)
    }
  })

  test('at most a hundred figures, the latest', () => {
    const shelf = shelfWith(null)
    const ladders = keptLadders(shelf)
    for (let k = 0; k < 150; k++) ladders.write(`figure ${k}`, foxtrot)
    ladders.write('figure 60', foxtrot)
    const kept = JSON.parse(shelf.text ?? '') as [string, unknown][]
    expect(kept).toHaveLength(100)
    expect(kept.at(-1)?.[0]).toBe('figure 60')
    expect(kept.filter(([figure]) => figure === 'figure 60')).toHaveLength(1)
  })
})
