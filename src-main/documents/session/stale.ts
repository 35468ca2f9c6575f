import { readdir, rm, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { asideStem, stemOfAside } from '../staging-name'

/** Older staging files belong to a process that was killed while it wrote (ms). */
const STALE_AFTER = 60_000

/**
 * Removes the staging files that a killed process left in `folder`: those of the file `name`, or of every file
 * where the folder is the program's own. What cannot be removed stays.
 */
export async function removeStaleStaging(folder: string, name: string | null, now: number): Promise<void> {
  const names = await readdir(folder).catch(() => [])
  const wanted = name === null ? null : asideStem(name)
  for (const each of names) {
    const stem = stemOfAside(each)
    if (stem === null || (wanted !== null && stem !== wanted)) continue
    const path = join(folder, each)
    const facts = await stat(path).catch(() => null)
    if (facts?.isFile() && now - facts.mtimeMs > STALE_AFTER)
      await rm(path, { force: true }).catch(() => undefined)
  }
}
