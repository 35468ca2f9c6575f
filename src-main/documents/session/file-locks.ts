/**
 * One run of the program at a time saves a file: whoever does holds a small file in the program's own folder meanwhile.
 * What a run leaves there that shows no sign of life is taken away; one that was only stopped finds its lock gone before
 * it replaces anything. Where the own folder cannot be written, files are saved without.
 */
import { createHash, randomUUID } from 'node:crypto'
import { rename, rm, stat, writeFile } from 'node:fs/promises'
import { setTimeout as wait } from 'node:timers/promises'
import { readRegularText } from '../regular-file'
import type { OwnFolder } from './own-folder'

export const LOCK_FOLDER = 'saving'

/** How long somebody else's save is waited for, and how often it is looked at (ms; common practice, no source). */
const WAITS = 3_000
const LOOKS_EVERY = 25
/** One that names no run for this long was never written (ms). */
const WRITTEN_WITHIN = 5_000
/** Longest text of a lock (bytes). */
const LONGEST = 200

interface LockOptions {
  readonly now: () => number
  /** This run, and whether another one shows a sign of life. */
  readonly run: string
  readonly isAlive: (run: string) => Promise<boolean>
  /** For tests: how a lock is moved out of the way. */
  readonly move?: typeof rename
}

export class FileLocks {
  readonly #folder: OwnFolder
  readonly #options: LockOptions

  constructor(folder: OwnFolder, options: LockOptions) {
    this.#folder = folder
    this.#options = options
  }

  /** Takes away what runs left that were killed. */
  async clean(): Promise<void> {
    for (const name of await this.#folder.names(LOCK_FOLDER)) {
      const lock = this.#folder.at(LOCK_FOLDER, name)
      if (await this.#isLeft(lock)) await this.#takeAway(lock)
    }
  }

  /**
   * Does something to the file at `path` while no other run does; `isHeld` tells whether that still holds. Null where
   * another run is at it for too long.
   */
  async alone<T>(path: string, action: (isHeld: () => Promise<boolean>) => Promise<T>): Promise<T | null> {
    const lock = this.#folder.at(LOCK_FOLDER, createHash('sha256').update(path).digest('hex').slice(0, 40))
    // The run first, then what no other lock has.
    const own = `${this.#options.run} ${randomUUID()}`
    const taken = await this.#take(lock, own)
    if (taken === 'busy') return null
    if (taken === 'no-folder') return action(() => Promise.resolve(true))
    const isHeld = async () => (await this.#read(lock)) === own
    try {
      return await action(isHeld)
    } finally {
      if (await isHeld()) await rm(lock, { force: true }).catch(() => undefined)
    }
  }

  async #take(lock: string, own: string): Promise<'taken' | 'busy' | 'no-folder'> {
    // Counted, not timed: the clock may be set back meanwhile.
    for (let looks = 0; ; looks++) {
      try {
        await writeFile(lock, own, { flag: 'wx', mode: 0o600 })
        return 'taken'
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code !== 'EEXIST') return 'no-folder'
      }
      if (await this.#isLeft(lock)) {
        // In a folder that can only be read by now it stays for ever, and holds nobody up.
        if (!(await this.#takeAway(lock))) return 'no-folder'
      } else if (looks >= WAITS / LOOKS_EVERY) return 'busy'
      else await wait(LOOKS_EVERY)
    }
  }

  /** Does nobody hold it any more? */
  async #isLeft(lock: string): Promise<boolean> {
    const facts = await stat(lock).catch(() => null)
    if (facts === null) return false
    const run = (await this.#read(lock))?.split(' ')[0]
    if (run) return !(await this.#options.isAlive(run))
    return Math.abs(this.#options.now() - facts.mtimeMs) > WRITTEN_WITHIN
  }

  /** Of several that want to, one can rename it. False where it is there for good. */
  async #takeAway(lock: string): Promise<boolean> {
    const away = `${lock}.${randomUUID()}`
    try {
      await (this.#options.move ?? rename)(lock, away)
    } catch (error) {
      return (error as NodeJS.ErrnoException).code === 'ENOENT'
    }
    await rm(away, { force: true }).catch(() => undefined)
    return true
  }

  #read(lock: string): Promise<string | null> {
    return readRegularText(lock, LONGEST).catch(() => null)
  }
}
