import { createHash } from 'node:crypto'
import { readFile, stat } from 'node:fs/promises'
import type { FileStamp } from './ports'

/** The stamp of a file, or null where there is none (or it cannot be read). */
export async function stampOf(path: string): Promise<FileStamp | null> {
  try {
    const before = await stat(path)
    const bytes = await readFile(path)
    return { size: bytes.length, modified: before.mtimeMs, hash: hashOf(bytes) }
  } catch {
    return null
  }
}

/** Compares a file with its stamp. Reads the bytes only where size or time tell of a change. */
export async function compareWithDisk(
  path: string,
  stamp: FileStamp | null,
): Promise<{ readonly state: 'same' | 'changed' | 'missing'; readonly stamp: FileStamp | null }> {
  let now
  try {
    now = await stat(path)
  } catch {
    return { state: 'missing', stamp }
  }
  if (stamp && now.size === stamp.size && now.mtimeMs === stamp.modified) return { state: 'same', stamp }
  const fresh = await stampOf(path)
  if (!fresh) return { state: 'missing', stamp }
  return { state: stamp && fresh.hash === stamp.hash ? 'same' : 'changed', stamp: fresh }
}

function hashOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex')
}
