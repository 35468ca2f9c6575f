/** The window and what stands behind it, built where their sources changed. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { refresh, root } from './fresh-build.mjs'
import { preloadStrangers } from './preload-gate.mjs'
import { buildInto, configsOf } from './vite-build.mjs'

const BUILDING = ['scripts/window-build.mjs', 'scripts/vite-build.mjs']
const COMMON = ['shared-types', 'src-core', 'package.json', 'package-lock.json', ...BUILDING]
const WINDOW_SOURCES = [...COMMON, 'src-renderer', 'examples', 'vite.config.ts']
const DESKTOP_SOURCES = [
  ...COMMON,
  'src-main/desktop',
  'src-main/browser',
  'src-main/host',
  'src-main/documents',
  'src-main/paper',
  'src-main/phone',
  'examples',
  'electron.config.ts',
]

/** out/renderer: plain files for the desktop's own protocol and for the loopback server alike. */
export function buildWindow() {
  return refresh(join(root, 'out', 'renderer'), WINDOW_SOURCES, async (workshop) => {
    const { default: config } = await configsOf('vite.config.ts')
    await buildInto(config, workshop, { emptyOutDir: true })
  })
}

/** out/main: the desktop's main process and preload, the loopback server, its client and its stream. */
export function buildDesktop() {
  return refresh(join(root, 'out', 'main'), DESKTOP_SOURCES, async (workshop) => {
    const { mainConfig, preloadConfig, clientConfig, streamConfig } = await configsOf('electron.config.ts')
    await buildInto(mainConfig, workshop, { emptyOutDir: true })
    await buildInto(preloadConfig, workshop, { emptyOutDir: false })
    await buildInto(clientConfig, workshop, { emptyOutDir: false })
    await buildInto(streamConfig, workshop, { emptyOutDir: false })
    // A preload that asks for what its sandbox lacks would leave the window white.
    const strangers = preloadStrangers(readFileSync(join(workshop, 'preload.cjs'), 'utf8'))
    if (strangers.length > 0) throw new Error(`the preload asks for ${strangers.join(', ')}`)
  })
}
