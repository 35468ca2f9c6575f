/** The tools that pack, which only who packs needs: a package of their own in `packing/`, installed when asked for. */
import { execFileSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { findElectron } from './capabilities.mjs'
import { root } from './fresh-build.mjs'

const packing = join(root, 'packing')

/** Installs the tools where they are missing or others than the lock file says. */
export function installTools() {
  const lock = join(packing, 'package-lock.json')
  const installed = join(packing, 'node_modules', '.package-lock.json')
  if (existsSync(installed) && sameVersions(lock, installed)) return
  console.log('Installing what packs (once).')
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm'
  execFileSync(npm, ['ci', '--no-progress', '--loglevel=error'], {
    cwd: packing,
    stdio: ['ignore', 'ignore', 'inherit'],
    shell: process.platform === 'win32',
  })
}

function sameVersions(lock, installed) {
  const versions = (file) => JSON.parse(readFileSync(file, 'utf8')).packages
  const there = versions(installed)
  return Object.entries(versions(lock)).every(
    ([path, { version, optional }]) => path === '' || optional || there[path]?.version === version,
  )
}

const require = createRequire(join(packing, 'package.json'))
/** The modules of the tools; `installTools` comes first. */
export const builderModule = () => require('electron-builder')
export const fusesModule = () => require('@electron/fuses')

/**
 * The Electron that is packed: one at hand for this platform (`ELECTRON_OVERRIDE_DIST_PATH`, or what `npm start`
 * fetched), else the version that package.json pins, which the packer then fetches.
 */
export function electronToPack(platform) {
  const pinned = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')).devDependencies.electron
  const program = platform === process.platform ? findElectron() : null
  if (program === null) return { version: pinned, folder: null }
  // On a Mac the program stands three folders down in its bundle.
  const folder = process.platform === 'darwin' ? join(dirname(program), '..', '..', '..') : dirname(program)
  const marked = join(folder, 'version')
  const version = existsSync(marked) ? readFileSync(marked, 'utf8').trim().replace(/^v/, '') : pinned
  return { version, folder }
}
