import type { HostBridge, Keeping, Outcome, ProjectChange, Unsubscribe } from '../../shared-types/bridge'
import type { Finding } from '../../shared-types/finding'
import type { Project } from '../../shared-types/project'

/** A change is handed over when the hand rests this long, and at the latest this long after it began (ms). */
const REST = 300
const AT_MOST = 1_000

type Keeper = Pick<HostBridge, 'keepProject' | 'onBeforeClose'>

/**
 * Hands the project over to the host soon after each change, so that nothing older than about a second can be
 * lost. The project is immutable: `changed` is cheap and may be called at every move of the hand.
 */
export class ProjectKeeper {
  readonly #bridge: Keeper
  readonly #onRefused: (problem: Finding) => void
  readonly #stopListening: Unsubscribe
  #nextRevision: number
  #waiting: Project | null = null
  #latest: ProjectChange | null = null
  #rest: ReturnType<typeof setTimeout> | undefined
  #limit: ReturnType<typeof setTimeout> | undefined
  #onTheWay: Promise<unknown> = Promise.resolve()

  constructor(bridge: Keeper, nextRevision: number, onRefused: (problem: Finding) => void) {
    this.#bridge = bridge
    this.#nextRevision = nextRevision
    this.#onRefused = onRefused
    this.#stopListening = bridge.onBeforeClose(() => this.flush())
  }

  /** The project is another one now. */
  changed(project: Project): void {
    this.#waiting = project
    clearTimeout(this.#rest)
    this.#rest = setTimeout(() => void this.flush(), REST)
    this.#limit ??= setTimeout(() => void this.flush(), AT_MOST)
  }

  /** Hands over what waits, and settles when the host has everything. */
  async flush(): Promise<void> {
    clearTimeout(this.#rest)
    clearTimeout(this.#limit)
    this.#limit = undefined
    if (this.#waiting) this.#send(this.#waiting)
    await this.#onTheWay
  }

  /** The change to send with an operation of its own (save, duplicate…): the project as it is now. */
  change(project: Project): ProjectChange {
    const isNew = this.#waiting !== null || this.#latest === null
    this.#waiting = null
    clearTimeout(this.#rest)
    clearTimeout(this.#limit)
    this.#limit = undefined
    if (isNew || !this.#latest) this.#latest = this.#next(project)
    return this.#latest
  }

  /** After the host changed the project itself (the version on disk was taken). */
  continueFrom(nextRevision: number): void {
    this.#waiting = null
    this.#latest = null
    this.#nextRevision = nextRevision
  }

  stop(): void {
    this.#stopListening()
    clearTimeout(this.#rest)
    clearTimeout(this.#limit)
  }

  #next(project: Project): ProjectChange {
    return { revision: this.#nextRevision++, text: JSON.stringify(project) }
  }

  #send(project: Project): void {
    const change = this.#next(project)
    this.#waiting = null
    this.#latest = change
    const sent = this.#bridge.keepProject(change).then((kept: Outcome<Keeping>) => {
      if (kept.outcome === 'refused') this.#onRefused(kept.problem)
    })
    this.#onTheWay = Promise.all([this.#onTheWay, sent])
  }
}
