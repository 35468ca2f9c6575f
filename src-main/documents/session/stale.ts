import { readdir, rm, stat } from 'node:fs/promises'
import { join } from 'node:path'

/** Older staging files belong to a process that was killed while it wrote (ms). */
const STALE_AFTER = 60_000
/** ".NAME.<12 hex>.new" and ".old", as `replaceFile` makes them, and what write-file-atomic adds. */
const STAGING = /^\.(.+)\.[0-9a-f]{12}\.(?:new|old)(?:\.\d+)?$/

/**
 * Removes the staging files that a killed process left in `folder`: those of the file `name`, or of every file
 * where the folder is the program's own. What cannot be removed stays.
 */
export async function removeStaleStaging(folder: string, name: string | null, now: number): Promise<void> {
  const names = await readdir(folder).catch(() => [])
  for (const each of names) {
    const target = STAGING.exec(each)?.[1]
    if (target === undefined || (name !== null && target !== name)) continue
    const path = join(folder, each)
    const facts = await stat(path).catch(() => null)
    if (facts?.isFile() && now - facts.mtimeMs > STALE_AFTER)
      await rm(path, { force: true }).catch(() => undefined)
  }
}
