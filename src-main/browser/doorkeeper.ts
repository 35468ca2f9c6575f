/**
 * Who may talk to the loopback server: whoever brought the one-time token, on this machine, from the window's
 * own pages. Other programs and web pages can reach the port; none of them gets anything to read.
 */
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto'
import type { IncomingHttpHeaders } from 'node:http'
import { ENTRY, KEY_HEADER, TOKEN_MARK } from './envelope'
import { newKey, writeKey } from './sealed'
import type { Key } from './sealed'

/** Page loads of one person, each of which takes a key; those that were silent longest are forgotten beyond it. */
const KEYS_AT_MOST = 1_000

/** What a page says of itself beside what it has sealed. */
export interface Speaker {
  readonly key: Key
  /** Its own word for what it asks. */
  readonly question: string
  /** Its session was ended. */
  readonly isShutOut: boolean
}

/** What became of a token that was shown. */
export type Entered =
  | { readonly is: 'in'; readonly cookie: string; readonly key: string }
  | { readonly is: 'unknown' }
  /** It was used before: the session that it gave (the digest of its cookie) is no more. */
  | { readonly is: 'used'; readonly ended: string | null }

export type Verdict = 'welcome' | 'wrong-host' | 'foreign-origin' | 'no-session' | 'no-key'

export class Doorkeeper {
  readonly #port: number
  #token: string | null = null
  /** By the digests of their cookies. */
  readonly #sessions = new Set<string>()
  /** By their names, with their sessions, in the order of their last word. */
  readonly #keys = new Map<string, { readonly key: Key; readonly session: string }>()
  /** Of sessions that were ended: their pages are told so, in words that they believe. */
  readonly #ended = new Map<string, Key>()
  /** What each used token, by its digest, let in; null where that was ended. */
  readonly #used = new Map<string, string | null>()

  constructor(port: number) {
    this.#port = port
  }

  get origin(): string {
    return `http://127.0.0.1:${this.#port}`
  }

  /** A new address that lets in once; the one before it, if it was not used, no longer does. */
  entryUrl(): string {
    this.#token = randomBytes(32).toString('base64url')
    // Behind the #, so that no request, no log and no list of visited pages of a server has it.
    return `${this.origin}${ENTRY}${TOKEN_MARK}${this.#token}`
  }

  /**
   * Exchanges the token for a session cookie and a key. The browser shows the cookie to every port of this address,
   * whoever listens there; the key it keeps for our own pages. A token that comes a second time is in two hands, and
   * nobody can tell whose hands are the right ones: the session that it gave ends.
   */
  exchange(token: string): Entered {
    const used = this.#used.get(digest(token))
    if (used !== undefined) {
      this.#used.set(digest(token), null)
      if (used !== null) this.#end(used)
      return { is: 'used', ended: used }
    }
    if (this.#token === null || !equal(token, this.#token)) return { is: 'unknown' }
    this.#token = null
    const secret = randomBytes(32).toString('base64url')
    const session = digest(secret)
    this.#sessions.add(session)
    this.#used.set(digest(token), session)
    const cookie = `${this.#cookieName}=${secret}; HttpOnly; SameSite=Strict; Path=/`
    return { is: 'in', cookie, key: this.#give(session) }
  }

  /** A key for one more page, for whoever speaks with one; null where that ended meanwhile. */
  anotherKey({ name }: Key): string | null {
    const session = this.#keys.get(name)?.session
    return session === undefined ? null : this.#give(session)
  }

  /** Is this the name of a key that lets in? */
  hasKey(name: unknown): boolean {
    return typeof name === 'string' && this.#keys.has(name)
  }

  #give(session: string): string {
    const key = newKey()
    this.#keys.set(key.name, { key, session })
    const [silent] = this.#keys.keys()
    if (silent !== undefined && this.#keys.size > KEYS_AT_MOST) this.#keys.delete(silent)
    return writeKey(key)
  }

  #end(session: string): void {
    this.#sessions.delete(session)
    for (const [name, given] of [...this.#keys].filter(([, each]) => each.session === session)) {
      this.#ended.set(name, given.key)
      this.#keys.delete(name)
    }
  }

  /** Is this request meant for us, and from our own page (or the address bar)? */
  checkOrigin(method: string, headers: IncomingHttpHeaders, isDoor = false): Verdict {
    // The name in Host tells a page that rebound its own domain to this machine.
    if (headers.host !== `127.0.0.1:${this.#port}`) return 'wrong-host'
    if (headers.origin !== undefined && headers.origin !== this.origin) return 'foreign-origin'
    if (method !== 'GET' && headers.origin === undefined) return 'foreign-origin'
    // Pages of other ports on this machine count as the same site for cookies, but not for this. The door itself,
    // which holds nothing, is opened by a file of ours, and a file is another site.
    const site = headers['sec-fetch-site']
    if (isDoor && headers['sec-fetch-mode'] === 'navigate') return 'welcome'
    if (site !== undefined && site !== 'same-origin' && site !== 'none') return 'foreign-origin'
    return 'welcome'
  }

  /** A page and its files take the cookie alone. */
  checkSession(headers: IncomingHttpHeaders): Verdict {
    return this.sessionOf(headers) === null ? 'no-session' : 'welcome'
  }

  /**
   * Who speaks, by the name of the key with which it is sealed; whether it is, shows only when it is opened. Whoever
   * has a key and no cookie is heard no more than a stranger.
   */
  speakerOf(headers: IncomingHttpHeaders): Speaker | Exclude<Verdict, 'welcome'> {
    const [, name, question] = /^([\da-f]{32})\.([\da-f]{32})$/.exec(String(headers[KEY_HEADER] ?? '')) ?? []
    if (name === undefined || question === undefined) return 'no-key'
    const ended = this.#ended.get(name)
    if (ended) return { key: ended, question, isShutOut: true }
    if (this.sessionOf(headers) === null) return 'no-session'
    const given = this.#keys.get(name)
    if (!given) return 'no-key'
    this.#keys.delete(name)
    this.#keys.set(name, given)
    return { key: given.key, question, isShutOut: false }
  }

  /** The session whose cookie comes with a request, by its digest; null where there is none. */
  sessionOf(headers: IncomingHttpHeaders): string | null {
    const cookies = (headers.cookie ?? '').split(';').map((cookie) => cookie.trim().split('='))
    const shown = cookies
      .filter(([name]) => name === this.#cookieName)
      .map(([, value]) => digest(value ?? ''))
    return shown.find((session) => this.#sessions.has(session)) ?? null
  }

  /** Cookies are shared between the ports of a machine; the name tells ours. */
  get #cookieName(): string {
    return `petalyard-${this.#port}`
  }
}

function digest(text: string): string {
  return createHash('sha256').update(text).digest('base64')
}

function equal(a: string, b: string): boolean {
  return timingSafeEqual(Buffer.from(digest(a)), Buffer.from(digest(b)))
}
