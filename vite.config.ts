import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'
import { cspPlugin } from './src/serve/cspPlugin.ts'
import { figuresPlugin } from './src/serve/figuresPlugin.ts'

export default defineConfig({
  root: 'src',
  publicDir: '../public',
  // Relative addresses: the built folder works under any path.
  base: './',
  plugins: [react(), figuresPlugin(import.meta.dirname), cspPlugin()],
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
    // What may be heavy is said by the bundle check.
    chunkSizeWarningLimit: Number.POSITIVE_INFINITY,
  },
})
