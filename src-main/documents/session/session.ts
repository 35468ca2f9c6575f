/**
 * One open project: what the window hands over is kept at once in the app's own folder, and saved to the
 * user's file on a timer. Nothing is written over a file that somebody else changed meanwhile.
 */
import { realpath } from 'node:fs/promises'
import { basename } from 'node:path'
import type { DiskAnswer, Keeping, OpenProject, Outcome, ProjectChange } from '../../../shared-types/bridge'
import { done, refused } from '../../../shared-types/bridge'
import type { DiskState, ProjectOrigin } from '../../../shared-types/bridge'
import type { Finding } from '../../../shared-types/finding'
import { finding } from '../../../src-core/findings/finding'
import { FilePlace } from './file-place'
import { hashOf } from '../regular-file'
import { folderProblem, nameInWords, placeInWords } from './keeping-words'
import type { HowToWrite } from './file-place'
import type { Written } from './ports'
import { SaveTimer } from './save-timer'
import { stampOf } from './stamp'
import type { SessionPorts, SessionStart } from './start'
import { Turns } from './turns'

export const FILE_ENDING = '.petalyard'

export class ProjectSession {
  readonly id: string
  readonly #ports: SessionPorts
  readonly #origin: ProjectOrigin
  #findings: readonly Finding[]
  #unreadable: Finding | undefined
  #text: string
  #title: string
  #file: FilePlace | null
  #revision: number
  #savedRevision: number
  #keptRevision = -1
  #changedAt: string
  #savedAt: string | null = null
  #disk: DiskState = 'same'
  #problem: Finding | null = null
  #remark: Finding | null = null
  /** When it was opened, looked at or changed last (ms). */
  #usedAt: number
  readonly #timer: SaveTimer
  #closed = false
  /** Writes of one project never overlap. */
  readonly #turns = new Turns()

  constructor(start: SessionStart, ports: SessionPorts) {
    this.#ports = ports
    this.#timer = new SaveTimer(ports.pace, ports.now)
    this.id = start.id
    this.#origin = start.origin
    this.#findings = start.findings
    this.#unreadable = start.unreadable
    this.#text = start.text
    this.#title = start.title
    this.#revision = start.revision
    this.#savedRevision = start.savedRevision
    this.#changedAt = start.changedAt ?? new Date(ports.now()).toISOString()
    this.#usedAt = ports.now()
    const { path, stamp, keptText, revision } = start
    const cutOff = keptText === undefined ? null : { hash: hashOf(keptText), revision }
    this.#file = path === null ? null : new FilePlace(path, stamp, ports, cutOff)
    if (this.#file && this.isUnsaved) this.#plan()
  }

  /** The title of the project as it was kept last. */
  get title(): string {
    return this.#title
  }

  get path(): string | null {
    return this.#file?.path ?? null
  }
  get text(): string {
    return this.#text
  }
  get revision(): number {
    return this.#revision
  }
  /** When it was used last, as an ISO time. */
  get usedAt(): string {
    return new Date(this.#usedAt).toISOString()
  }
  /** Somebody is at it: of all projects, the one that was used last is there at the next start. */
  use(): void {
    this.#usedAt = this.#ports.now()
  }
  /** Nothing was ever changed and it has no file: it may go without a trace. */
  get isUntouched(): boolean {
    return this.path === null && this.#revision === 0
  }
  /** An example that was worked on is somebody's own project by now. */
  private get origin(): ProjectOrigin {
    const isTheirs = (this.#origin === 'example' || this.#origin === 'blank') && !this.isUntouched
    return isTheirs ? (this.path === null ? 'kept' : 'file') : this.#origin
  }
  get isUnsaved(): boolean {
    return this.#savedRevision < this.#revision
  }

  get keeping(): Keeping {
    const theirs = this.#disk === 'changed' ? this.#file?.foreign(this.#text) : null
    return {
      name: this.#name(),
      place: this.path !== null ? 'file' : this.#revision > 0 ? 'app' : 'nowhere',
      where: placeInWords(this.path, this.#revision > 0, this.isUnsaved),
      revision: this.#revision,
      savedRevision: this.#savedRevision,
      savedAt: this.#savedAt,
      problem: this.#problem,
      ...(this.#remark && { remark: this.#remark }),
      folderProblem: folderProblem(this.#ports.kept, this.#name()),
      disk: this.#disk,
      ...(theirs && { theirs }),
    }
  }

  opened(): OpenProject {
    return {
      text: this.#text,
      origin: this.origin,
      nextRevision: this.#revision + 1,
      findings: this.#findings,
      keeping: this.keeping,
      ...(this.#unreadable && { unreadable: this.#unreadable }),
    }
  }

  /**
   * Takes a change over and writes it into the app's own folder before it answers; where that cannot be written,
   * into the project's file.
   */
  async keep(change: ProjectChange): Promise<Outcome<Keeping>> {
    const problem = this.#take(change)
    if (problem) return refused(problem)
    const failed = await this.#journal()
    if (failed && this.path !== null) await this.#saveToFile({})
    this.#plan()
    this.#tell()
    return failed && this.isUnsaved ? refused(failed) : done(this.keeping)
  }

  /** The app's own folder can be written again, or no longer: writes what it does not have, and tells the window. */
  async folderChanged(): Promise<void> {
    if (this.#closed) return
    if (this.#ports.kept.trouble === null && this.isUnsaved && !this.isUntouched) await this.#journal()
    this.#tell()
  }

  /** Saves to the project's file now. Only for a project that has one. */
  async save(change: ProjectChange): Promise<Outcome<Keeping>> {
    const problem = this.#take(change)
    if (problem) return refused(problem)
    const kept = await this.#journal()
    // Even when the app's own folder cannot be written, the user's file may.
    const failed = await this.#saveToFile({ evenIfMissing: true })
    if (failed) return refused(failed)
    if (kept) this.#problem = null
    this.#tell()
    return done(this.keeping)
  }

  /** Moves the project into the file `path`, replacing what is there (the user was asked). */
  saveTo = (path: string, change: ProjectChange) => this.#moveTo(path, change, { over: true, isOthers: true })

  /** The same where nothing may be replaced: refused where something has the name. */
  saveToFree = (path: string, change: ProjectChange) => this.#moveTo(path, change, { onlyIfFree: true })

  async #moveTo(path: string, change: ProjectChange, how: HowToWrite): Promise<Outcome<Keeping>> {
    const problem = this.#take(change)
    if (problem) return refused(problem)
    return this.#turns.take(async () => {
      const [text, revision] = [this.#text, this.#revision]
      const file = new FilePlace(path, null, this.#ports)
      const written = await file.write(text, how)
      if (!written.ok) return refused(finding('app/cannot-write', basename(path), { reason: written.reason }))
      this.#file = file.at(await realpath(path).catch(() => path))
      this.#afterWrite(revision, written)
      await this.#journalNow()
      this.#tell()
      return done(this.keeping)
    })
  }

  /** Gives the file a name that nothing has yet; false where it stays where it is. */
  renameFile(path: string): Promise<boolean> {
    return this.#turns.take(async () => {
      const moved = this.#closed ? null : await this.#file?.renamed(path)
      if (!moved) return false
      this.#file = moved
      await this.#journalNow()
      this.#tell()
      return true
    })
  }

  /** Looks whether somebody else changed the file. */
  async checkDisk(): Promise<DiskState> {
    return this.#turns.take(async () => {
      if (this.#file === null || this.#closed) return 'same'
      const state = await this.#compare(this.#file)
      this.#setDisk(state)
      return state
    })
  }

  /** What the user wants after somebody else changed the file. */
  async answerDisk(answer: DiskAnswer): Promise<Outcome<OpenProject>> {
    const problem = this.#take(answer)
    if (problem) return refused(problem)
    const file = this.#file
    if (file === null) return done(this.opened())
    const { path } = file
    if (answer.answer === 'keep-mine') {
      const failed = await this.#saveToFile({ evenIfMissing: true, overForeign: true })
      return failed ? refused(failed) : done(this.opened())
    }
    return this.#turns.take(async () => {
      const read = await this.#ports.files.open(path)
      if (!read.ok) {
        const gone = (await stampOf(path)) === null
        return refused(
          gone ? finding('app/nothing-on-disk', basename(path), { file: basename(path) }) : read.problem,
        )
      }
      this.#text = read.text
      this.#title = read.title
      this.#findings = read.findings
      this.#unreadable = undefined
      this.#revision += 1
      file.accept(read.stamp)
      this.#afterWrite(this.#revision, { ok: true })
      await this.#journalNow()
      this.#tell()
      return done(this.opened())
    })
  }

  /** Saves what is not in its place yet (file, or own folder); the problem is why that did not work. */
  async settle(): Promise<Finding | null> {
    if (!this.isUnsaved || this.#unreadable) return null
    return this.path === null ? this.#journal() : this.#saveToFile({})
  }

  /**
   * Ends the session: a project with a file is saved into it, one without stays in the app's own folder.
   * Where saving fails, everything stays in the app's own folder and the reason comes back.
   */
  async close(): Promise<Finding | null> {
    this.#timer.stop()
    if (this.isUntouched) {
      this.#closed = true
      await this.#turns.done
      return null
    }
    const failed = await this.settle()
    this.#closed = true
    return this.#turns.take(async () => {
      if (this.path === null || this.isUnsaved) return (await this.#journalNow()) ?? failed
      await this.#ports.kept.remove(this.id)
      return null
    })
  }

  #take(change: ProjectChange): Finding | null {
    if (change.revision < this.#revision)
      return finding('app/old-revision', this.#name(), { received: change.revision, held: this.#revision })
    if (change.revision === this.#revision) return null
    // What is held already may be saved elsewhere, whatever it is.
    if (change.text !== this.#text) {
      const checked = this.#ports.files.check(change.text, this.#name())
      if (!checked.ok) return checked.problem
      this.#text = checked.text
      this.#title = checked.title
      this.#unreadable = undefined
    }
    this.#revision = change.revision
    this.#changedAt = new Date(this.#ports.now()).toISOString()
    this.use()
    return null
  }

  /** Writes the newest state into the app's own folder; changes that came meanwhile are written once. */
  async #journal(): Promise<Finding | null> {
    const wanted = this.#revision
    return this.#turns.take(async () => {
      if (this.#keptRevision >= wanted) return null
      return this.#journalNow()
    })
  }

  async #journalNow(): Promise<Finding | null> {
    const revision = this.#revision
    const isSaved = this.path === null || !this.isUnsaved
    const written = await this.#ports.kept.put({
      id: this.id,
      path: this.path,
      stamp: this.#file?.stamp ?? null,
      title: this.#title,
      revision,
      savedRevision: this.path === null ? revision : this.#savedRevision,
      changedAt: this.#changedAt,
      usedAt: this.usedAt,
      holder: this.#closed ? null : this.#ports.kept.run,
      text: this.#text,
    })
    if (!written.ok) {
      // The user's file has everything: nothing is in danger.
      if (this.path !== null && !this.isUnsaved) return null
      // Why the folder cannot be written, rather than what this one write met because of it.
      const reason = this.#ports.kept.trouble ?? written.reason
      this.#problem = finding('app/cannot-keep', this.#name(), { reason })
      return this.#problem
    }
    this.#keptRevision = revision
    if (this.#ports.kept.isBeside(this.id)) this.#remark = finding('app/taken-over', this.#name())
    if (this.path === null) {
      this.#savedRevision = revision
      this.#savedAt = new Date(this.#ports.now()).toISOString()
    }
    if (isSaved || this.#problem?.code === 'app/cannot-keep') this.#problem = null
    return null
  }

  /** Saves on the timer. A project without a file needs it only where the own folder could not be written. */
  #plan(): void {
    if (this.#closed || this.#unreadable || !this.isUnsaved || this.#disk !== 'same') return
    this.#timer.start(this.#problem !== null, () => {
      void this.settle().then(() => {
        this.#tell()
        this.#plan()
      })
    })
  }

  async #saveToFile(how: { evenIfMissing?: boolean; overForeign?: boolean }): Promise<Finding | null> {
    return this.#turns.take(async () => {
      const place = this.#file
      if (place === null) return null
      const file = basename(place.path)
      const state = await this.#compare(place)
      this.#setDisk(state)
      if (state === 'changed' && !how.overForeign) return finding('app/changed-on-disk', file, { file })
      if (state === 'missing' && !how.evenIfMissing) return finding('app/gone-from-disk', file, { file })
      if (!this.isUnsaved && state === 'same') return null
      const [text, revision] = [this.#text, this.#revision]
      // First into the own folder: whoever finds the file there after a cut knows it for ours.
      if (this.#keptRevision < revision) await this.#journalNow()
      const written = await place.write(text, { over: how.overForeign ?? false })
      if (!written.ok) {
        // Somebody may have written it in the same moment.
        if ((await this.#compare(place)) === 'changed' && !how.overForeign) {
          this.#setDisk('changed')
          return finding('app/changed-on-disk', file, { file })
        }
        const isKept = this.#keptRevision >= this.#revision
        this.#problem = isKept
          ? finding('app/saving-waits', file, { reason: written.reason })
          : finding('app/cannot-keep', file, { reason: this.#ports.kept.trouble ?? written.reason })
        return this.#problem
      }
      this.#afterWrite(revision, written)
      await this.#journalNow()
      return null
    })
  }

  async #compare(file: FilePlace): Promise<DiskState> {
    const { state, saved } = await file.compare()
    this.#savedRevision = Math.max(this.#savedRevision, saved ?? 0)
    return state
  }

  #afterWrite(revision: number, { withoutBackup: reason }: Extract<Written, { ok: true }>): void {
    this.#savedRevision = revision
    this.#savedAt = new Date(this.#ports.now()).toISOString()
    this.#disk = 'same'
    this.#problem = null
    if (reason !== undefined)
      this.#remark = finding('app/no-backup', this.#name(), { file: this.#name(), reason })
    this.#timer.saved(this.isUnsaved)
  }

  #setDisk(state: DiskState): void {
    if (state === this.#disk) return
    this.#disk = state
    this.#tell()
    if (state === 'same') this.#plan()
  }

  #tell(): void {
    if (!this.#closed) this.#ports.onKeeping(this.keeping)
  }

  #name(): string {
    return nameInWords(this.path, this.#title)
  }
}
