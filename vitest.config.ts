import { defineConfig } from 'vitest/config'
import { figuresPlugin } from './src/serve/figuresPlugin.ts'

// Apart from vite.config.ts because the page's root is src/ and the tests' root is the repository.
export default defineConfig({
  plugins: [figuresPlugin(import.meta.dirname)],
  test: {
    environment: 'node',
    // Our modules keep no state that one file could leave to the next, and nothing else runs beside them: every core, no new
    // world for each of eighty files.
    isolate: false,
    maxWorkers: '100%',
    // The longest take some seconds, and several times that where others use the same processor.
    testTimeout: 60_000,
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**', 'node_modules/**'],
  },
})
