import { existsSync } from 'node:fs'
import { join } from 'node:path'
import type { Plugin, Rolldown } from 'vite'

/** Runs before all others, as a script of its own: it asks for what takes long and needs no program. */
const EARLY = 'stage/earlyContext.ts'
/** What the page asks for lazily, but at once. */
const STAGE = 'stage/stage.ts'

/**
 * Names the code that is wanted lazily in the page's head, before the entry's, so that all is fetched together; before that
 * the script that runs early. What makes the page answer is not named: what is named is compiled as well, and that would
 * hold the picture up.
 */
export function preloadPlugin(): Plugin {
  let root = ''
  return {
    name: 'overfoot:preload',
    apply: 'build',
    configResolved(config) {
      root = config.root
    },
    buildStart() {
      // Vite would make one script of all that the page names itself.
      if (existsSync(join(root, EARLY))) this.emitFile({ type: 'chunk', id: join(root, EARLY) })
    },
    transformIndexHtml: {
      order: 'post',
      handler: (_, { bundle = {}, chunk: entry }) => {
        if (entry === undefined) return []
        const chunks = Object.values(bundle).filter((part): part is Rolldown.OutputChunk => part.type === 'chunk')
        const made = (source: string) => chunks.find(({ facadeModuleId }) => facadeModuleId === join(root, source))
        const early = made(EARLY)
        const soonest = early?.imports ?? []
        const known = [entry.fileName, ...entry.imports, early?.fileName, ...soonest]
        const files = (source: string): string[] => {
          const chunk = made(source)
          if (chunk === undefined || !entry.dynamicImports.includes(chunk.fileName)) return []
          return [chunk.fileName, ...chunk.imports].filter((file) => !known.includes(file))
        }
        const stage = files(STAGE)
        return [
          ...(early === undefined
            ? []
            : [
                {
                  tag: 'script',
                  attrs: { type: 'module', crossorigin: true, async: true, src: `./${early.fileName}` },
                },
              ]),
          ...[...soonest, ...stage].map((file) => ({
            tag: 'link',
            attrs: { rel: 'modulepreload', crossorigin: true, href: `./${file}` },
          })),
        ].map((tag) => ({ ...tag, injectTo: 'head-prepend' as const }))
      },
    },
  }
}
