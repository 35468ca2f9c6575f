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
import { preloadStrangers } from './preload-gate.mjs'

const root = fileURLToPath(new URL('..', import.meta.url))
const loadConfigs = async (file) =>
  (await runnerImport(join(root, file), { root, logLevel: 'silent' })).module

function checkPreload() {
  const strangers = preloadStrangers(readFileSync(join(root, 'out', 'main', 'preload.cjs'), 'utf8'))
  if (strangers.length > 0) throw new Error(`the preload asks for ${strangers.join(', ')}`)
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
