/** The few things that saving asks of the machine. Tests give one that fails at a chosen step. */
import { access, constants, copyFile, link, open, realpath, rename, rm, stat } from 'node:fs/promises'
import { setTimeout as wait } from 'node:timers/promises'
import writeFileAtomic from 'write-file-atomic'
import { readRegularFile } from './regular-file'

export interface FileFacts {
  readonly mtimeMs: number
  readonly size: number
  readonly isFile: boolean
  readonly mode: number
  readonly owner: { readonly uid: number; readonly gid: number }
}

export interface FilePort {
  /** The real path behind links, or null where nothing is there. */
  readonly realPath: (path: string) => Promise<string | null>
  /** Facts of what is there, or null. */
  readonly facts: (path: string) => Promise<FileFacts | null>
  /** Throws where the file may not be written. */
  readonly demandWritable: (path: string) => Promise<void>
  /** Writes a new file and waits until it is on the disk. */
  readonly writeDurably: (path: string, bytes: Uint8Array, like: FileFacts | null) => Promise<void>
  /** Reads a file of at most `largest` bytes; throws where it is no file, or a larger one. */
  readonly read: (path: string, largest: number) => Promise<Uint8Array>
  /** Copies a file and waits until it is on the disk. */
  readonly copy: (from: string, to: string) => Promise<void>
  readonly rename: (from: string, to: string) => Promise<void>
  /** The same onto a name that nothing has: EEXIST where anything has it, however shortly before it came. */
  readonly renameToFree: (from: string, to: string) => Promise<void>
  readonly remove: (path: string) => Promise<void>
  /** Makes a rename in this folder last a power cut, where the machine can do that. */
  readonly syncFolder: (path: string) => Promise<void>
  readonly wait: (milliseconds: number) => Promise<void>
}

const noneIfMissing = (error: NodeJS.ErrnoException): null => {
  if (error.code === 'ENOENT') return null
  throw error
}

async function synced(path: string, flags: 'r' | 'r+'): Promise<void> {
  const handle = await open(path, flags)
  try {
    await handle.sync()
  } finally {
    await handle.close()
  }
}

/** A rename replaces what is there, a second name does not: the file gets that first, and then loses its former one. */
export async function renameToFree(from: string, to: string): Promise<void> {
  try {
    await link(from, to)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') throw error
    // Some file systems know no second names: an empty file claims it.
    await (await open(to, 'wx')).close()
    return rename(from, to).catch(async (failed: unknown) => {
      await rm(to, { force: true })
      throw failed
    })
  }
  await rm(from, { force: true }).catch(async (failed: unknown) => {
    await rm(to, { force: true })
    throw failed
  })
}

export const machineFiles: FilePort = {
  realPath: (path) => realpath(path).catch(noneIfMissing),
  facts: (path) =>
    stat(path).then(
      (stats) => ({
        mtimeMs: stats.mtimeMs,
        size: stats.size,
        isFile: stats.isFile(),
        mode: stats.mode,
        owner: { uid: stats.uid, gid: stats.gid },
      }),
      noneIfMissing,
    ),
  demandWritable: (path) => access(path, constants.W_OK),
  writeDurably: (path, bytes, like) =>
    writeFileAtomic(path, Buffer.from(bytes), like ? { mode: like.mode, chown: like.owner } : {}),
  read: async (path, largest) => (await readRegularFile(path, largest)).bytes,
  copy: async (from, to) => {
    await copyFile(from, to)
    await synced(to, 'r+')
  },
  rename: (from, to) => rename(from, to),
  renameToFree,
  remove: (path) => rm(path, { force: true }),
  syncFolder: (path) => synced(path, 'r'),
  wait: async (milliseconds) => {
    await wait(milliseconds)
  },
}
