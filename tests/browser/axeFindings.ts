import type { Page } from '@playwright/test'
import axe from 'axe-core'

declare global {
  interface Window {
    readonly axe?: typeof axe
  }
}

/** What axe has against the page as it is now, with the elements. Its source, half a megabyte, goes into a page once. */
export async function axeFindings(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => window.axe !== undefined))) await page.evaluate(axe.source)
  return page.evaluate(async () => {
    if (window.axe === undefined) throw new Error('axe is not in the page')
    const { violations } = await window.axe.run(document, { resultTypes: ['violations'] })
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)
  })
}
