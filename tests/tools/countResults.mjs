/**
 * @typedef {{ passed: number, failed: number }} Count
 * @typedef {{ assertionResults: readonly { status: string }[], status: string }} VitestFile
 * @typedef {{ expected: number, unexpected: number, flaky: number, skipped: number }} PlaywrightStats
 */

/** @param {readonly Count[]} counts @returns {Count} */
export const addUp = (counts) => ({
  passed: counts.reduce((sum, { passed }) => sum + passed, 0),
  failed: counts.reduce((sum, { failed }) => sum + failed, 0),
})

/** @param {Count} count */
export const lastLine = ({ passed, failed }) => `${passed} passed, ${failed} failed`

/**
 * From vitest's JSON report. A file that cannot even be read counts as one failure, and so does each skipped test: it
 * has shown nothing.
 * @param {{ testResults: readonly VitestFile[] }} report
 * @returns {Count}
 */
export function countVitest({ testResults }) {
  return addUp(
    testResults.map(({ assertionResults, status }) => {
      const passed = assertionResults.filter((test) => test.status === 'passed').length
      const failed = assertionResults.length - passed
      return { passed, failed: status === 'failed' ? Math.max(failed, 1) : failed }
    }),
  )
}

/**
 * From Playwright's JSON report. What passed only sometimes, and what was skipped, has failed.
 * @param {{ stats: PlaywrightStats, errors?: readonly unknown[] }} report
 * @returns {Count}
 */
export function countPlaywright({ stats: { expected, unexpected, flaky, skipped }, errors = [] }) {
  return { passed: expected, failed: unexpected + flaky + skipped + errors.length }
}
