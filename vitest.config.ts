import { availableParallelism } from 'node:os'
import { svelte } from '@sveltejs/vite-plugin-svelte'
import { defineConfig } from 'vitest/config'
import { BaseSequencer } from 'vitest/node'
import type { TestSpecification } from 'vitest/node'
import { phoneScript } from './scripts/phone-script.mjs'

/** The longest files first, so that no core waits at the end; one project after the other, as its files share modules. */
class ByProject extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const order = ['main', 'renderer', 'core', 'stories']
    const place = ({ project }: TestSpecification) => order.indexOf(project.name)
    return (await super.sort(files)).sort((a, b) => place(a) - place(b))
  }
}

/**
 * Four projects, so that each kind of test gets the world it needs:
 * core (plain Node, `document` undefined), main (Node with files and processes),
 * renderer (components in jsdom), stories (whole jobs in real Electron and Chromium, one at a time, and last;
 * `npm test` runs them beside the others).
 */
/**
 * When a test is taken for one that hangs. Nothing else hangs on it: on a machine that does much besides, what takes
 * four seconds of processor came to more than a minute, and what is slow is measured by the bench.
 */
const HANGS = 300_000
/**
 * Tests make much that is soon thrown away. With room for 64 MB of it instead of 16, what lives longer is not copied about
 * meanwhile: a tenth of the processor time.
 */
const ROOM = ['--max-semi-space-size=64']
/** What is polled for comes or never does, as well. */
const expected = { poll: { timeout: 60_000 } }

export default defineConfig({
  test: {
    // Every core has a file at work; vitest itself would leave one idle.
    maxWorkers: availableParallelism(),
    sequence: { sequencer: ByProject },
    projects: [
      {
        test: {
          name: 'core',
          // Modules, and what tests work out once, serve every file of a worker: what they remember changes no answer.
          isolate: false,
          execArgv: ROOM,
          setupFiles: ['tests/steady-seed.ts'],
          testTimeout: HANGS,
          expect: expected,
          environment: 'node',
          include: [
            'tests/shared-types/**/*.test.ts',
            'tests/src-core/**/*.test.ts',
            'tests/outside/**/*.test.ts',
          ],
        },
      },
      {
        plugins: [phoneScript()],
        test: {
          name: 'main',
          // As in core.
          isolate: false,
          execArgv: ROOM,
          setupFiles: ['tests/steady-seed.ts'],
          environment: 'node',
          include: ['tests/src-main/**/*.test.ts', 'tests/examples/**/*.test.ts'],
          testTimeout: HANGS,
          expect: expected,
          hookTimeout: HANGS,
        },
      },
      {
        plugins: [svelte()],
        resolve: { conditions: ['browser'] },
        test: {
          name: 'renderer',
          // As in core: loading the window anew for each file takes longer than most of its tests.
          isolate: false,
          execArgv: ROOM,
          setupFiles: ['tests/steady-seed.ts', 'tests/src-renderer/one-page.ts'],
          testTimeout: HANGS,
          expect: expected,
          environment: 'jsdom',
          include: ['tests/src-renderer/**/*.test.ts'],
        },
      },
      {
        test: {
          name: 'stories',
          environment: 'node',
          include: ['tests/stories/**/*.test.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          fileParallelism: false,
          // One worker, whose Chromium and modules serve every story.
          isolate: false,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
})
