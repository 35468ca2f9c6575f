/**
 * The program's own folder: settings, the list of projects, the projects themselves. It may be full, read-only
 * or not there at all, at the start or later; the program works on from memory then. What could not be written
 * waits here, is read from here, and is written as soon as there is room.
 */
import { chmod, readdir, rm, stat } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import { SIZE_LIMIT } from '../limits'
import { readRegularText } from '../regular-file'
import { makePath } from '../make-path'
import { whyNotWritten } from '../replace-file'
import type { Written } from './ports'

/** A kept project is its text as a JSON string, which may take twice the room, and its envelope. */
const LARGEST = 2 * SIZE_LIMIT + 2 ** 20

/** For nobody else on the machine: a project may come from a file that only its owner can read. */
const PRIVATE = 0o700

/**
 * Nothing is written into a folder of another user (where all may write, or under `sudo`): they can read and change all
 * that is in it, and what is written there under their name they could not change themselves.
 */
export async function demandOurs(folder: string): Promise<void> {
  const facts = await stat(folder).catch(() => null)
  const isTheirs = facts !== null && process.geteuid !== undefined && facts.uid !== process.geteuid()
  if (isTheirs) throw new Error('it belongs to somebody else')
}

async function makePrivate(folder: string): Promise<void> {
  await makePath(folder, PRIVATE)
  const { mode } = await stat(folder)
  // One of an earlier version; a file system without permissions is used as it is.
  if ((mode & 0o077) !== 0) await chmod(folder, mode & PRIVATE).catch(() => undefined)
}

interface OwnFolderOptions {
  readonly writeAtomically: (path: string, text: string) => Promise<Written>
  /** Told when the folder can no longer be written, and when it can again. */
  readonly onChange?: () => void
}

export class OwnFolder {
  readonly path: string
  readonly #options: OwnFolderOptions
  /** Texts that are not on the disk yet, by path. */
  readonly #waiting = new Map<string, string>()
  /** The last write of each path: one that fails while a newer one waits its turn must not put its text in waiting. */
  readonly #turns = new Map<string, number>()
  /** What is done to each path, one after the other: of two writes at once the older one could end last. */
  readonly #doing = new Map<string, Promise<unknown>>()
  readonly #folders = new Set<string>()
  #turn = 0
  #problem: string | null = null
  #trying: Promise<void> | null = null

  constructor(path: string, options: OwnFolderOptions) {
    this.path = path
    this.#options = options
  }

  /** Why it cannot be written at the moment, in a few words; null while it can. */
  get problem(): string | null {
    return this.#problem
  }

  at(...parts: string[]): string {
    return join(this.path, ...parts)
  }

  /** Makes a folder in it (with no name, itself), now and whenever it turns out to be gone. */
  async make(name = ''): Promise<void> {
    const folder = this.at(name)
    this.#folders.add(folder)
    await this.attempt(() => makePrivate(folder))
  }

  /** Does something in the folder that writes; what goes wrong is the folder's problem, never an exception. */
  async attempt(action: () => Promise<unknown>): Promise<boolean> {
    try {
      await demandOurs(this.path)
      await action()
    } catch (error) {
      this.#settle(whyNotWritten(error))
      return false
    }
    return true
  }

  /** Writes a file whole or not at all. What cannot be written waits, and counts as not written. */
  readonly write = async (path: string, text: string): Promise<Written> => {
    const turn = ++this.#turn
    this.#turns.set(path, turn)
    this.#waiting.delete(path)
    const written = await this.#inTurn(path, () => this.#writeInFolder(path, text))
    if (this.#turns.get(path) === turn) {
      this.#turns.delete(path)
      if (!written.ok) this.#waiting.set(path, text)
    }
    // A small file that found room says nothing about a large one that waits.
    if (!written.ok) this.#settle(written.reason)
    else if (this.#waiting.size === 0) this.#settle(null)
    return written
  }

  /** A folder that somebody removed while the program runs is made again at once. */
  async #writeInFolder(path: string, text: string): Promise<Written> {
    if (!(await this.attempt(() => Promise.resolve()))) return { ok: false, reason: this.#problem ?? '' }
    const written = await this.#options.writeAtomically(path, text)
    if (written.ok || (await stat(dirname(path)).catch(() => null))) return written
    for (const folder of this.#folders) await makePrivate(folder).catch(() => undefined)
    return this.#options.writeAtomically(path, text)
  }

  /** Is this file not on the disk yet, or an older one? */
  isWaiting(path: string): boolean {
    return this.#waiting.has(path)
  }

  /** The text of a file, as it was written last, on the disk or not. Throws where there is none. */
  async read(path: string): Promise<string> {
    const waiting = this.#waiting.get(path)
    if (waiting !== undefined) return waiting
    return readRegularText(path, LARGEST)
  }

  /** Names of the files in one of its folders, on the disk or not. */
  async names(folder: string): Promise<string[]> {
    const onDisk = await readdir(this.at(folder)).catch(() => [])
    const waiting = [...this.#waiting.keys()].filter((path) => dirname(path) === this.at(folder))
    return [...new Set([...onDisk, ...waiting.map((path) => basename(path))])]
  }

  async remove(path: string): Promise<void> {
    this.#turns.delete(path)
    this.#waiting.delete(path)
    // In a folder that cannot be read there is nothing to remove; what stays in a read-only one does no harm.
    await this.#inTurn(path, () => rm(path, { force: true }).catch(() => undefined))
  }

  /** Resolves when all that was asked for so far is done. */
  async done(): Promise<void> {
    await Promise.all(this.#doing.values())
  }

  /** Waits for what is done to this path before, whatever becomes of it. */
  #inTurn<T>(path: string, task: () => Promise<T>): Promise<T> {
    const mine = (this.#doing.get(path) ?? Promise.resolve()).then(task)
    const ended = mine
      .catch(() => undefined)
      .then(() => {
        if (this.#doing.get(path) === ended) this.#doing.delete(path)
      })
    this.#doing.set(path, ended)
    return mine
  }

  /** Writes what waits, where that is possible by now. */
  tryAgain(): Promise<void> {
    this.#trying ??= this.#tryAgain().finally(() => (this.#trying = null))
    return this.#trying
  }

  async #tryAgain(): Promise<void> {
    if (this.#problem === null) return
    for (const folder of this.#folders) if (!(await this.attempt(() => makePrivate(folder)))) return
    const waiting = [...this.#waiting]
    for (const [path, text] of waiting)
      if (this.#waiting.get(path) === text && !(await this.write(path, text)).ok) return
    if (waiting.length > 0) return
    // Whether there is room where nothing waits for it is found out by writing a little.
    const probe = this.at('room')
    const written = await this.#options.writeAtomically(probe, 'room\n')
    await this.remove(probe)
    this.#settle(written.ok ? null : written.reason)
  }

  #settle(problem: string | null): void {
    const isChanged = (problem === null) !== (this.#problem === null)
    // What went wrong first is the cause: later writes miss the folder that could not be made.
    this.#problem = problem === null ? null : (this.#problem ?? problem)
    if (isChanged) this.#options.onChange?.()
  }
}
