import { describe, expect, test, vi } from 'vitest'

// Pixi asks for the browser's name as it is loaded; nothing here is drawn.
vi.stubGlobal('navigator', { userAgent: '' })
const { createGraphicsPool } = await import('../../src/stage/graphicsPool.ts')
vi.unstubAllGlobals()

describe('takeShared(name, draw)', () => {
  test('is drawn once for panels that have it alike, and once for panels that follow each other', () => {
    const pool = createGraphicsPool()
    let drawn = 0
    const floor = () => pool.takeShared('floor', () => drawn++)
    const [one, other] = [floor(), floor()]
    expect(other.context).toBe(one.context)
    const { context } = one
    pool.takeBackAll()
    expect(floor().context).toBe(context)
    expect(drawn).toBe(1)
    pool.destroy()
  })

  test('what the next panels do not want is given up, and drawn anew when it is wanted again', () => {
    const pool = createGraphicsPool()
    let drawn = 0
    const { context } = pool.takeShared('floor', () => drawn++)
    pool.takeBackAll()
    pool.takeShared('another floor', () => {})
    expect(context.destroyed).toBe(false)
    pool.takeBackAll()
    expect(context.destroyed).toBe(true)
    pool.takeShared('floor', () => drawn++)
    expect(drawn).toBe(2)
    pool.destroy()
  })
})
