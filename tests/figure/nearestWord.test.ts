import { expect, test } from 'vitest'
import { nearestWord } from '../../src/figure/nearestWord.ts'

const words = ['forward', 'back', 'side', 'close', 'cross in front', 'cross behind']

test.each([
  ['forwrad', 'forward'],
  ['Forward', 'forward'],
  ['clsoe', 'close'],
  ['cross infront', 'cross in front'],
  ['bakc', 'back'],
  ['sideways', ''],
  ['up', ''],
  ['', ''],
])('nearestWord("%s", words) is "%s"', (word, nearest) => {
  expect(nearestWord(word, words)).toBe(nearest)
})

test('of two words equally near the first is meant', () => {
  expect(nearestWord('bac', ['bad', 'bag'])).toBe('bad')
})
