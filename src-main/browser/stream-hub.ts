/**
 * One stream of events for all tabs of a browser. A browser opens six connections to a server and no more: with
 * a stream for each tab the sixth tab would leave none to keep a change with.
 */
import { KEY_PATH } from './envelope'
import type { Reply, Telling, Told } from './envelope'
import { fromText, readKey, telling, unseal } from './sealed'
import { postSealed } from './sealed-post'

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
  /** What its page speaks with. */
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

  /** A key of its own for one more tab, from the server; null where no tab here has one that still counts. */
  async anotherKey(): Promise<string | null> {
    for (const { member } of [...this.#members.values()]) {
      const reply = await this.#post(KEY_PATH, member, {})
      if (reply?.status === 200) return String(reply.body)
    }
    return null
  }

  leave(seat: string): void {
    const member = this.#members.get(seat)?.member
    this.#members.delete(seat)
    if (member) void this.#post('/stream/leave', member, {})
  }

  #listen(): void {
    const source = new EventSource(`/stream?id=${this.#id}`)
    this.#source = source
    source.addEventListener('open', () => {
      this.#isOpen = true
      for (const { member } of this.#members.values()) void this.#enrol(member)
    })
    source.addEventListener('message', ({ data }: MessageEvent<string>) => {
      const { seat, sealed } = JSON.parse(data) as Told
      const at = this.#members.get(seat)
      const key = at && readKey(at.member.key)
      const text = key && unseal(key, telling(seat), fromText(sealed))
      if (text) at.hear({ kind: 'told', ...(JSON.parse(text) as Telling) })
    })
    source.addEventListener('error', () => {
      this.#isOpen = false
      for (const { hear } of this.#members.values()) hear({ kind: 'gone' })
      if (source.readyState === EventSource.CLOSED) setTimeout(() => this.#listen(), ASK_AGAIN)
    })
  }

  /** A stream may be of somebody who took the port over: it is there for a member once its answer opens. */
  async #enrol(member: Member): Promise<void> {
    const reply = await this.#post('/stream/join', member, { stream: this.#id })
    const hear = this.#members.get(member.seat)?.hear
    // Cut off meanwhile: the stream tells that by itself.
    if (!this.#isOpen) return
    if (reply === null) {
      hear?.({ kind: 'gone' })
      return this.#enrolLater(member)
    }
    if (reply.status === 200) hear?.({ kind: 'back' })
    else if (reply.status === 404) {
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

  #post(path: string, { project, seat, key }: Member, more: object): Promise<Reply | null> {
    return postSealed(key, path, { project, seat, ...more }).catch(() => null)
  }
}
