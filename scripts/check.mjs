/**
 * `npm run check`, before every commit: types, lint, format and most tests of the engine, side by side, in less than a
 * minute. Types, lint and format look again only at what changed, and the tests that go over hundreds of whole projects
 * are left out: `npm test` does it all.
 */
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { bin, checkSources, remembered, root, run } from './check-sources.mjs'

/** Half of the time of all tests of the engine. Hostile input is left out by its name. */
const SWEEPS = [
  'colour/stay',
  'composing/arrange',
  'joins/additions-work',
  'layout/arrangers/scatter',
  'layout/fillers',
  'layout/garland',
  'layout/garland-input',
  'layout/holding',
  'notation/amounts',
  'notation/print',
  'plan-properties',
  'ways/ways',
].map((name) => `tests/src-core/${name}.test.ts`)
const gone = SWEEPS.filter((file) => !existsSync(join(root, file)))
if (gone.length > 0) {
  console.error(`check: there is no ${gone.join(', ')} to leave out`)
  process.exit(2)
}
const leftOut = ['**/*hostile*.test.ts', ...SWEEPS].flatMap((file) => ['--exclude', file])

const [sources, tests] = await Promise.all([
  checkSources([['types'], ['lint', ...remembered('eslint')], ['format:check', ...remembered('prettier')]]),
  run(bin('vitest'), ['run', '--project', 'core', ...leftOut, '--reporter', 'dot']),
])
console.log(tests.code === 0 ? '✓ tests of the engine' : `✗ tests of the engine\n${tests.said}`)
process.exitCode = sources.failed === 0 && tests.code === 0 ? 0 : 1
