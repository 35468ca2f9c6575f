/**
 * The host behind the bridge, the same for desktop and browser: which projects are open, how they are kept,
 * what can be opened again. Knows no window; the two worlds give it what it needs (`ports.ts`).
 */
import { randomUUID } from 'node:crypto'
import { realpath } from 'node:fs/promises'
import { basename, dirname, resolve } from 'node:path'
import type {
  HostEvents,
  LicenceEntry,
  Outcome,
  ProjectOrigin,
  Settings,
  SettingsChange,
} from '../../shared-types/bridge'
import { done, refused } from '../../shared-types/bridge'
import type { Finding } from '../../shared-types/finding'
import type { KeptFont } from '../../shared-types/fonts'
import type { Project } from '../../shared-types/project'
import { PROJECT_FORMAT, PROJECT_VERSION } from '../../shared-types/project'
import { finding } from '../../src-core/findings/finding'
import type { KeptEntry } from '../documents/session/kept'
import { KeptProjects } from '../documents/session/kept'
import { nameOfFile } from '../documents/session/keeping-words'
import { OwnFolder } from '../documents/session/own-folder'
import type { Checked, FileStamp, Pace, ProjectFiles, Written } from '../documents/session/ports'
import { PACE } from '../documents/session/ports'
import { RecentProjects } from '../documents/session/recent'
import { ProjectSession } from '../documents/session/session'
import { removeStaleStaging } from '../documents/session/stale'
import { Build } from './build'
import { FontStore } from './fonts'
import type { Announce, Examples, Facts, Paper } from './ports'
import { SettingsStore } from './settings'

export interface HostPorts {
  readonly dataFolder: string
  readonly facts: Facts
  readonly locale: string
  readonly files: ProjectFiles
  readonly writeAtomically: (path: string, text: string) => Promise<Written>
  readonly examples: Examples
  readonly paper: Paper
  /** Whose work is in the program. */
  readonly licences: () => Promise<readonly LicenceEntry[]>
  /** Names the build of the program that stands on the disk. */
  readonly build: () => Promise<string>
  readonly announce: Announce
  readonly now?: () => number
  readonly pace?: Pace
}

/** Files are looked at this often for changes by others (ms). */
const LOOK_EVERY = 3_000

/** The example that greets at the very first start; another one where it is missing. */
const FIRST_EXAMPLE = 'hedgerow-baby-throw'

export class Host {
  readonly ports: HostPorts
  /** The program's own folder, through which everything in it is written. */
  readonly own: OwnFolder
  readonly settings: SettingsStore
  readonly fonts: FontStore
  readonly recent: RecentProjects
  /** Whether the program's files are still those that it was started from. */
  readonly build: Build
  readonly paper: Paper
  readonly #kept: KeptProjects
  readonly #sessions = new Map<string, ProjectSession>()
  readonly #now: () => number
  #looking: NodeJS.Timeout | undefined

  constructor(ports: HostPorts) {
    this.ports = ports
    this.#now = ports.now ?? Date.now
    this.own = new OwnFolder(ports.dataFolder, {
      writeAtomically: ports.writeAtomically,
      onChange: () => this.#folderChanged(),
    })
    this.build = new Build(ports.build, () => this.#announceToAll('updated', null))
    this.#kept = new KeptProjects(this.own, { now: this.#now })
    this.paper = onlyOf(this.build, ports.paper)
    this.settings = new SettingsStore(ports.dataFolder, ports.locale, this.own.write)
    this.fonts = new FontStore({
      own: this.own,
      paper: this.paper,
      current: () => this.settings.current,
      change: (fonts) => this.changeSettings({ fonts }),
    })
    this.recent = new RecentProjects(ports.dataFolder, this.#kept, this.own.write)
  }

  /** Makes the data folder ready, as far as it can be written. Call once, before anything else. */
  async start(): Promise<void> {
    await this.build.start()
    await this.#kept.start()
    await this.settings.load()
    await this.recent.load()
    this.#looking = setInterval(() => {
      void this.lookAtDisk()
      void this.own.tryAgain()
      void this.build.isReplaced()
    }, LOOK_EVERY)
    this.#looking.unref()
  }

  /** Closes every project and takes the sign of life away. Problems are those of projects that could not be saved. */
  async stop(): Promise<Finding[]> {
    clearInterval(this.#looking)
    await this.own.tryAgain()
    const closedBefore = (await this.#kept.unwritten()).filter(({ id }) => !this.#sessions.has(id))
    const problems = closedBefore.map(({ title }) =>
      finding('app/cannot-keep', title || 'Untitled', { reason: this.own.problem ?? '' }),
    )
    for (const id of [...this.#sessions.keys()]) {
      const problem = await this.close(id)
      if (problem) problems.push(problem)
    }
    await this.#kept.stop()
    await this.own.done()
    await this.paper.close()
    return problems
  }

  /** Somebody is at a project: its window came to the front, or asked for something. */
  use(id: string): void {
    this.#sessions.get(id)?.use()
  }

  session(id: string): ProjectSession | null {
    return this.#sessions.get(id) ?? null
  }
  get openIds(): readonly string[] {
    return [...this.#sessions.keys()]
  }

  /** Opens what a former run was cut off from; first thing at a start. */
  async openInterrupted(): Promise<string[]> {
    const opened: string[] = []
    for (const entry of await this.#kept.interrupted()) {
      const outcome = await this.#openEntry(entry)
      if (outcome.outcome === 'done') opened.push(outcome.value)
    }
    return opened
  }

  /** What to show when nothing is open: the project that was open last, else an example, else an empty one. */
  async openAtStart(): Promise<string> {
    if (!this.settings.isFirstStart) {
      for (const entry of await this.recent.list()) {
        const opened = await this.openRecent(entry.id)
        if (opened.outcome === 'done') return opened.value
      }
    }
    const all = await this.ports.examples.list()
    const example = all.find(({ name }) => name === FIRST_EXAMPLE) ?? all[0]
    const opened = example ? await this.openExample(example.name) : null
    return opened?.outcome === 'done' ? opened.value : this.openBlank()
  }

  /** Opens a file; where it is open already, answers with the project that is. */
  async openPath(path: string): Promise<Outcome<string>> {
    const whole = await realpath(resolve(path)).catch(() => resolve(path))
    const open = this.#openAt(whole)
    if (open) return done(open.id)
    for (const entry of await this.#kept.list()) {
      const holdsMore = entry.path === whole && entry.savedRevision < entry.revision
      if (holdsMore && !(await this.#kept.isHeld(entry))) return this.#openEntry(entry)
    }
    await removeStaleStaging(dirname(whole), basename(whole), this.#now())
    const read = await this.ports.files.open(whole)
    if (!read.ok) return refused(read.problem)
    await this.recent.remember(whole, this.#time(), read.title)
    void this.announceRecent()
    return done(this.#open({ ...read, origin: 'file', path: whole }).id)
  }

  async openRecent(id: string): Promise<Outcome<string>> {
    if (id.startsWith('kept-')) {
      const entry = await this.#keptEntry(id)
      return entry ? this.#openEntry(entry) : refused(finding('app/unknown-recent', 'the list of projects'))
    }
    const path = this.recent.pathOf(id)
    return path === null
      ? refused(finding('app/unknown-recent', 'the list of projects'))
      : this.openPath(path)
  }

  async forgetRecent(id: string): Promise<Outcome<null>> {
    if (id.startsWith('kept-')) {
      const entry = await this.#keptEntry(id)
      if (!entry) return refused(finding('app/unknown-recent', 'the list of projects'))
      if (await this.#kept.isHeld(entry))
        return refused(finding('app/open-elsewhere', entry.title || 'Untitled'))
      await this.#kept.discard(entry.id)
    } else await this.recent.forgetFile(id)
    void this.announceRecent()
    return done(null)
  }

  async openExample(name: string): Promise<Outcome<string>> {
    const text = await this.ports.examples.read(name)
    if (text === null) return refused(finding('app/unknown-example', 'the list of examples', { name }))
    const checked = this.ports.files.check(text, name)
    if (!checked.ok) return refused(checked.problem)
    return done(this.#open({ ...checked, origin: 'example' }).id)
  }

  /** An empty project with the units, terms and paper of the settings. */
  openBlank(): string {
    const { units, terms, hand, currency, paper } = this.settings.current
    const project: Project = {
      format: PROJECT_FORMAT,
      version: PROJECT_VERSION,
      title: '',
      units,
      terms,
      hand,
      currency,
      yarns: [],
      motifs: [],
      colourways: [],
      sheet: { paper, terms },
    }
    const text = JSON.stringify(project, null, 2)
    return this.#open({ text, title: '', findings: [], origin: 'blank' }).id
  }

  /** A text that came without a place (handed over by a browser, or a copy): kept in the app's own folder. */
  async openText(text: string, name: string, origin: ProjectOrigin): Promise<Outcome<string>> {
    const read = this.ports.files.check(text, name)
    if (!read.ok) return refused(read.problem)
    const checked = origin === 'file' ? calledBy(read, nameOfFile(name)) : read
    const session = this.#open({ ...checked, origin })
    const kept = await session.keep({ revision: 1, text: checked.text })
    // In memory alone it is as good to work on; the window says so.
    if (kept.outcome === 'refused' && kept.problem.code !== 'app/cannot-keep') return kept
    return done(session.id)
  }

  /** Ends a project: saved, or kept. The problem is why its file could not be written. */
  async close(id: string): Promise<Finding | null> {
    const session = this.#sessions.get(id)
    if (!session) return null
    const problem = await session.close()
    this.#sessions.delete(id)
    if (session.path !== null) await this.recent.used(session.path, session.usedAt, session.title)
    void this.announceRecent()
    return problem
  }

  /** Looks whether files were changed by others; the windows hear of it. */
  async lookAtDisk(): Promise<void> {
    for (const session of [...this.#sessions.values()]) await session.checkDisk()
  }

  async changeSettings(change: SettingsChange & { fonts?: readonly KeptFont[] }): Promise<Settings> {
    const settings = await this.settings.change(change)
    this.#announceToAll('settings', settings)
    return settings
  }

  /** A project's file has another name now. */
  async renamed(from: string, to: string, title: string): Promise<void> {
    await this.recent.forget(from)
    await this.remember(to, title)
  }

  async remember(path: string, title: string): Promise<void> {
    await this.recent.remember(path, this.#time(), title)
    void this.announceRecent()
  }

  /** Tells every window the list; where it cannot be read at the moment, the windows keep the one they have. */
  async announceRecent(): Promise<void> {
    const entries = await this.recent.list().catch(() => null)
    if (entries === null) return
    this.#announceToAll('recent', entries)
  }

  #announceToAll<Name extends keyof HostEvents>(event: Name, payload: HostEvents[Name]): void {
    for (const id of this.#sessions.keys()) this.ports.announce(id, event, payload)
  }

  async #keptEntry(id: string): Promise<KeptEntry | null> {
    const bare = id.slice('kept-'.length)
    return /^[\w-]{1,64}$/.test(bare) ? this.#kept.get(bare) : null
  }

  async #openEntry(entry: KeptEntry): Promise<Outcome<string>> {
    if (this.#sessions.has(entry.id)) return done(entry.id)
    const name = entry.path === null ? entry.title || 'Untitled' : basename(entry.path)
    if (await this.#kept.isHeld(entry)) return refused(finding('app/open-elsewhere', name))
    const open = entry.path === null ? null : this.#openAt(entry.path)
    if (open) return done(open.id)
    if (entry.path !== null && entry.savedRevision >= entry.revision) {
      await this.#kept.remove(entry.id)
      return this.openPath(entry.path)
    }
    const checked = this.ports.files.check(entry.text, name)
    await this.#kept.put({ ...entry, holder: this.#kept.run })
    if (entry.path !== null) await removeStaleStaging(dirname(entry.path), basename(entry.path), this.#now())
    const origin = entry.holder === null ? 'kept' : 'recovered'
    // What cannot be read opens as a text: nobody else has it, and the window offers it with a way on.
    const read = checked.ok ? checked : { findings: [], unreadable: checked.problem }
    const session = this.#open({ ...entry, ...read, origin, keptText: entry.text })
    if (entry.path !== null) await session.checkDisk()
    return done(session.id)
  }

  #openAt(path: string): ProjectSession | null {
    for (const session of this.#sessions.values()) if (session.path === path) return session
    return null
  }

  #open(start: {
    id?: string
    text: string
    title: string
    findings: readonly Finding[]
    origin: ProjectOrigin
    path?: string | null
    stamp?: FileStamp | null
    revision?: number
    savedRevision?: number
    changedAt?: string
    keptText?: string
    unreadable?: Finding
  }): ProjectSession {
    const id = start.id ?? randomUUID()
    const session = new ProjectSession(
      { path: null, stamp: null, revision: 0, savedRevision: 0, ...start, id },
      {
        files: this.ports.files,
        kept: this.#kept,
        pace: this.ports.pace ?? PACE,
        now: this.#now,
        onKeeping: (keeping) => this.ports.announce(id, 'keeping', keeping),
      },
    )
    this.#sessions.set(id, session)
    return session
  }

  #folderChanged(): void {
    for (const session of this.#sessions.values()) void session.folderChanged()
  }

  #time(): string {
    return new Date(this.#now()).toISOString()
  }
}

/** Paper that is made by workers of the same build alone. */
function onlyOf(build: Build, paper: Paper): Paper {
  return {
    make: async (...asked) => build.demand().then(() => paper.make(...asked)),
    preview: async (...asked) => build.demand().then(() => paper.preview(...asked)),
    readFont: async (...asked) => build.demand().then(() => paper.readFont(...asked)),
    close: () => paper.close(),
  }
}

/** A file that was handed over has no place to be called by: without a title it takes the file's name as one. */
function calledBy(read: Extract<Checked, { ok: true }>, title: string): Extract<Checked, { ok: true }> {
  if (read.title.trim() !== '') return read
  const project = JSON.parse(read.text) as object
  return { ...read, title, text: JSON.stringify({ ...project, title }, null, 2) }
}
