import { rmSync } from 'node:fs'

/**
 * Removes a folder of the time being, as far as that is possible. What went wrong is not told: an error while the
 * program quits is shown by Electron in a window of its own, behind which it waits for ever.
 */
export function forgetFolder(folder: string): void {
  try {
    rmSync(folder, { recursive: true, force: true, maxRetries: 3 })
  } catch {
    // Somebody is still writing into it; the system clears its folder of temporary files by itself.
  }
}
