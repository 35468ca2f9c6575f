/** The loopback server: the same window, the same bridge, in the browser of this machine and nowhere else. */
import { createServer } from 'node:http'
import type { IncomingMessage, Server, ServerResponse } from 'node:http'
import { readFile } from 'node:fs/promises'
import type { AddressInfo, Socket } from 'node:net'
import { updatedPage } from '../host/build'
import type { Host } from '../host/host'
import { MESSAGE_LIMIT } from '../host/limits'
import type { Announce } from '../host/ports'
import { BROWSER_HEADERS, readStatic } from '../host/static-files'
import { readBody, redirect, send, sendJson, WORDS } from './answering'
import { Doorkeeper } from './doorkeeper'
import type { Speaker } from './doorkeeper'
import type { Admission, Reply } from './envelope'
import { ENTRY, KEY_PATH, KNOWN_PATH } from './envelope'
import { Offers } from './offers'
import { CONNECTIONS_AT_MOST, Places } from './places'
import { Questions } from './questions'
import { answering, asking, seal, unseal } from './sealed'
import { Tabs } from './tabs'

interface LoopbackOptions {
  /** The built window. */
  readonly windowFolder: string
  /** The built client that the page loads before its own scripts. */
  readonly clientScript: string
  /** The built worker that listens for all tabs. */
  readonly streamScript: string
  /** The built script of the door. */
  readonly entryScript: string
  /** Where saved projects go. */
  readonly saveFolder: string
  /** A project without a tab is ended after this time (ms). */
  readonly patience?: number
  /** How slowly a request may come in. */
  readonly pace?: RequestPace
  /** Told when an address let in, and when one came a second time and whoever was let in with it was shut out. */
  readonly onEntered?: (how: 'first' | 'again') => void
}

/** ms until its head, and the whole of it, must be there; how often that is looked at. */
interface RequestPace {
  readonly head: number
  readonly whole: number
  readonly look: number
}

/** Far more than a page on the same machine takes; Node itself would wait for 60 and 300 s. */
const PACE: RequestPace = { head: 10_000, whole: 60_000, look: 2_000 }
/** A tab keeps its connection, and with it its place, while somebody thinks; Node itself would give it up after 5 s (ms). */
const REST = 60_000
/** "en-GB": a language with its country. */
const LANGUAGE = /^[a-z]{2,3}-[A-Z]{2}$/

/** What a page sends is read by nobody but us; no form of another page can send it. */
const SEALED = 'application/octet-stream'
const SHUT_OUT: Reply = { status: 403, body: WORDS['used-twice'] }
const FAILED: Reply = { status: 500, body: 'Something went wrong.' }

/** A token is 43 characters. */
const TOKEN_LIMIT = 256
/** Without a script nothing of the window works either. */
export const DOOR = `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <link rel="icon" href="data:," />
    <title>Petalyard</title>
    <script src="${ENTRY}.js" defer></script>
  </head>
  <body>
    <p role="status">Petalyard opens …</p>
  </body>
</html>
`

/** A closed laptop's or a discarded tab's project waits this long for its tab (ms). */
const PATIENCE = 30_000

export class LoopbackServer {
  readonly #options: LoopbackOptions
  readonly #tabs: Tabs
  readonly #offers = new Offers()
  readonly #places = new Places()
  /** Files of projects that were ended, so that a tab that comes back finds its project. */
  readonly #endedPaths = new Map<string, string>()
  /** Connections on which somebody without the cookie was answered: nothing more is heard on them. */
  readonly #strangers = new WeakSet<Socket>()
  /** For everybody who comes, so it is read once. */
  #entryScript: Promise<Uint8Array> | null = null
  #host: Host | null = null
  #questions: Questions | null = null
  #server: Server | null = null
  #doorkeeper: Doorkeeper | null = null

  constructor(options: LoopbackOptions) {
    this.#options = options
    this.#tabs = new Tabs(
      (id) => void this.#end(id),
      ({ socket }) => socket && this.#places.keep(socket),
      options.patience ?? PATIENCE,
    )
  }

  /** How the host reaches the tabs. */
  readonly announce: Announce = (projectId, event, payload) => this.#tabs.announce(projectId, event, payload)

  /** Listens on a free port of the loopback interface; answers with the port. */
  async listen(host: Host): Promise<number> {
    this.#host = host
    const { saveFolder } = this.#options
    this.#questions = new Questions({ host, tabs: this.#tabs, offers: this.#offers, saveFolder })
    const { head, whole, look } = this.#options.pace ?? PACE
    const pace = { headersTimeout: head, requestTimeout: whole, connectionsCheckingInterval: look }
    const server = createServer({ ...pace, keepAliveTimeout: REST }, (request, response) => {
      // Browsers send no question before the last one is answered. Whoever does without the cookie has one answer, once.
      if (this.#strangers.has(request.socket)) return void request.socket.pause()
      void this.#serve(request, response).catch(() => {
        if (!response.headersSent) send(response, 500, 'Something went wrong.')
        else response.destroy()
      })
    })
    server.maxConnections = CONNECTIONS_AT_MOST
    server.on('connection', (socket: Socket) => this.#places.take(socket))
    this.#server = server
    await new Promise<void>((resolve, reject) => {
      server.once('error', reject)
      server.listen(0, '127.0.0.1', resolve)
    })
    const { port } = server.address() as AddressInfo
    this.#doorkeeper = new Doorkeeper(port)
    return port
  }

  /** A new address that lets in once. */
  entryUrl(): string {
    if (!this.#doorkeeper) throw new Error('the server does not listen yet')
    return this.#doorkeeper.entryUrl()
  }

  async close(): Promise<void> {
    this.#tabs.close()
    const server = this.#server
    if (!server) return
    server.closeAllConnections()
    await new Promise((resolve) => server.close(resolve))
  }

  async #serve(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const [host, doorkeeper] = [this.#host, this.#doorkeeper]
    if (!host || !doorkeeper) return send(response, 503, 'Not ready yet.')
    if (doorkeeper.sessionOf(request.headers) === null) {
      this.#strangers.add(request.socket)
      response.setHeader('Connection', 'close')
    }
    const method = request.method ?? ''
    const url = new URL(request.url ?? '/', doorkeeper.origin)
    const isDoor = method === 'GET' && url.pathname === ENTRY
    const allowed = doorkeeper.checkOrigin(method, request.headers, isDoor)
    if (allowed !== 'welcome') return refuse(response, allowed)
    if (isDoor) return this.#door(request, response)
    if (method === 'GET' && url.pathname === `${ENTRY}.js`)
      return send(response, 200, await this.#entry(), 'text/javascript; charset=utf-8')
    // Browsers ask for it by themselves beside every page without one of its own, and write down where it is refused.
    if (method === 'GET' && url.pathname === '/favicon.ico') return send(response, 204, '')
    if (method === 'POST' && url.pathname === ENTRY) return this.#enter(request, response, doorkeeper, host)
    if (method === 'POST') return this.#post(url, request, response, doorkeeper)
    const known = doorkeeper.checkSession(request.headers)
    if (known !== 'welcome') return refuse(response, known)
    this.#places.know(request.socket)
    if (method === 'GET' && url.pathname === '/stream')
      return this.#stream(url, response, doorkeeper.sessionOf(request.headers)!)
    if (method === 'GET') return this.#get(url, request, response, host)
    return send(response, 405, 'Only GET and POST.')
  }

  #entry(): Promise<Uint8Array> {
    this.#entryScript ??= readFile(this.#options.entryScript).catch((error: unknown) => {
      this.#entryScript = null
      throw error
    })
    return this.#entryScript
  }

  /** The page that takes the token from behind the # of its own address: the same for everybody. */
  #door(request: IncomingMessage, response: ServerResponse): void {
    // A page that is fetched only in case it is wanted must not use the address up.
    if (request.headers['sec-purpose']) return send(response, 503, 'Not in advance.')
    send(response, 200, DOOR, 'text/html; charset=utf-8')
  }

  async #enter(
    request: IncomingMessage,
    response: ServerResponse,
    doorkeeper: Doorkeeper,
    host: Host,
  ): Promise<void> {
    const token = await readBody(request, TOKEN_LIMIT)
    const entered = doorkeeper.exchange(token?.toString() ?? '')
    if (entered.is !== 'in') {
      response.setHeader('Connection', 'close')
      if (entered.is === 'unknown') return send(response, 403, WORDS['no-session'])
      if (entered.ended) {
        this.#tabs.shutOut(entered.ended)
        this.#options.onEntered?.('again')
      }
      return send(response, 403, WORDS['used-twice'])
    }
    this.#options.onEntered?.('first')
    // Settings of a first start go by the language of the window, not by that of this process.
    const [language] = (request.headers['accept-language'] ?? '').split(/[,;]/)
    if (language && LANGUAGE.test(language)) await host.settings.startIn(language)
    const admission: Admission = { key: entered.key }
    sendJson(response, admission, { 'Set-Cookie': entered.cookie })
  }

  async #get(url: URL, request: IncomingMessage, response: ServerResponse, host: Host): Promise<void> {
    if (url.pathname === '/' || url.pathname === '/index.html')
      // A page that is fetched only in case it is wanted must not take a project from its tab.
      return request.headers['sec-purpose']
        ? send(response, 503, 'Not in advance.')
        : this.#page(url, response, host)
    if (url.pathname === '/host.js')
      return send(response, 200, await readFile(this.#options.clientScript), 'text/javascript; charset=utf-8')
    if (url.pathname === '/stream.js')
      return send(response, 200, await readFile(this.#options.streamScript), 'text/javascript; charset=utf-8')
    if (url.pathname.startsWith('/download/')) {
      this.#offers.fetch(url.pathname.slice('/download/'.length), response)
      return
    }
    const file = await readStatic(this.#options.windowFolder, url.pathname)
    if (!file) return send(response, 404, 'Not here.')
    send(response, 200, file.bytes, file.type)
  }

  /** The window's page with a project. Loading it gives the project to this tab. */
  async #page(url: URL, response: ServerResponse, host: Host): Promise<void> {
    const wished = url.searchParams.get('project')
    if (wished === null || !host.session(wished)) {
      const found = wished === null ? null : await this.#reopen(wished, host)
      return redirect(response, `/?project=${found ?? (await this.#first(host))}`)
    }
    if (await host.build.isReplaced()) return send(response, 200, updatedPage(), 'text/html; charset=utf-8')
    const seat = this.#tabs.seat(wished)
    const page = await readFile(`${this.#options.windowFolder}/index.html`, 'utf8')
    const client = `<script src="/host.js?seat=${seat}&amp;project=${wished}"></script>`
    send(response, 200, page.replace('<head>', `<head>\n    ${client}`), 'text/html; charset=utf-8')
  }

  /**
   * What to show where nothing was asked for: what is open without a tab, else what was open last; where many pages were
   * loaded that never spoke, what the last of them has: it is for whichever of them speaks.
   */
  async #first(host: Host): Promise<string> {
    const free = host.openIds.find((id) => !this.#tabs.isTaken(id))
    return free ?? this.#tabs.silentBeyond() ?? host.openAtStart()
  }

  async #reopen(id: string, host: Host): Promise<string | null> {
    const path = this.#endedPaths.get(id)
    const opened = path === undefined ? await host.openRecent(`kept-${id}`) : await host.openPath(path)
    return opened.outcome === 'done' ? opened.value : null
  }

  async #end(projectId: string): Promise<void> {
    const session = this.#host?.session(projectId)
    if (!session) return
    if (session.path !== null) this.#endedPaths.set(projectId, session.path)
    await this.#host?.close(projectId)
  }

  #stream(url: URL, response: ServerResponse, session: string): void {
    const id = url.searchParams.get('id') ?? ''
    if (!/^[\w-]{1,64}$/.test(id)) return send(response, 400, 'A stream needs a name.')
    response.writeHead(200, { ...BROWSER_HEADERS, 'Content-Type': 'text/event-stream' })
    this.#tabs.open(id, response, session)
    response.write(': here\n\n')
  }

  /** A question of a tab: sealed, and so is all that it is answered. */
  async #post(
    url: URL,
    request: IncomingMessage,
    response: ServerResponse,
    doorkeeper: Doorkeeper,
  ): Promise<void> {
    const speaker = doorkeeper.speakerOf(request.headers)
    if (typeof speaker === 'string') return refuse(response, speaker)
    const reply = await this.#reply(url.pathname, request, speaker, doorkeeper).catch(() => FAILED)
    if (reply === null) return refuse(response, 'no-key')
    const { status, body } = reply
    if (status === 403 || status === 413) response.setHeader('Connection', 'close')
    const text = JSON.stringify({ status, body } satisfies Reply)
    send(response, 200, seal(speaker.key, answering(speaker.question), text), SEALED)
  }

  /** Null where it is not sealed with the key that it names. */
  async #reply(
    path: string,
    request: IncomingMessage,
    { key, question, isShutOut }: Speaker,
    doorkeeper: Doorkeeper,
  ): Promise<Reply | null> {
    const isToKnow = path === KNOWN_PATH
    if (isShutOut && !isToKnow) return SHUT_OUT
    if (request.headers['content-type'] !== SEALED) return { status: 415, body: 'Only what is sealed.' }
    const sealed = await readBody(request, isToKnow ? TOKEN_LIMIT : MESSAGE_LIMIT)
    if (sealed === null) return { status: 413, body: 'Too large.' }
    const text = unseal(key, asking(path, question), sealed)
    if (text === null) return null
    if (isToKnow) return { status: 200, body: doorkeeper.hasKey(JSON.parse(text)) }
    this.#places.keep(request.socket)
    if (path === KEY_PATH) {
      const another = doorkeeper.anotherKey(key)
      return another === null ? SHUT_OUT : { status: 200, body: another }
    }
    return this.#questions!.reply(path, text, key)
  }
}

/** Nothing more of what a stranger sends is taken in. */
function refuse(response: ServerResponse, why: keyof typeof WORDS): void {
  response.setHeader('Connection', 'close')
  send(response, 403, WORDS[why])
}
