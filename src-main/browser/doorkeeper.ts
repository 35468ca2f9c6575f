/**
 * Who may talk to the loopback server: whoever brought the one-time token, on this machine, from the window's
 * own pages. Other programs and web pages can reach the port; none of them gets anything to read.
 */
import { createHash, createHmac, randomBytes, timingSafeEqual } from 'node:crypto'
import type { IncomingHttpHeaders } from 'node:http'
import { KEY_HEADER } from './envelope'

export type Verdict = 'welcome' | 'wrong-host' | 'foreign-origin' | 'no-session' | 'no-key'

export class Doorkeeper {
  readonly #port: number
  #token: string | null = null
  readonly #sessions = new Set<string>()
  /** By their digest. */
  readonly #keys = new Map<string, string>()

  constructor(port: number) {
    this.#port = port
  }

  get origin(): string {
    return `http://127.0.0.1:${this.#port}`
  }

  /** A new address that lets in once; the one before it, if it was not used, no longer does. */
  entryUrl(): string {
    this.#token = randomBytes(32).toString('base64url')
    return `${this.origin}/enter?token=${this.#token}`
  }

  /**
   * Exchanges the token for a session cookie and a key; null where it is wrong or was used. The browser shows the
   * cookie to every port of this address, whoever listens there; the key it keeps for our own pages.
   */
  exchange(token: string | null): { readonly cookie: string; readonly key: string } | null {
    if (this.#token === null || token === null || !equal(token, this.#token)) return null
    this.#token = null
    const session = randomBytes(32).toString('base64url')
    const key = randomBytes(32).toString('base64url')
    this.#sessions.add(digest(session))
    this.#keys.set(digest(key), key)
    return { cookie: `${this.#cookieName}=${session}; HttpOnly; SameSite=Strict; Path=/`, key }
  }

  /**
   * What shows a page that it talks to us: its word, signed with each key that was given out (HMAC, RFC 2104). Whoever
   * listens on this port after us has none of them.
   */
  proofs(word: string): string[] {
    return [...this.#keys.values()].map((key) => createHmac('sha256', key).update(word).digest('hex'))
  }

  /** Is this request meant for us, and from our own page (or the address bar)? */
  checkOrigin(method: string, headers: IncomingHttpHeaders): Verdict {
    // The name in Host tells a page that rebound its own domain to this machine.
    if (headers.host !== `127.0.0.1:${this.#port}`) return 'wrong-host'
    if (headers.origin !== undefined && headers.origin !== this.origin) return 'foreign-origin'
    if (method !== 'GET' && headers.origin === undefined) return 'foreign-origin'
    // Pages of other ports on this machine count as the same site for cookies, but not for this.
    const site = headers['sec-fetch-site']
    if (site !== undefined && site !== 'same-origin' && site !== 'none') return 'foreign-origin'
    return 'welcome'
  }

  /** What changes or tells anything takes the key as well; a page and its files, the cookie alone. */
  checkSession(method: string, headers: IncomingHttpHeaders): Verdict {
    const cookies = (headers.cookie ?? '').split(';').map((cookie) => cookie.trim().split('='))
    const isKnown = cookies.some(
      ([name, value]) => name === this.#cookieName && this.#sessions.has(digest(value ?? '')),
    )
    if (!isKnown) return 'no-session'
    const key = headers[KEY_HEADER]
    return method !== 'POST' || (typeof key === 'string' && this.#keys.has(digest(key)))
      ? 'welcome'
      : 'no-key'
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
