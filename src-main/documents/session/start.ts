/** What a session begins with, and what it needs of others. */
import type { Keeping, ProjectOrigin } from '../../../shared-types/bridge'
import type { Finding } from '../../../shared-types/finding'
import type { KeptProjects } from './kept'
import type { FileStamp, Pace, ProjectFiles } from './ports'

export interface SessionPorts {
  readonly files: ProjectFiles
  readonly kept: KeptProjects
  readonly pace: Pace
  readonly now: () => number
  /** Told after everything that changes how the project is kept. */
  readonly onKeeping: (keeping: Keeping) => void
}

export interface SessionStart {
  readonly id: string
  readonly text: string
  readonly title: string
  readonly origin: ProjectOrigin
  readonly path: string | null
  readonly stamp: FileStamp | null
  readonly findings: readonly Finding[]
  readonly revision: number
  readonly savedRevision: number
  readonly changedAt?: string
  /** What was kept when a former run was cut off: it may be in the file already. */
  readonly keptText?: string
  /** Why the text cannot be read: it is held as it is, and written over nothing. */
  readonly unreadable?: Finding
}
