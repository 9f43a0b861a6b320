import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { findBrowser, fontsConfig } from './findBrowser.mjs'

const isBrowser = (path: string) => path.startsWith('/good')
const step = (name: string, path: string | null) => ({ name, find: vi.fn(() => path) })
const failing = {
  name: 'failing',
  find: () => {
    throw new Error('no network')
  },
}

describe('findBrowser({ steps, isBrowser })', () => {
  beforeEach(() => vi.stubEnv('CHROME', ''))
  afterEach(() => vi.unstubAllEnvs())

  it('takes the first step that gives a program that starts, tells later processes, and asks no further', async () => {
    const last = step('last', '/good/2')
    const steps = [step('none', null), step('broken', '/bad'), failing, step('first', '/good/1'), last]
    expect(await findBrowser({ steps, isBrowser })).toBe('/good/1')
    expect(process.env.CHROME).toBe('/good/1')
    expect(last.find).not.toHaveBeenCalled()
  })

  it('believes CHROME before any step, but not when it does not start', async () => {
    vi.stubEnv('CHROME', '/good/mine')
    expect(await findBrowser({ steps: [], isBrowser })).toBe('/good/mine')
    vi.stubEnv('CHROME', '/bad')
    await expect(findBrowser({ steps: [step('first', '/good/1')], isBrowser })).rejects.toThrow('"/bad"')
  })

  it('gives the reason of every step when there is no browser', async () => {
    const found = findBrowser({ steps: [step('none', null), step('broken', '/bad'), failing], isBrowser })
    await expect(found).rejects.toThrow(/none: there is none\nbroken: \/bad does not start\nfailing: no network$/)
  })
})

it('fontsConfig(folder) names the folder that the fonts are in, whatever its name', () => {
  const config = fontsConfig('/a & b/fonts')
  expect(config).toContain('<dir>/a &amp; b/fonts</dir>')
  expect(config).not.toContain('/tmp')
})
