import { describe, expect, it } from 'vitest'
import { isInstalled } from '../../src/install/ensureInstalled.mjs'

const lock = {
  packages: { '': {}, 'node_modules/a': { version: '1.0.0' }, 'node_modules/b': { version: '2.0.0', optional: true } },
}

describe('isInstalled(wanted, installed)', () => {
  it('is false when nothing is installed', () => {
    expect(isInstalled(lock, null)).toBe(false)
  })

  it('is true when everything is there, with or without what is optional', () => {
    expect(isInstalled(lock, { packages: { ...lock.packages } })).toBe(true)
    expect(isInstalled(lock, { packages: { 'node_modules/a': { version: '1.0.0' } } })).toBe(true)
  })

  it('is false when a package is missing or another one is there', () => {
    expect(isInstalled(lock, { packages: {} })).toBe(false)
    expect(isInstalled(lock, { packages: { 'node_modules/a': { version: '1.0.1' } } })).toBe(false)
    const changed = { packages: { 'node_modules/a': { version: '1.0.0', integrity: 'sha512-x' } } }
    expect(isInstalled(lock, changed)).toBe(false)
    const oldOptional = { packages: { 'node_modules/a': { version: '1.0.0' }, 'node_modules/b': { version: '1.9.0' } } }
    expect(isInstalled(lock, oldOptional)).toBe(false)
  })
})
