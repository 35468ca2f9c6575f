/**
 * `npm run check`, before every commit: types, lint, format and the tests of the engine, side by side. Lint and format
 * look again only at files that changed (not at those whose neighbours' types did), and the sweeps of hostile input are
 * left out: `npm test` does it all.
 */
import { bin, checkSources, run } from './check-sources.mjs'

const remembered = (name) => [
  '--cache',
  '--cache-strategy',
  'content',
  '--cache-location',
  `node_modules/.cache/petalyard-${name}`,
]

const [sources, tests] = await Promise.all([
  checkSources([
    ['types'],
    ['types:window'],
    ['lint', ...remembered('eslint')],
    ['format:check', ...remembered('prettier')],
  ]),
  run(bin('vitest'), ['run', '--project', 'core', '--exclude', '**/*hostile*.test.ts', '--reporter', 'dot']),
])
console.log(tests.code === 0 ? '✓ tests of the engine' : `✗ tests of the engine\n${tests.said}`)
process.exitCode = sources.failed === 0 && tests.code === 0 ? 0 : 1
