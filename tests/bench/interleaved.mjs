/**
 * Times several ways of doing the same, block by block in turn (ABAB…), so that whatever else the machine does falls on
 * all of them alike; and in the processor's time, collecting garbage included, so that what others take is not counted. One
 * unmeasured round comes first.
 * @param {readonly (() => void)[]} ways each does one block of its work
 * @param {number} blocks of each
 * @returns {number[][]} for each way the processor's time of each of its blocks, ms
 */
export function interleaved(ways, blocks) {
  for (const way of ways) way()
  /** @type {number[][]} */
  const times = ways.map(() => [])
  for (let block = 0; block < blocks; block++) {
    ways.forEach((way, index) => {
      const start = process.cpuUsage()
      way()
      const { user, system } = process.cpuUsage(start)
      times[index]?.push((user + system) / 1000)
    })
  }
  return times
}

/**
 * Block by block, how many times as long the one took as the other.
 * @param {readonly number[]} of
 * @param {readonly number[]} to
 * @returns {number[]}
 */
export const blockRatios = (of, to) => of.map((time, block) => time / /** @type {number} */ (to[block]))
