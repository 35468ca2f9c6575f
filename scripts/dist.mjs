/**
 * `npm run dist`: installable packages of this platform, in `dist`. On Linux a folder that runs as it is, a Debian
 * package and an AppImage; on Windows an installer and a ZIP; on a Mac a disk image and a ZIP. `npm run dist --
 * folder` makes the folder alone, other names those packages alone. What needs a tool that is neither here nor can
 * be fetched is left out and told; where it was asked for by name, that is a failure.
 */
import { existsSync, rmSync, statSync } from 'node:fs'
import { basename } from 'node:path'
import { packingConfig } from '../packing/electron-builder.mjs'
import { makeDeb, sizeOf, whyNoDeb } from './dist-deb.mjs'
import { stageApp, stageIcons, stageLicences } from './dist-stage.mjs'
import { notePacked, unpackedFolder } from './dist-program.mjs'
import { builderModule, electronToPack, fusesModule, installTools } from './dist-tools.mjs'
import { buildDesktop, buildWindow } from './window-build.mjs'

const PLATFORMS = {
  linux: { key: 'LINUX', packages: ['deb', 'AppImage'] },
  win32: { key: 'WINDOWS', packages: ['nsis', 'zip'] },
  darwin: { key: 'MAC', packages: ['dmg', 'zip'] },
}

const platform = PLATFORMS[process.platform]
const wished = process.argv.slice(2)
const unknown = wished.filter((name) => name !== 'folder' && !platform?.packages.includes(name))
if (!platform || unknown.length > 0) {
  console.error(
    platform
      ? `dist: no package ${unknown.join(', ')}; here there are folder, ${platform.packages.join(', ')}`
      : `dist: nothing is packed on ${process.platform}`,
  )
  process.exit(2)
}
const packages = wished.length === 0 ? platform.packages : wished.filter((name) => name !== 'folder')

installTools()
await buildWindow()
await buildDesktop()
await stageApp()
const pictures = await stageIcons()
stageLicences()

const { build, Platform, Arch } = builderModule()
const electron = electronToPack(process.platform)
const config = packingConfig({ electron, fuses: fusesModule() })
const arch = Arch[process.arch]
const pack = (targets, more = {}) =>
  build({ targets: Platform[platform.key].createTarget(targets, arch), config, publish: 'never', ...more })

const made = []
const leftOut = []
/** Makes one thing; what cannot be made is told at the end. */
async function make(name, work) {
  const startedAt = Date.now()
  try {
    for (const path of [await work()].flat()) made.push({ path, seconds: (Date.now() - startedAt) / 1000 })
  } catch (error) {
    leftOut.push({ name, reason: String(error instanceof Error ? error.message : error).split('\n')[0] })
  }
}

const unpacked = unpackedFolder()
await make('folder', async () => {
  rmSync(unpacked, { recursive: true, force: true })
  await pack(['dir'])
  notePacked()
  return unpacked
})
if (existsSync(unpacked))
  for (const name of packages)
    await make(name, async () => {
      if (name !== 'deb') return pack([name], { prepackaged: unpacked })
      const reason = whyNoDeb()
      if (reason) throw new Error(reason)
      return makeDeb(unpacked, pictures)
    })

for (const { path, seconds } of made) {
  const bytes = statSync(path).isDirectory() ? sizeOf(path) : statSync(path).size
  console.log(`${(bytes / 1e6).toFixed(1).padStart(6)} MB  dist/${basename(path)}  (${seconds.toFixed(0)} s)`)
}
for (const { name, reason } of leftOut) console.log(`Left out: ${name}: ${reason}`)
console.log(`Electron ${electron.version}${electron.folder ? ', the one at hand' : ''}`)
const isFailed = leftOut.some(({ name }) => name === 'folder' || wished.includes(name)) || made.length === 0
process.exit(isFailed ? 1 : 0)
