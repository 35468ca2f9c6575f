import type { ServerResponse } from 'node:http'
import { randomUUID } from 'node:crypto'

interface Tab {
  readonly seat: string
  stream: ServerResponse | null
}

/** Keeps a silent connection from being taken for a dead one (ms). */
const HEARTBEAT = 20_000

/**
 * The open tabs, one per project, with the stream on which each hears from the server. A project that is
 * loaded in a second tab moves there.
 */
export class Tabs {
  readonly #tabs = new Map<string, Tab>()
  readonly #leaving = new Map<string, NodeJS.Timeout>()
  readonly #onLeft: (projectId: string) => void
  readonly #patience: number
  readonly #heartbeat: NodeJS.Timeout

  /** `onLeft` is called when a project had no tab for `patience` ms. */
  constructor(onLeft: (projectId: string) => void, patience: number) {
    this.#onLeft = onLeft
    this.#patience = patience
    this.#heartbeat = setInterval(() => {
      for (const tab of this.#tabs.values()) tab.stream?.write(': here\n\n')
    }, HEARTBEAT)
    this.#heartbeat.unref()
  }

  /** The page of a project is loaded: it has the project from now on. */
  seat(projectId: string): string {
    this.#tell(projectId, 'movedElsewhere', null)
    this.#tabs.get(projectId)?.stream?.end()
    const seat = randomUUID()
    this.#tabs.set(projectId, { seat, stream: null })
    this.#expectReturn(projectId)
    return seat
  }

  hasSeat(projectId: string, seat: string): boolean {
    return this.#tabs.get(projectId)?.seat === seat
  }

  isTaken(projectId: string): boolean {
    return this.#tabs.has(projectId)
  }

  attach(projectId: string, stream: ServerResponse): void {
    const tab = this.#tabs.get(projectId)
    if (!tab) return
    tab.stream?.end()
    tab.stream = stream
    clearTimeout(this.#leaving.get(projectId))
    stream.on('close', () => {
      if (tab.stream !== stream) return
      tab.stream = null
      if (this.#tabs.get(projectId) === tab) this.#expectReturn(projectId)
    })
  }

  announce(projectId: string, event: string, payload: unknown): void {
    this.#tell(projectId, event, payload)
  }

  close(): void {
    clearInterval(this.#heartbeat)
    for (const timer of this.#leaving.values()) clearTimeout(timer)
    for (const tab of this.#tabs.values()) tab.stream?.end()
    this.#tabs.clear()
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

  #tell(projectId: string, event: string, payload: unknown): void {
    this.#tabs.get(projectId)?.stream?.write(`event: ${event}\ndata: ${JSON.stringify(payload)}\n\n`)
  }
}
