/** A data folder and the parts of a session, for tests: real files, short times, faults on demand. */
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { vi } from 'vitest'
import type { Keeping } from '../../../../shared-types/bridge'
import { KeptProjects } from '../../../../src-main/documents/session/kept'
import { OwnFolder } from '../../../../src-main/documents/session/own-folder'
import type { Pace, ProjectFiles, Written } from '../../../../src-main/documents/session/ports'
import { projectFiles, writeAtomically } from '../../../../src-main/documents/session/project-files'
import { ProjectSession } from '../../../../src-main/documents/session/session'
import type { SessionStart } from '../../../../src-main/documents/session/start'
import { stampOf } from '../../../../src-main/documents/session/stamp'
import { NEVER, projectText, titleOf } from './texts'

export { NEVER, projectText, titleOf }

export const QUICK: Pace = { saveAfter: 20, saveAtMost: 80, saveAgain: 40 }
/** Tries a check again until it holds; patient, since other work may keep the machine busy. */
export const eventually = <T>(check: () => T | Promise<T>) =>
  vi.waitFor(check, { timeout: 15_000, interval: 20 })

export class World {
  /** The next writes to project files, or to the own folder, fail with this reason. */
  fileFault: string | null = null
  ownFault: string | null = null
  /** What somebody else does right behind a write to a project file. */
  behindWrite: ((path: string) => Promise<void>) | null = null
  readonly told: Keeping[] = []
  readonly writes: { readonly path: string; readonly backup: boolean }[] = []
  readonly own: OwnFolder
  readonly kept: KeptProjects
  readonly files: ProjectFiles = {
    ...projectFiles,
    write: async (path, text, options) => {
      if (this.fileFault !== null) return { ok: false, reason: this.fileFault }
      this.writes.push({ path, backup: options.backup !== false })
      const written = await projectFiles.write(path, text, options)
      await this.behindWrite?.(path)
      return written
    },
  }

  private constructor(readonly folder: string) {
    this.own = new OwnFolder(folder, { writeAtomically: (...words) => this.writeOwn(...words) })
    this.kept = new KeptProjects(this.own, { now: Date.now })
  }

  static async make(): Promise<World> {
    const world = new World(await mkdtemp(join(tmpdir(), 'petalyard-session-')))
    await world.kept.start()
    return world
  }

  path(name: string): string {
    return join(this.folder, name)
  }

  async writeOwn(path: string, text: string): Promise<Written> {
    return this.ownFault === null ? writeAtomically(path, text) : { ok: false, reason: this.ownFault }
  }

  session(start: Partial<SessionStart> = {}, pace: Pace = NEVER, kept = this.kept): ProjectSession {
    return new ProjectSession(
      {
        id: 'one',
        text: projectText('As opened'),
        title: 'As opened',
        origin: 'blank',
        path: null,
        stamp: null,
        findings: [],
        revision: 0,
        savedRevision: 0,
        ...start,
      },
      {
        files: this.files,
        kept,
        pace,
        now: Date.now,
        onKeeping: (keeping) => this.told.push(keeping),
      },
    )
  }

  /** A session on a file that holds the title "On disk". */
  async sessionOnFile(name: string, pace: Pace = NEVER): Promise<ProjectSession> {
    const path = this.path(name)
    const text = projectText('On disk')
    await projectFiles.write(path, text, { backup: false })
    return this.session({ text, title: 'On disk', origin: 'file', path, stamp: await stampOf(path) }, pace)
  }

  async end(): Promise<void> {
    await this.kept.stop()
    await rm(this.folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 50 })
  }
}
