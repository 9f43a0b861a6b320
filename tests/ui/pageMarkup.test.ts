import { figures } from 'virtual:figures'
import { expect, it } from 'vitest'
import { pageMarkup } from '../../src/ui/pageMarkup.tsx'

const markup = pageMarkup(figures)

it('is the whole page at the first beat of the first figure, without a browser', () => {
  expect(markup.match(/<option/g)?.length).toBeGreaterThanOrEqual(figures.length)
  // As many places to draw into as a session opens with: in time, late and early.
  expect(markup.match(/class="picture"/g)).toHaveLength(3)
  expect(markup).toMatch(/<p class="count-now[^>]*>[^<]+<\/p>/)
  expect(markup).toMatch(/class="strip-count[^>]*data-style="left:[\d.]+%"/)
})

it('holds nothing that the content security policy forbids', () => {
  expect(markup).not.toMatch(/<[^>]*\sstyle=/)
  expect(markup).not.toMatch(/<(script|style|link)\b/)
  expect(markup).not.toMatch(/<[^>]*\son[a-z]+=/)
})
