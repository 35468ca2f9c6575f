import { readdir, rm, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { SIZE_LIMIT } from '../limits'
import { hashOf, readRegularFile } from '../regular-file'
import { asideStem, stemOfAside, stemOfKept } from '../staging-name'

/** Older staging files belong to a process that was killed while it wrote (ms). */
const STALE_AFTER = 60_000

/**
 * Removes the staging files that a killed process left in `folder`: those of the file `name`, or of every file
 * where the folder is the program's own. What a person was told to find beside a file stays, until that file holds
 * the same. What cannot be removed stays.
 */
export async function removeStaleStaging(folder: string, name: string | null, now: number): Promise<void> {
  const names = await readdir(folder).catch(() => [])
  const wanted = name === null ? null : asideStem(name)
  for (const each of names) {
    if (name !== null && stemOfKept(each) === wanted)
      await removeIfSaved(join(folder, each), join(folder, name))
    const stem = stemOfAside(each)
    if (stem === null || (wanted !== null && stem !== wanted)) continue
    const path = join(folder, each)
    const facts = await stat(path).catch(() => null)
    if (facts?.isFile() && now - facts.mtimeMs > STALE_AFTER)
      await rm(path, { force: true }).catch(() => undefined)
  }
}

/** Removes what was kept beside a file where that file holds the same by now. */
async function removeIfSaved(kept: string, file: string): Promise<void> {
  const [one, other] = await Promise.all([contentOf(kept), contentOf(file)])
  if (one !== null && one === other) await rm(kept, { force: true }).catch(() => undefined)
}

const contentOf = (path: string): Promise<string | null> =>
  readRegularFile(path, SIZE_LIMIT).then(
    ({ bytes }) => hashOf(bytes),
    () => null,
  )
