/**
 * Builds everything (`npm run build`): the window, what stands behind it (the desktop's main process, its
 * preload, the loopback server) and the command line. With names it builds those alone:
 * `npm run build -- window desktop command`.
 */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build, runnerImport } from 'vite'
import { buildCommand } from './command-build.mjs'

const root = fileURLToPath(new URL('..', import.meta.url))
/** What a sandboxed preload may ask for. */
const PRELOAD_MAY = new Set(['electron', 'events', 'timers', 'url', 'node:events', 'node:timers', 'node:url'])

const loadConfigs = async (file) =>
  (await runnerImport(join(root, file), { root, logLevel: 'silent' })).module

/** Fails the build where the preload asks for anything that its sandbox lacks: the window would stay white. */
function checkPreload() {
  const text = readFileSync(join(root, 'out', 'main', 'preload.cjs'), 'utf8')
  const asked = [...text.matchAll(/\brequire\(\s*["'`]([^"'`]+)["'`]\s*\)|\bimport\(/g)].map(
    (m) => m[1] ?? 'import()',
  )
  const strangers = asked.filter((name) => !PRELOAD_MAY.has(name))
  if (strangers.length > 0) throw new Error(`the preload asks for ${[...new Set(strangers)].join(', ')}`)
}

const TARGETS = {
  window: async () => {
    const { default: config } = await loadConfigs('vite.config.ts')
    await build({ ...config, configFile: false, logLevel: 'warn' })
  },
  desktop: async () => {
    const { mainConfig, preloadConfig } = await loadConfigs('electron.config.ts')
    await build({ ...mainConfig, logLevel: 'warn' })
    await build({ ...preloadConfig, logLevel: 'warn' })
    checkPreload()
  },
  command: buildCommand,
}

const wished = process.argv.slice(2)
const unknown = wished.filter((name) => !(name in TARGETS))
if (unknown.length > 0) {
  console.error(`build: no target ${unknown.join(', ')}; there are ${Object.keys(TARGETS).join(', ')}`)
  process.exit(2)
}
for (const name of wished.length > 0 ? wished : Object.keys(TARGETS)) {
  const start = performance.now()
  try {
    await TARGETS[name]()
  } catch (error) {
    console.error(`build: ${name} failed: ${error instanceof Error ? error.message : error}`)
    process.exit(1)
  }
  console.log(`built ${name} in ${Math.round(performance.now() - start)} ms`)
}
