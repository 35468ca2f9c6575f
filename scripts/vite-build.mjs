/** How every build is made with Vite: as people use it. */
import { join } from 'node:path'
import { bundledPackages } from './bundled.mjs'
import { root } from './fresh-build.mjs'

/** The exports of one of the build descriptions. */
export async function configsOf(file) {
  const { runnerImport } = await import('vite')
  return asUsed(async () => (await runnerImport(join(root, file), { root, logLevel: 'silent' })).module)
}

/** `found` takes the folders of the packages that are in what is built. */
export async function buildInto(config, outDir, { emptyOutDir, logLevel = 'warn', found = new Set() }) {
  const { build } = await import('vite')
  await asUsed(() =>
    build({
      ...config,
      configFile: false,
      logLevel,
      plugins: [...(config.plugins ?? []), bundledPackages(found)],
      worker: { ...config.worker, plugins: () => [bundledPackages(found)] },
      build: { ...config.build, outDir, emptyOutDir },
    }),
  )
}

/**
 * Reading a build description names the process a development one, and tests name it a test: either way the window
 * would be built with everything that Svelte adds for finding mistakes, which traces every change.
 */
async function asUsed(work) {
  const before = process.env.NODE_ENV
  process.env.NODE_ENV = 'production'
  try {
    return await work()
  } finally {
    if (before === undefined) delete process.env.NODE_ENV
    else process.env.NODE_ENV = before
  }
}
