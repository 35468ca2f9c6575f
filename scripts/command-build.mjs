/**
 * The built command line, made anew when the sources changed. Builds are kept by the fingerprint of what they were built
 * from, and made in a folder of their own that is then renamed: of several starts at once one builds and the others wait
 * for it, and nobody ever runs half a build.
 */
import { randomBytes } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { byOne, fingerprintOf, root } from './fresh-build.mjs'
import { buildInto, configsOf } from './vite-build.mjs'

const builds = join(root, 'out', 'command')
const SOURCES = [
  'shared-types',
  'src-core',
  'src-main/package-file.ts',
  'src-main/package-files.json',
  'src-main/command',
  'src-main/documents',
  'src-main/paper',
  'src-main/phone',
  'src-main/photo',
  'examples',
  'scripts/command-build.mjs',
  'scripts/vite-build.mjs',
  'command.config.ts',
  'package.json',
  'package-lock.json',
]
/** Builds of other sources are kept for an hour: somebody may be running one of them. */
const KEPT_MS = 60 * 60 * 1000

function removeOldBuilds(current) {
  for (const name of readdirSync(builds)) {
    const path = join(builds, name)
    const age = Date.now() - (statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? Date.now())
    if (name !== current && age > KEPT_MS) rmSync(path, { recursive: true, force: true })
  }
}

/** Path of the built command line; builds it first, silently, where that is needed. */
export async function buildCommand() {
  const fingerprint = fingerprintOf(SOURCES)
  const folder = join(builds, fingerprint)
  const entry = join(folder, 'petalyard.cjs')
  if (existsSync(entry)) return entry
  mkdirSync(builds, { recursive: true })
  await byOne(
    join(builds, `.${fingerprint}.claim`),
    () => existsSync(entry),
    () => buildInFolder(folder, entry, fingerprint),
  )
  return entry
}

async function buildInFolder(folder, entry, fingerprint) {
  const workshop = join(builds, `.${fingerprint}.${randomBytes(4).toString('hex')}`)
  try {
    const { default: config } = await configsOf('command.config.ts')
    await buildInto(config, workshop, { emptyOutDir: false, logLevel: 'silent' })
    try {
      renameSync(workshop, folder)
    } catch (error) {
      if (!existsSync(entry)) throw error
    }
    removeOldBuilds(fingerprint)
  } finally {
    rmSync(workshop, { recursive: true, force: true })
  }
}
