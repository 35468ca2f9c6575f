/**
 * `npm run check`, before every commit: types, lint, format and most tests of the engine, side by side, in about a
 * minute. Types, lint and format look again only at what changed, and the tests that go over hundreds of whole projects
 * or draw photos are left out: `npm test` does it all.
 */
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { bin, checkSources, remembered, root, run } from './check-sources.mjs'

/**
 * Three quarters of the time of all tests of the engine: whole corpora, hundreds of projects, photos that are drawn first.
 * Hostile input is left out by its name.
 */
const SWEEPS = [
  'outside/whole-patterns',
  'src-core/cells/outlines',
  'src-core/colour/stable',
  'src-core/colour/stay',
  'src-core/composing/arrange',
  'src-core/edging/border',
  'src-core/figures/chart-corpus',
  'src-core/joining-round/read-back',
  'src-core/joins/additions-work',
  'src-core/layout/arrangers/scatter',
  'src-core/layout/edging-lines',
  'src-core/layout/filler-lobes',
  'src-core/layout/fillers',
  'src-core/layout/fit-count',
  'src-core/layout/garland',
  'src-core/layout/garland-input',
  'src-core/layout/holding',
  'src-core/layout/one-pool',
  'src-core/motif/heights',
  'src-core/motif/wording',
  'src-core/notation/amounts',
  'src-core/notation/dressed-motifs',
  'src-core/notation/dresses',
  'src-core/notation/print',
  'src-core/notation/reading-on',
  'src-core/photo/attic',
  'src-core/photo/desk',
  'src-core/photo/gray-yarn',
  'src-core/photo/hall',
  'src-core/photo/kinds',
  'src-core/photo/kitchen',
  'src-core/photo/mat',
  'src-core/photo/motif',
  'src-core/photo/outlines',
  'src-core/photo/pantry',
  'src-core/photo/porch',
  'src-core/photo/ruler',
  'src-core/photo/seams',
  'src-core/photo/sill',
  'src-core/photo/studio',
  'src-core/photo/unsure',
  'src-core/plan-properties',
  'src-core/plan-stable',
  'src-core/plan-telling',
  'src-core/progress/hold',
  'src-core/progress/progress',
  'src-core/ways/in-the-round',
  'src-core/ways/outline-toward',
  'src-core/ways/ways',
].map((name) => `tests/${name}.test.ts`)
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
