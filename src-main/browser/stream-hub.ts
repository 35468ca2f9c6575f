/**
 * One stream of events for all tabs of a browser. A browser opens six connections to a server and no more: with
 * a stream for each tab the sixth tab would leave none to keep a change with.
 */
import { KEY_HEADER } from './envelope'
import type { Told } from './envelope'
import { isProven } from './proof'

/** What a tab hears: an event of the server, or how it stands with the server itself. */
export type Heard =
  | { readonly kind: 'told'; readonly event: string; readonly payload: unknown }
  /** The server cannot be reached, or can be again. */
  | { readonly kind: 'gone' }
  | { readonly kind: 'back' }
  /** The server is there but no longer knows this tab. */
  | { readonly kind: 'unknown' }

export interface Member {
  readonly project: string
  readonly seat: string
  /** What its page shows to be ours. */
  readonly key: string
}

/** A stream that the server refused is asked for again after this time (ms); one that broke, the browser renews. */
const ASK_AGAIN = 1_000

export class StreamHub {
  readonly #id = crypto.randomUUID()
  readonly #members = new Map<string, { readonly member: Member; hear(heard: Heard): void }>()
  /** Seats whose stream is of somebody who proved nothing, until they ask again. */
  readonly #waiting = new Set<string>()
  #source: EventSource | null = null
  #isOpen = false

  /** A tab is there; it is told everything that the server has for it until it leaves. */
  join(member: Member, hear: (heard: Heard) => void): void {
    this.#members.set(member.seat, { member, hear })
    if (this.#source === null) this.#listen()
    else if (this.#isOpen) void this.#enrol(member)
  }

  leave(seat: string): void {
    const member = this.#members.get(seat)?.member
    this.#members.delete(seat)
    if (member) void this.#farewell(member)
  }

  async #farewell(member: Member): Promise<void> {
    if (await this.#proves(member)) await this.#post('/stream/leave', member, {})
  }

  #listen(): void {
    const source = new EventSource(`/stream?id=${this.#id}`)
    this.#source = source
    source.addEventListener('open', () => {
      this.#isOpen = true
      for (const { member } of this.#members.values()) void this.#enrol(member)
    })
    source.addEventListener('message', ({ data }: MessageEvent<string>) => {
      const { seat, event, payload } = JSON.parse(data) as Told
      this.#members.get(seat)?.hear({ kind: 'told', event, payload })
    })
    source.addEventListener('error', () => {
      this.#isOpen = false
      for (const { hear } of this.#members.values()) hear({ kind: 'gone' })
      if (source.readyState === EventSource.CLOSED) setTimeout(() => this.#listen(), ASK_AGAIN)
    })
  }

  /** A stream may be of somebody who took the port over: a member is told of there once it is proven to be Petalyard. */
  async #enrol(member: Member): Promise<void> {
    if (!(await this.#proves(member))) {
      this.#members.get(member.seat)?.hear({ kind: 'gone' })
      return this.#enrolLater(member)
    }
    const response = await this.#post('/stream/join', member, { stream: this.#id })
    const hear = this.#members.get(member.seat)?.hear
    // Cut off meanwhile: the stream tells that by itself.
    if (!response || !this.#isOpen) return
    if (response.ok) hear?.({ kind: 'back' })
    else if (response.status === 404) {
      this.#members.delete(member.seat)
      hear?.({ kind: 'unknown' })
    }
  }

  /** One wait for each seat, however often its stream is opened meanwhile. */
  #enrolLater(member: Member): void {
    const { seat } = member
    if (this.#waiting.has(seat)) return
    this.#waiting.add(seat)
    setTimeout(() => {
      this.#waiting.delete(seat)
      const now = this.#members.get(seat)?.member
      if (this.#isOpen && now) void this.#enrol(now)
    }, ASK_AGAIN)
  }

  #proves = ({ key }: Member): Promise<boolean> => isProven(key).catch(() => false)

  #post(path: string, { project, seat, key }: Member, more: object): Promise<Response | null> {
    const headers = { 'Content-Type': 'application/json', [KEY_HEADER]: key }
    const body = JSON.stringify({ project, seat, ...more })
    return fetch(path, { method: 'POST', headers, body }).catch(() => null)
  }
}
