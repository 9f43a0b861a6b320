import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'
import { cspPlugin } from './src/serve/cspPlugin.ts'
import { figuresPlugin } from './src/serve/figuresPlugin.ts'
import { markupPlugin } from './src/serve/markupPlugin.ts'
import { neededWhen } from './src/serve/neededWhen.ts'
import { preloadPlugin } from './src/serve/preloadPlugin.ts'

export default defineConfig({
  root: 'src',
  publicDir: '../public',
  // Relative addresses: the built folder works under any path.
  base: './',
  plugins: [
    react(),
    figuresPlugin(import.meta.dirname),
    markupPlugin(import.meta.dirname),
    preloadPlugin(),
    cspPlugin(),
  ],
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2022',
    // What the bundle check reads.
    manifest: true,
    // Every browser that has es2022 knows modulepreload.
    modulePreload: { polyfill: false },
    // The policy allows no data: addresses.
    assetsInlineLimit: 0,
    // What several parts need comes in one file: a browser asks for six at a time, and many small ones hold up the large. In
    // one for the first picture, one for the page, and one for what is later; what runs before all others stays apart.
    rolldownOptions: {
      output: {
        codeSplitting: {
          includeDependenciesRecursively: false,
          groups: [
            {
              name: (id, chunks) => neededWhen(id, (one) => chunks.getModuleInfo(one)),
              debugName: 'needed when',
              test: /[\\/]src[\\/](?!stage[\\/]glContext)/,
              minShareCount: 2,
            },
          ],
        },
      },
    },
    // What may be heavy is said by the bundle check.
    chunkSizeWarningLimit: Number.POSITIVE_INFINITY,
  },
})
