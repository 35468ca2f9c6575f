/** A project's file: what it was like when it was seen last, and writing it over nobody else's work. */
import { realpath } from 'node:fs/promises'
import type { DiskState, OnDisk } from '../../../shared-types/bridge'
import { renameToFree } from '../file-port'
import type { KeptProjects } from './kept'
import { isBare, losesWork } from './lost-work'
import type { FileStamp, ProjectFiles, Written } from './ports'
import { compareWithDisk, stampOfWritten } from './stamp'
import { ForeignVersion } from './foreign-version'

interface FilePorts {
  readonly files: ProjectFiles
  readonly kept: KeptProjects
}

/** What the file may hold by our own hand, although its stamp does not say so yet. */
interface CutOff {
  readonly hash: string
  readonly revision: number
}

export interface HowToWrite {
  /** Also over what somebody else changed. */
  readonly over?: boolean
  /** What is there is another project, of which a copy has to stay. */
  readonly isOthers?: boolean
  /** Nothing may be there. */
  readonly onlyIfFree?: boolean
}

export class FilePlace {
  readonly path: string
  readonly #ports: FilePorts
  #stamp: FileStamp | null
  #cutOff: CutOff | null
  /** The next write leaves a backup copy of what stood there before. */
  #backupDue = true
  /** What somebody else put there, read once for each of its stamps. */
  #foreign: ForeignVersion | null = null

  constructor(path: string, stamp: FileStamp | null, ports: FilePorts, cutOff: CutOff | null = null) {
    this.path = path
    this.#stamp = stamp
    this.#ports = ports
    this.#cutOff = cutOff
  }

  get stamp(): FileStamp | null {
    return this.#stamp
  }

  /** The same file by another path to it: behind links, say. */
  at(path: string): FilePlace {
    const place = new FilePlace(path, this.#stamp, this.#ports, this.#cutOff)
    place.#backupDue = this.#backupDue
    return place
  }

  /** The file under another name; null where somebody else changed it, or it cannot be renamed, or the name is taken: then it stays. */
  async renamed(path: string): Promise<FilePlace | null> {
    if ((await this.compare()).state !== 'same') return null
    const isMoved = await renameToFree(this.path, path).then(
      () => true,
      () => false,
    )
    return isMoved ? this.at(await realpath(path).catch(() => path)) : null
  }

  /**
   * Looks whether somebody else changed it. What was written in the moment of a cut is ours, up to the revision
   * that is told then: only the news of it got lost.
   */
  async compare(): Promise<{ readonly state: DiskState; readonly saved: number | null }> {
    const { state, stamp } = await compareWithDisk(this.path, this.#stamp)
    const isOurs = state === 'changed' && this.#cutOff !== null && stamp?.hash === this.#cutOff.hash
    if (state !== 'same' && !isOurs) {
      if (state === 'changed' && this.#foreign?.hash !== stamp?.hash)
        this.#foreign = await ForeignVersion.read(this.path, this.#ports.files)
      return { state, saved: null }
    }
    this.#stamp = stamp
    return { state: 'same', saved: isOurs ? this.#cutOff!.revision : null }
  }

  /** What the file holds that somebody else changed, beside the `text` that is here; null where it is no project. */
  foreign(text: string): OnDisk | null {
    return this.#foreign?.beside(text) ?? null
  }

  /** What is there now counts as seen, and is kept as a copy by the next write; `stamp` as it was read. */
  accept(stamp: FileStamp | null): void {
    this.#stamp = stamp
    this.#cutOff = null
    this.#backupDue = true
  }

  /** Writes it while no other run of the program does; not over what somebody else changed. */
  async write(
    text: string,
    { over = false, isOthers = false, onlyIfFree = false }: HowToWrite = {},
  ): Promise<Written> {
    if (over || (await this.#losesWork(text))) this.#backupDue = true
    const written = await this.#ports.kept.alone(this.path, async (isHeld): Promise<Written> => {
      const isAsSeen = async () => over || (await this.compare()).state !== 'changed'
      const answer = await this.#ports.files.write(this.path, text, {
        backup: isOthers ? 'demanded' : this.#backupDue,
        onlyIfFree,
        mayReplace: async () => (await isAsSeen()) && (await isHeld()),
      })
      if (!answer.ok) return answer
      this.#stamp = await stampOfWritten(this.path, text)
      this.#cutOff = null
      this.#backupDue = false
      return answer
    })
    return written ?? { ok: false, reason: 'another window of Petalyard is saving it' }
  }

  /** Would a save leave nothing of the work that the file holds (somebody pressed Undo until it stopped, say)? */
  async #losesWork(text: string): Promise<boolean> {
    if (this.#backupDue || !isBare(text)) return false
    const there = await this.#ports.files.open(this.path)
    return there.ok && losesWork(there.text, text)
  }
}
