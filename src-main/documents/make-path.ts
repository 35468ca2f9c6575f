/** Folders on the way to a place, made one by one. */
import { mkdir, stat } from 'node:fs/promises'
import { dirname } from 'node:path'

/**
 * Makes a folder and those that it stands in, where they are missing. Node's own way of doing it never ends below a
 * folder that is there and takes none (`/proc`): it answers that the folder is missing, and is asked again. Throws
 * what the machine says.
 */
export async function makePath(folder: string, mode = 0o777): Promise<void> {
  try {
    await mkdir(folder, { mode })
  } catch (error) {
    if (await isFolder(folder)) return
    const parent = dirname(folder)
    const isMissing = (error as NodeJS.ErrnoException).code === 'ENOENT'
    if (!isMissing || parent === folder || (await isFolder(parent))) throw error
    await makePath(parent, mode)
    await mkdir(folder, { mode }).catch(async (again: unknown) => {
      if (!(await isFolder(folder))) throw again
    })
  }
}

const isFolder = (path: string): Promise<boolean> =>
  stat(path).then(
    (facts) => facts.isDirectory(),
    () => false,
  )
