// `npm run soak`: 100,000 generated files (the suite has 10,000), and the slowest of them against the median file.
import { spawnSync } from 'node:child_process'
import { join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'

const repository = resolve(fileURLToPath(import.meta.url), '../..')
const { status } = spawnSync(
  process.execPath,
  [join(repository, 'node_modules/vitest/vitest.mjs'), 'run', 'tests/figure/generatedFiles.test.ts'],
  { cwd: repository, stdio: 'inherit', env: { ...process.env, OVERFOOT_FILES: '100000' } },
)
process.exitCode = status ?? 1
