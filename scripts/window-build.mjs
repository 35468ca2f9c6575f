/** The window and what stands behind it, built where their sources changed. */
import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { basename, join } from 'node:path'
import { folderOfFile, licencesOf } from './bundled.mjs'
import { refresh, root } from './fresh-build.mjs'
import { preloadStrangers } from './preload-gate.mjs'
import { buildInto, configsOf } from './vite-build.mjs'

const BUILDING = [
  'scripts/window-build.mjs',
  'scripts/vite-build.mjs',
  'scripts/bundled.mjs',
  'packing/licences',
]
const COMMON = ['shared-types', 'src-core', 'package.json', 'package-lock.json', ...BUILDING]
const WINDOW_SOURCES = [...COMMON, 'src-renderer', 'examples', 'vite.config.ts']
const DESKTOP_SOURCES = [
  ...COMMON,
  'src-main/package-file.ts',
  'src-main/package-files.json',
  'src-main/desktop',
  'src-main/browser',
  'src-main/host',
  'src-main/documents',
  'src-main/paper',
  'src-main/phone',
  'examples',
  'electron.config.ts',
]

/** All that a packed program is built from. */
export const PACKED_SOURCES = [...new Set([...WINDOW_SOURCES, ...DESKTOP_SOURCES])]

/** out/renderer: plain files for the desktop's own protocol and for the loopback server alike. */
export function buildWindow() {
  return refresh(join(root, 'out', 'renderer'), WINDOW_SOURCES, async (workshop) => {
    const { default: config } = await configsOf('vite.config.ts')
    const found = new Set()
    await buildInto(config, workshop, { emptyOutDir: true, found })
    writeLicences(workshop, found)
  })
}

/** out/main: the desktop's main process and preload, the loopback server, its client, stream and door. */
export function buildDesktop() {
  return refresh(join(root, 'out', 'main'), DESKTOP_SOURCES, async (workshop) => {
    const { mainConfig, ...others } = await configsOf('electron.config.ts')
    const { preloadConfig, clientConfig, streamConfig, entryConfig } = others
    const found = new Set()
    await buildInto(mainConfig, workshop, { emptyOutDir: true, found })
    for (const config of [preloadConfig, clientConfig, streamConfig, entryConfig])
      await buildInto(config, workshop, { emptyOutDir: false, found })
    layPackageFiles(workshop, found)
    writeLicences(workshop, found)
    // A preload that asks for what its sandbox lacks would leave the window white.
    const strangers = preloadStrangers(readFileSync(join(workshop, 'preload.cjs'), 'utf8'))
    if (strangers.length > 0) throw new Error(`the preload asks for ${strangers.join(', ')}`)
  })
}

/** The files of packages that paper reads while it runs, beside the scripts (src-main/package-file.ts). */
function layPackageFiles(workshop, found) {
  const { paper } = JSON.parse(readFileSync(join(root, 'src-main', 'package-files.json'), 'utf8'))
  mkdirSync(join(workshop, 'files'))
  for (const name of paper) {
    copyFileSync(createRequire(import.meta.url).resolve(name), join(workshop, 'files', basename(name)))
    found.add(folderOfFile(name))
  }
}

/** What of others is in it, for the list in the window (src-main/host/licences.ts). */
function writeLicences(workshop, found) {
  writeFileSync(join(workshop, 'licences.json'), JSON.stringify(licencesOf(found)))
}
