import { describe, expect, it } from 'vitest'
import { addUp, countPlaywright, countVitest, lastLine } from './countResults.mjs'

const file = (status: string, ...tests: string[]) => ({
  status,
  assertionResults: tests.map((test) => ({ status: test })),
})

describe('countVitest(report)', () => {
  it('counts what passed, and takes everything else for failed', () => {
    const testResults = [file('passed', 'passed', 'passed'), file('failed', 'passed', 'failed', 'skipped', 'todo')]
    expect(countVitest({ testResults })).toEqual({ passed: 3, failed: 3 })
  })

  it('counts a file that failed before its tests as one', () => {
    expect(countVitest({ testResults: [file('failed')] })).toEqual({ passed: 0, failed: 1 })
    expect(countVitest({ testResults: [file('failed', 'passed')] })).toEqual({ passed: 1, failed: 1 })
  })
})

describe('countPlaywright(report)', () => {
  it('takes what is flaky, skipped or an error outside tests for failed', () => {
    const stats = { expected: 5, unexpected: 1, flaky: 1, skipped: 1 }
    expect(countPlaywright({ stats, errors: [{}] })).toEqual({ passed: 5, failed: 4 })
    expect(countPlaywright({ stats: { expected: 2, unexpected: 0, flaky: 0, skipped: 0 } })).toEqual({
      passed: 2,
      failed: 0,
    })
  })
})

describe('lastLine(count)', () => {
  it('is the line that whoever runs the tests looks for', () => {
    expect(
      lastLine(
        addUp([
          { passed: 1, failed: 0 },
          { passed: 2, failed: 3 },
        ]),
      ),
    ).toBe('3 passed, 3 failed')
    expect(lastLine(addUp([]))).toBe('0 passed, 0 failed')
  })
})
