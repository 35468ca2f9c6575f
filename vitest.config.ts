import { svelte } from '@sveltejs/vite-plugin-svelte'
import { defineConfig } from 'vitest/config'

/**
 * Four projects, so that each kind of test gets the world it needs:
 * core (plain Node, `document` undefined), main (Node with files and processes),
 * renderer (components in jsdom), stories (whole jobs in real Electron and Chromium, one at a time).
 */
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'core',
          setupFiles: ['tests/steady-seed.ts'],
          // Property tests take longer on a busy machine; what is slow is measured by the bench, not here.
          testTimeout: 60_000,
          environment: 'node',
          include: [
            'tests/shared-types/**/*.test.ts',
            'tests/src-core/**/*.test.ts',
            'tests/outside/**/*.test.ts',
          ],
        },
      },
      {
        test: {
          name: 'main',
          setupFiles: ['tests/steady-seed.ts'],
          environment: 'node',
          include: ['tests/src-main/**/*.test.ts', 'tests/examples/**/*.test.ts'],
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
      {
        plugins: [svelte()],
        resolve: { conditions: ['browser'] },
        test: {
          name: 'renderer',
          setupFiles: ['tests/steady-seed.ts'],
          testTimeout: 60_000,
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
        },
      },
    ],
  },
})
