import { expect, test } from 'vitest'
import { COMFORTABLE, QUICKEST } from '../../src/session/session.ts'
import { shortestTimes } from '../../src/transfer/shortestTimes.ts'

test('shortestTimes: the command line and the page take the same dancers', () => {
  expect([shortestTimes.comfortable, shortestTimes.quickest]).toEqual([COMFORTABLE, QUICKEST])
})
