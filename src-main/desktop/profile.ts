import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { app } from 'electron'
import { isProcessAlive } from '../documents/session/process-alive'
import { forgetFolder } from './forget-folder'
import { isLockHeld } from './lock'

/**
 * May this instance run? No where another one has the lock: that one shows its window. A lock that nobody has
 * could not be written, since the program's folder `home` is full or read-only: then Chromium's own files go to
 * a folder for the time being, and the window says what is the matter.
 */
export function mayRun(home: string): boolean {
  if (app.requestSingleInstanceLock()) return true
  if (isLockHeld(home, isProcessAlive)) return false
  const elsewhere = temporaryProfile()
  if (elsewhere !== null) {
    app.setPath('userData', elsewhere)
    app.requestSingleInstanceLock()
    app.on('quit', () => forgetFolder(elsewhere))
  }
  return true
}

/** A folder of this run alone; null where even that cannot be had. Chromium then does without its files. */
function temporaryProfile(): string | null {
  try {
    return mkdtempSync(join(tmpdir(), 'petalyard-'))
  } catch {
    return null
  }
}
