import { join } from 'node:path'
import { type Plugin, runnerImport } from 'vite'
import type { Figure } from '../figure/figure.ts'
import { readFigures } from './figuresPlugin.ts'

const EMPTY = '<div id="overfoot"></div>'

/**
 * Writes the page as it stands at first into the built page, so that the browser lays it out while the program is on its
 * way. It is not seen before it has a picture, and answers nothing before React has taken it over.
 * @param repository path of the folder that holds `figures-demo` and `src`
 */
export function markupPlugin(repository: string): Plugin {
  return {
    name: 'overfoot:markup',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      async handler(html) {
        if (!html.includes(EMPTY)) return html
        const { figures } = await readFigures(repository)
        const { module } = await runnerImport<{ pageMarkup(figures: readonly Figure[]): string }>(
          join(repository, 'src/ui/pageMarkup.tsx'),
          { configFile: false, logLevel: 'error', mode: 'production' },
        )
        return html.replace(EMPTY, () => `<div id="overfoot" inert data-waiting>${module.pageMarkup(figures)}</div>`)
      },
    },
  }
}
