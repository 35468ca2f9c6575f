/** Where the packed program is, and whether it was packed from the present sources. */
import {
  copyFileSync,
  existsSync,
  linkSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { programIn } from '../packing/electron-builder.mjs'
import { fingerprintOf, root } from './fresh-build.mjs'
import { PACKED_SOURCES } from './window-build.mjs'

export const dist = join(root, 'dist')

/** Where the packer puts the program as a folder. */
export function unpackedFolder() {
  const suffix = process.arch === 'x64' ? '' : `-${process.arch}`
  if (process.platform === 'darwin') return join(dist, `mac${suffix}`)
  return join(dist, `${process.platform === 'win32' ? 'win' : 'linux'}${suffix}-unpacked`)
}

export const packedProgram = () => programIn(unpackedFolder(), process.platform)

const mark = join(dist, '.packed-from')
const sources = () => fingerprintOf([...PACKED_SOURCES, 'packing/electron-builder.mjs', 'packing/fuses.mjs'])

/** Notes what the folder was packed from. */
export const notePacked = () => writeFileSync(mark, sources())

/** Null where there is a packed program of the present sources, else why there is none. */
export function whyNotPacked() {
  if (!existsSync(packedProgram()) || !existsSync(mark)) return 'nothing is packed (npm run dist -- folder)'
  return readFileSync(mark, 'utf8') === sources()
    ? null
    : 'what is packed is of other sources (npm run dist -- folder)'
}

/** The same files under other names, without copying what they hold where the disk allows that. */
export function linkTree(from, to) {
  mkdirSync(to, { recursive: true })
  for (const entry of readdirSync(from, { withFileTypes: true })) {
    const work = entry.isDirectory() ? linkTree : entry.isSymbolicLink() ? linkAgain : linkOrCopy
    work(join(from, entry.name), join(to, entry.name))
  }
}

function linkOrCopy(from, to) {
  try {
    linkSync(from, to)
  } catch {
    copyFileSync(from, to)
  }
}

const linkAgain = (from, to) => symlinkSync(readlinkSync(from), to)

/**
 * What is packed, in another folder: within the sources it would find their packages, which nobody has who installed
 * it. Returns the program there.
 */
export function copyPacked(to) {
  linkTree(unpackedFolder(), to)
  return programIn(to, process.platform)
}
