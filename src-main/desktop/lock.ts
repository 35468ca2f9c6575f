/** Who holds the lock that keeps a second instance from running beside the first. */
import { existsSync, readlinkSync } from 'node:fs'
import { join } from 'node:path'

/**
 * Is the lock of the profile in `folder` held by an instance that is alive? Chromium's lock is a link
 * "HOST-PID", on Windows a file that goes with its process.
 */
export function isLockHeld(folder: string, isAlive: (pid: number) => boolean): boolean {
  if (existsSync(join(folder, 'lockfile'))) return true
  try {
    const pid = Number(/-(\d+)$/.exec(readlinkSync(join(folder, 'SingletonLock')))?.[1] ?? 0)
    return pid > 0 && isAlive(pid)
  } catch {
    return false
  }
}
