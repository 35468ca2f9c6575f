import type { ServerResponse } from 'node:http'
import { randomUUID } from 'node:crypto'
import type { Telling, Told } from './envelope'
import { seal, telling, toText } from './sealed'
import type { Key } from './sealed'

interface Stream {
  readonly response: ServerResponse
  /** Who listens. */
  readonly session: string
}

interface Tab {
  readonly project: string
  readonly seat: string
  /** The stream of its browser, once it has joined it. */
  stream: Stream | null
  /** What it joined with, and what it is told is sealed with. */
  key: Key | null
}

/** Pages that were loaded and have not spoken yet, of all projects; the oldest are forgotten beyond it. */
const OFFERED_AT_MOST = 100
/**
 * Projects that were opened for pages which never spoke: more than a browser loads at once when it comes back with all
 * its tabs. Loading takes the cookie alone, and whoever heard it could have thousands opened.
 */
export const SILENT_AT_MOST = 50
/** Keeps a silent connection from being taken for a dead one (ms). */
const HEARTBEAT = 20_000

/**
 * The open tabs, one per project. All tabs of a browser hear from the server on one stream, since a browser
 * opens six connections to a server and no more. A project that is loaded in a second tab moves there, once the page
 * speaks: loading it alone, which another program that heard the cookie could do, takes nothing from anybody.
 */
export class Tabs {
  readonly #tabs = new Map<string, Tab>()
  /** seat → project, of pages whose project another tab has. */
  readonly #offered = new Map<string, string>()
  readonly #streams = new Map<string, Stream>()
  readonly #leaving = new Map<string, NodeJS.Timeout>()
  readonly #onLeft: (projectId: string) => void
  readonly #onJoined: (stream: ServerResponse) => void
  readonly #patience: number
  readonly #heartbeat: NodeJS.Timeout

  /** `onLeft` is called when a project had no tab for `patience` ms, `onJoined` with a stream that a tab hears. */
  constructor(
    onLeft: (projectId: string) => void,
    onJoined: (stream: ServerResponse) => void,
    patience: number,
  ) {
    this.#onLeft = onLeft
    this.#onJoined = onJoined
    this.#patience = patience
    this.#heartbeat = setInterval(() => {
      for (const { response } of this.#streams.values()) response.write(': here\n\n')
    }, HEARTBEAT)
    this.#heartbeat.unref()
  }

  /** The page of a project is loaded: it has the project from now on, or from its first word where a tab has it. */
  seat(projectId: string): string {
    const seat = randomUUID()
    if (!this.#tabs.has(projectId)) this.#give(projectId, seat)
    else this.#offered.set(seat, projectId)
    const [oldest] = this.#offered.keys()
    if (oldest !== undefined && this.#offered.size > OFFERED_AT_MOST) this.#offered.delete(oldest)
    return seat
  }

  /** Has the page with this seat, which speaks, the project? */
  hasSeat(projectId: string, seat: string): boolean {
    if (this.#offered.get(seat) === projectId) {
      this.#offered.delete(seat)
      this.#give(projectId, seat)
    }
    return this.#tabs.get(projectId)?.seat === seat
  }

  isTaken(projectId: string): boolean {
    return this.#tabs.has(projectId)
  }

  /** The last project that was opened for a page which never spoke, where there are as many as may be; else null. */
  silentBeyond(): string | null {
    const silent = [...this.#tabs.values()].filter(({ key }) => key === null)
    return silent.length < SILENT_AT_MOST ? null : silent.at(-1)!.project
  }

  /** A browser listens; `id` is its own word for its stream, the same after it was cut off. */
  open(id: string, response: ServerResponse, session: string): void {
    this.#streams.get(id)?.response.end()
    const stream = { response, session }
    this.#streams.set(id, stream)
    response.on('close', () => {
      if (this.#streams.get(id) === stream) this.#streams.delete(id)
      for (const tab of this.#tabs.values()) if (tab.stream === stream) this.#lose(tab)
    })
  }

  /** A tab listens on the stream of its browser from now on. */
  join(projectId: string, seat: string, streamId: string, key: Key): 'joined' | 'no-seat' | 'no-stream' {
    if (!this.hasSeat(projectId, seat)) return 'no-seat'
    const [tab, stream] = [this.#tabs.get(projectId)!, this.#streams.get(streamId)]
    if (!stream) return 'no-stream'
    tab.stream = stream
    tab.key = key
    this.#onJoined(stream.response)
    clearTimeout(this.#leaving.get(projectId))
    return 'joined'
  }

  /** A tab was closed while others of its browser stay. */
  leave(projectId: string, seat: string): void {
    const tab = this.#tabs.get(projectId)
    if (tab?.seat === seat) this.#lose(tab)
  }

  /**
   * A session was ended: its tabs are told and hear no more, and their projects are for whoever enters next. A tab
   * whose browser is let in again has its own as soon as it speaks.
   */
  shutOut(session: string): void {
    for (const tab of [...this.#tabs.values()].filter(({ stream }) => stream?.session === session)) {
      this.announce(tab.project, 'shutOut', null)
      this.#lose(tab)
      this.#tabs.delete(tab.project)
      this.#offered.set(tab.seat, tab.project)
    }
    for (const stream of this.#streams.values()) if (stream.session === session) stream.response.end()
  }

  announce(projectId: string, event: string, payload: unknown): void {
    const { seat, stream, key } = this.#tabs.get(projectId) ?? {}
    if (seat === undefined || !stream || !key) return
    const told: Telling = { event, payload }
    const sent: Told = { seat, sealed: toText(seal(key, telling(seat), JSON.stringify(told))) }
    stream.response.write(`data: ${JSON.stringify(sent)}\n\n`)
  }

  close(): void {
    clearInterval(this.#heartbeat)
    for (const timer of this.#leaving.values()) clearTimeout(timer)
    this.#tabs.clear()
    for (const { response } of this.#streams.values()) response.end()
    this.#streams.clear()
  }

  #give(projectId: string, seat: string): void {
    this.announce(projectId, 'movedElsewhere', null)
    this.#tabs.set(projectId, { project: projectId, seat, stream: null, key: null })
    this.#expectReturn(projectId)
  }

  #lose(tab: Tab): void {
    tab.stream = null
    this.#expectReturn(tab.project)
  }

  #expectReturn(projectId: string): void {
    clearTimeout(this.#leaving.get(projectId))
    const timer = setTimeout(() => {
      this.#tabs.delete(projectId)
      this.#leaving.delete(projectId)
      this.#onLeft(projectId)
    }, this.#patience)
    timer.unref()
    this.#leaving.set(projectId, timer)
  }
}
