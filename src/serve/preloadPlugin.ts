import type { Plugin, Rolldown } from 'vite'

const STAGE = /[\\/]stage[\\/]stage\.ts$/

/** Names the stage's code in the page's head, before the entry's, which asks for it lazily: both are fetched at once. */
export function preloadPlugin(): Plugin {
  return {
    name: 'overfoot:preload',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler: (_, { bundle = {}, chunk: entry }) => {
        const stage = Object.values(bundle).find(
          (part): part is Rolldown.OutputChunk =>
            part.type === 'chunk' && part.facadeModuleId !== null && STAGE.test(part.facadeModuleId),
        )
        if (entry === undefined || stage === undefined || !entry.dynamicImports.includes(stage.fileName)) return []
        return [stage.fileName, ...stage.imports]
          .filter((file) => file !== entry.fileName && !entry.imports.includes(file))
          .map((file) => ({
            tag: 'link',
            attrs: { rel: 'modulepreload', crossorigin: true, href: `./${file}` },
            injectTo: 'head-prepend' as const,
          }))
      },
    },
  }
}
