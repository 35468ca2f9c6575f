/**
 * Who may talk to the loopback server: whoever brought the one-time token, on this machine, from the window's
 * own pages. Other programs and web pages can reach the port; none of them gets anything to read.
 */
import { createHash, createHmac, randomBytes, timingSafeEqual } from 'node:crypto'
import type { IncomingHttpHeaders } from 'node:http'
import { ENTRY, KEY_HEADER, TOKEN_MARK } from './envelope'

/** A session by the digests of its cookie and its key. */
export interface Session {
  readonly cookie: string
  readonly key: string
}

/** What became of a token that was shown. */
export type Entered =
  | { readonly is: 'in'; readonly cookie: string; readonly key: string }
  | { readonly is: 'unknown' }
  /** It was used before: whoever was let in with it no longer is. */
  | { readonly is: 'used'; readonly ended: Session | null }

export type Verdict = 'welcome' | 'wrong-host' | 'foreign-origin' | 'no-session' | 'no-key'

export class Doorkeeper {
  readonly #port: number
  #token: string | null = null
  readonly #sessions = new Set<string>()
  /** By their digest. */
  readonly #keys = new Map<string, string>()
  /** What each used token, by its digest, let in; null where that was ended. */
  readonly #used = new Map<string, Session | null>()

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
    const session = randomBytes(32).toString('base64url')
    const key = randomBytes(32).toString('base64url')
    const given = { cookie: digest(session), key: digest(key) }
    this.#sessions.add(given.cookie)
    this.#keys.set(given.key, key)
    this.#used.set(digest(token), given)
    return { is: 'in', cookie: `${this.#cookieName}=${session}; HttpOnly; SameSite=Strict; Path=/`, key }
  }

  #end(session: Session): void {
    this.#sessions.delete(session.cookie)
    this.#keys.delete(session.key)
  }

  /**
   * What shows a page that it talks to us: its word, signed with each key that was given out (HMAC, RFC 2104). Whoever
   * listens on this port after us has none of them.
   */
  proofs(word: string): string[] {
    return [...this.#keys.values()].map((key) => createHmac('sha256', key).update(word).digest('hex'))
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

  /** What changes or tells anything takes the key as well; a page and its files, the cookie alone. */
  checkSession(method: string, headers: IncomingHttpHeaders): Verdict {
    if (this.sessionOf(headers) === null) return 'no-session'
    const key = headers[KEY_HEADER]
    return method !== 'POST' || (typeof key === 'string' && this.#keys.has(digest(key)))
      ? 'welcome'
      : 'no-key'
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
