import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { buildInto, configsOf } from '../../../scripts/vite-build.mjs'

const out = fileURLToPath(new URL('../../../out', import.meta.url))
let folder: string

beforeAll(async () => {
  await mkdir(out, { recursive: true })
  // In here, so that it finds what it imports.
  folder = await mkdtemp(join(out, 'probe-'))
})
afterAll(() => rm(folder, { recursive: true, force: true }))

it('builds the window as people use it, without what Svelte adds for finding mistakes', async () => {
  await writeFile(
    join(folder, 'Probe.svelte'),
    '<script>let count = $state(0)</script><button onclick={() => count++}>{count === 1}</button>',
  )
  await writeFile(
    join(folder, 'main.ts'),
    "import { mount } from 'svelte'\nimport Probe from './Probe.svelte'\nmount(Probe, { target: document.body })",
  )
  const before = process.env.NODE_ENV
  const { default: config } = await configsOf('vite.config.ts')
  expect(config).toBeDefined()
  await buildInto(
    {
      ...config,
      root: folder,
      build: {
        ...config?.build,
        minify: false,
        lib: { entry: join(folder, 'main.ts'), formats: ['es'], fileName: () => 'probe.js' },
      },
    },
    join(folder, 'built'),
    { emptyOutDir: true, logLevel: 'silent' },
  )
  const built = await readFile(join(folder, 'built', 'probe.js'), 'utf8')
  expect(built).toContain('function mount')
  // A development build knows files and lines, compares with warnings, and takes a stack for each change.
  expect(built.match(/Probe\.svelte:|add_locations|strict_equals|function get_stack/g) ?? []).toEqual([])
  expect(process.env.NODE_ENV).toBe(before)
})
