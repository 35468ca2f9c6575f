import { stat } from 'node:fs/promises'
import { SIZE_LIMIT } from '../limits'
import { hashOf, readRegularFile, stampOfRead, TOO_LARGE } from '../regular-file'
import type { FileStamp } from './ports'

/** The stamp of a file, or null where there is none that a project could be. */
export async function stampOf(path: string): Promise<FileStamp | null> {
  return readStamp(path).catch(() => null)
}

/**
 * The stamp of what was just written. Where somebody else has written since, the file is not ours: the stamp is then
 * one that no file has, so that the next look finds it changed.
 */
export async function stampOfWritten(path: string, text: string): Promise<FileStamp | null> {
  const stamp = await stampOf(path)
  if (stamp === null) return null
  const hash = hashOf(text)
  return stamp.hash === hash ? stamp : { size: -1, modified: 0, hash }
}

async function readStamp(path: string): Promise<FileStamp> {
  return stampOfRead(await readRegularFile(path, SIZE_LIMIT))
}

/**
 * Compares a file with its stamp. Reads the bytes only where size or time tell of a change. What stands in its
 * place and is no file, a folder or a pipe, is not the file: that one is missing.
 */
export async function compareWithDisk(
  path: string,
  stamp: FileStamp | null,
): Promise<{ readonly state: 'same' | 'changed' | 'missing'; readonly stamp: FileStamp | null }> {
  try {
    const now = await stat(path)
    if (!now.isFile()) return { state: 'missing', stamp }
    if (stamp && now.size === stamp.size && now.mtimeMs === stamp.modified) return { state: 'same', stamp }
    const fresh = await readStamp(path)
    return { state: stamp && fresh.hash === stamp.hash ? 'same' : 'changed', stamp: fresh }
  } catch (error) {
    // A file that no project can be was not written here.
    const isForeign = (error as NodeJS.ErrnoException).code === TOO_LARGE
    return { state: isForeign ? 'changed' : 'missing', stamp }
  }
}
