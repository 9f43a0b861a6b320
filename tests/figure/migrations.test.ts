import { readFileSync } from 'node:fs'
import { describe, expect, test, vi } from 'vitest'
import { CURRENT_VERSION, migrated, migrations } from '../../src/figure/migrations.ts'
import { parseFigure } from '../../src/figure/parse.ts'

const frozen = readFileSync(new URL('version1.figure.yaml', import.meta.url), 'utf8')

/** What a description said, before and after, with the version's own marks. */
const mapping = (entries: Readonly<Record<string, unknown>>) => Object.assign(Object.create(null), entries)

describe('a file of version 1', () => {
  const result = parseFigure(frozen, 'version1.figure.yaml')

  test('opens and says what it said', () => {
    if (!result.ok) throw new Error(JSON.stringify(result.problems))
    const nothing = { size: null, turn: 0, footTurn: null, placed: null, position: null, leading: null }
    const unsaid = { alignment: null, footwork: '', note: '', moments: {} }
    expect(result.figure).toEqual({
      id: 'version1',
      title: 'Everything that version 1 could say',
      dance: 'waltz',
      role: 'follower',
      firstFoot: 'left',
      starts: { way: 'backing', to: 'diagonally to wall' },
      ends: null,
      freeFoot: null,
      convention: 'full on the count',
      timings: [
        {
          text: '1 2 & 3',
          signs: ['1', '2', '&', '3'],
          values: [48, 24, 24, 48],
          firstCount: 1,
          source: { provenance: 'common practice', text: '' },
        },
        {
          text: '1 & 2 3',
          signs: ['1', '&', '2', '3'],
          values: [24, 24, 48, 48],
          firstCount: 1,
          source: { provenance: 'published', text: 'a list of figures' },
        },
        {
          text: '1 2 3 &',
          signs: ['1', '2', '3', '&'],
          values: [48, 48, 36, 12],
          firstCount: 1,
          source: { provenance: 'common practice', text: '' },
        },
      ],
      actions: [
        { ...nothing, ...unsaid, direction: 'back', weight: 1 },
        {
          ...nothing,
          ...unsaid,
          direction: 'side',
          size: 0.45,
          turn: Math.PI / 2,
          weight: 0.3,
          moments: { touches: 0, full: 0 },
        },
        { ...nothing, ...unsaid, direction: 'tap', weight: 0 },
        { ...nothing, ...unsaid, direction: 'cross behind', turn: -Math.PI / 4, weight: 0.5 },
      ],
      stepsSource: null,
      tracks: { bodyTurn: [], rise: [], sway: [] },
      about: 'Two lines of it, folded into one.',
    })
  })

  test('keeps its own meaning where a later version has a key of the same name', () => {
    const warnings = result.ok ? result.warnings : []
    expect(warnings.map(({ code, where: { line, column } }) => [code, line, column])).toEqual([
      ['key-unknown', 18, 1],
      ['key-newer', 19, 1],
      ['key-newer', 28, 5],
    ])
  })
})

describe('migrations', () => {
  test('are numbered without a gap, and lead to the present version', () => {
    expect(migrations.map(({ from }) => from)).toEqual(Array.from({ length: CURRENT_VERSION - 1 }, (_, k) => k + 1))
  })

  test('every one is run by a file of the first version', () => {
    const steps = migrations.map((migration) => vi.spyOn(migration, 'step'))
    migrated(mapping({ overfoot: '1' }), 1)
    for (const step of steps) {
      expect(step).toHaveBeenCalledOnce()
      step.mockRestore()
    }
  })

  test('leave a file of the present version as it is, and set aside what version 1 did not know', () => {
    expect(migrated(mapping({ overfoot: '1', ends: 'x' }), 1).aside).toEqual([['ends']])
    expect(migrated(mapping({ overfoot: '2', ends: 'x' }), 2).aside).toEqual([])
  })

  test('leave what goes in as it is', () => {
    const action = mapping({ direction: 'side', pivot: 'x' })
    const value = mapping({ sway: 'x', actions: ['tap', action] })
    const before = JSON.stringify(value)
    const { value: after, aside } = migrated(value, 1)
    expect(JSON.stringify(value)).toBe(before)
    expect(after).toEqual({ actions: ['tap', { direction: 'side' }] })
    expect(aside).toEqual([['sway'], ['actions', 1, 'pivot']])
  })
})
