/**
 * The app's own folder of projects: one entry per project that is open and changed, or that never got a file.
 * An entry is one file, written whole or not at all, so that the process may be killed at any moment.
 *
 * Every run of the program has a sign of life in `running/`. An entry whose holder shows none was cut off:
 * it is offered again at the next start.
 */
import { rename, rm, stat, utimes, writeFile } from 'node:fs/promises'
import { randomUUID } from 'node:crypto'
import { z } from 'zod'
import { FileLocks, LOCK_FOLDER } from './file-locks'
import type { OwnFolder } from './own-folder'
import type { FileStamp, Written } from './ports'
import { isProcessAlive } from './process-alive'
import { removeStaleStaging } from './stale'

const stampSchema = z.object({ size: z.number(), modified: z.number(), hash: z.string() })

const entrySchema = z.object({
  format: z.literal('petalyard-kept'),
  id: z.string().regex(/^[\w-]{1,64}$/),
  /** Where the project lives, or null while it has no file. */
  path: z.string().nullable(),
  stamp: stampSchema.nullable(),
  title: z.string(),
  revision: z.number().int(),
  savedRevision: z.number().int(),
  /** ISO time of the last change. */
  changedAt: z.string(),
  /** ISO time at which somebody was at it last; entries of former versions lack it. */
  usedAt: z.string().optional(),
  /** The run of the program that has it open. */
  holder: z.string().nullable(),
  text: z.string(),
})

export type KeptEntry = Omit<z.infer<typeof entrySchema>, 'format' | 'stamp'> & {
  readonly stamp: FileStamp | null
}

interface KeptOptions {
  readonly now: () => number
  readonly isProcessAlive?: (pid: number) => boolean
}

/** A sign of life is renewed this often, and believed this long (ms). */
const LIFE_SIGN_EVERY = 5_000
const LIFE_SIGN_HOLDS = 20_000
const BIN_KEEPS = 30 * 24 * 3_600_000

export class KeptProjects {
  /** This run of the program. */
  readonly run = randomUUID()
  readonly #folder: OwnFolder
  readonly #options: KeptOptions
  readonly #locks: FileLocks
  #lifeSign: NodeJS.Timeout | undefined
  /** When the last sign of life was shown (ms). */
  #shownAt = 0
  /** Entries that this run holds, and those of them that are known to be its own since it last showed life. */
  readonly #held = new Set<string>()
  readonly #sure = new Set<string>()
  /** Where entries go that another run took over while this one was stopped. */
  readonly #beside = new Map<string, string>()

  constructor(folder: OwnFolder, options: KeptOptions) {
    this.#folder = folder
    this.#options = options
    this.#locks = new FileLocks(folder, {
      now: options.now,
      run: this.run,
      isAlive: (run) => this.#isAlive(run),
    })
  }

  /** Why the own folder cannot be written at the moment, in a few words; null while it can. */
  get trouble(): string | null {
    return this.#folder.problem
  }

  /** Where that is. */
  get place(): string {
    return this.#folder.path
  }

  /**
   * Makes the folders, shows the first sign of life and empties the bin of what is older than 30 days; all of it
   * as far as the own folder can be written.
   */
  async start(): Promise<void> {
    for (const name of ['', 'kept', 'running', 'bin', LOCK_FOLDER]) await this.#folder.make(name)
    await this.#showLife()
    this.#lifeSign = setInterval(() => void this.#showLife(), LIFE_SIGN_EVERY)
    this.#lifeSign.unref()
    await this.#emptyBin()
    await this.#locks.clean()
    for (const folder of [this.#path('kept'), this.#path()])
      await removeStaleStaging(folder, null, this.#options.now())
  }

  async stop(): Promise<void> {
    clearInterval(this.#lifeSign)
    await this.#folder.remove(this.#path('running', this.run))
  }

  /** Does something to a file while no other run of the program does; null where one is at it for too long. */
  alone<T>(path: string, action: (isHeld: () => Promise<boolean>) => Promise<T>): Promise<T | null> {
    return this.#locks.alone(path, action)
  }

  /**
   * Writes an entry. One that another run took over while this one was stopped for longer than its sign of life is
   * believed is left to that run: ours is kept beside it from then on.
   */
  async put(entry: KeptEntry): Promise<Written> {
    if (entry.holder === this.run && (await this.#isTaken(entry.id))) this.#beside.set(entry.id, randomUUID())
    const id = this.#idOf(entry.id)
    const written = await this.#folder.write(
      this.#entryPath(id),
      JSON.stringify({ format: 'petalyard-kept', ...entry, id }),
    )
    if (written.ok && entry.holder === this.run) {
      this.#held.add(id)
      this.#sure.add(id)
    }
    return written
  }

  /** Did another run take this entry over, so that it is kept beside that now? */
  isBeside(id: string): boolean {
    return this.#beside.has(id)
  }

  readonly #idOf = (id: string): string => this.#beside.get(id) ?? id

  async #isTaken(as: string): Promise<boolean> {
    if (this.#isOld(this.#shownAt)) await this.#showLife()
    const id = this.#idOf(as)
    if (!this.#held.has(id) || this.#sure.has(id)) return false
    const entry = await this.get(id)
    return entry !== null && entry.holder !== this.run
  }

  async get(id: string): Promise<KeptEntry | null> {
    try {
      return entrySchema.parse(JSON.parse(await this.#folder.read(this.#entryPath(id))))
    } catch {
      return null
    }
  }

  /** Removes an entry of this run; not one that another run took over. */
  async remove(as: string): Promise<void> {
    const id = this.#idOf(as)
    if (!(await this.#isTaken(as))) await this.#folder.remove(this.#entryPath(id))
    this.#held.delete(id)
  }

  /** Puts an entry into the bin, from which it goes after 30 days. */
  async discard(id: string): Promise<void> {
    const [entry, target] = [this.#entryPath(id), this.#path('bin', `${id}.json`)]
    if (this.#folder.isWaiting(entry)) {
      await this.#folder.write(target, await this.#folder.read(entry))
      return this.#folder.remove(entry)
    }
    await rename(entry, target)
    const now = new Date(this.#options.now())
    await utimes(target, now, now)
  }

  /** Every readable entry, the newest first. What cannot be read is left where it is. */
  async list(): Promise<KeptEntry[]> {
    const names = (await this.#folder.names('kept')).filter((name) => name.endsWith('.json'))
    const entries = await Promise.all(names.map((name) => this.get(name.slice(0, -'.json'.length))))
    return entries.filter((entry) => entry !== null).sort((a, b) => b.changedAt.localeCompare(a.changedAt))
  }

  /** Entries that are in memory alone until the own folder can be written. */
  async unwritten(): Promise<KeptEntry[]> {
    return (await this.list()).filter((entry) => this.#folder.isWaiting(this.#entryPath(entry.id)))
  }

  /** Entries whose run ended without closing them. */
  async interrupted(): Promise<KeptEntry[]> {
    const result: KeptEntry[] = []
    for (const entry of await this.list())
      if (entry.holder !== null && !(await this.isHeld(entry))) result.push(entry)
    return result
  }

  /** Is the entry open in a run of the program that is still alive (this one or another)? */
  async isHeld(entry: KeptEntry): Promise<boolean> {
    return entry.holder !== null && this.#isAlive(entry.holder)
  }

  async #isAlive(run: string): Promise<boolean> {
    if (run === this.run) return true
    if (!/^[\w-]{1,64}$/.test(run)) return false
    const sign = this.#path('running', run)
    try {
      const [pid, shown] = [Number(await this.#folder.read(sign)), (await stat(sign)).mtimeMs]
      const isAlive = this.#options.isProcessAlive ?? isProcessAlive
      if (isAlive(pid) && !this.#isOld(shown)) return true
      await rm(sign, { force: true })
    } catch {
      // No sign of life.
    }
    return false
  }

  /** Is a sign of life believed no longer? One from far ahead was given before the clock was set back. */
  #isOld(shownAt: number): boolean {
    return Math.abs(this.#options.now() - shownAt) > LIFE_SIGN_HOLDS
  }

  /** A sign that is there is only renewed: that needs no room, and never leaves it empty. */
  async #showLife(): Promise<void> {
    const sign = this.#path('running', this.run)
    const now = new Date()
    // Whoever looked meanwhile took this run for gone.
    if (this.#isOld(this.#shownAt)) this.#sure.clear()
    const renew = () => utimes(sign, now, now)
    const isShown = await this.#folder.attempt(() =>
      renew().catch(() => writeFile(sign, String(process.pid))),
    )
    if (isShown) this.#shownAt = this.#options.now()
  }

  async #emptyBin(): Promise<void> {
    for (const name of await this.#folder.names('bin')) {
      const path = this.#path('bin', name)
      const facts = await stat(path).catch(() => null)
      if (facts && this.#options.now() - facts.mtimeMs > BIN_KEEPS) await this.#folder.remove(path)
    }
  }

  #entryPath(id: string): string {
    if (!/^[\w-]{1,64}$/.test(id)) throw new Error(`not an id of a kept project: ${id}`)
    return this.#path('kept', `${id}.json`)
  }

  #path(...parts: string[]): string {
    return this.#folder.at(...parts)
  }
}
