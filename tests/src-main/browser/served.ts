/** A loopback server with a window of a few files, new for each test, and raw requests to it. */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { request } from 'node:http'
import type { Agent, IncomingHttpHeaders, OutgoingHttpHeaders } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, vi } from 'vitest'
import type { Reply, Told } from '../../../src-main/browser/envelope'
import {
  answering,
  asking,
  fromText,
  newQuestion,
  readKey,
  seal,
  telling,
  unseal,
} from '../../../src-main/browser/sealed'
import { LoopbackServer } from '../../../src-main/browser/server'
import type { HostWorld } from '../host/host-world'
import { makeHost } from '../host/host-world'
import { eventually } from '../documents/session/world'

interface Answered {
  readonly status: number
  readonly headers: IncomingHttpHeaders
  readonly body: string
  readonly bytes: Buffer
}

let folder: string
export let world: HostWorld
export let server: LoopbackServer
export let port: number

/** Tabs that are gone are given up after this time (ms). */
const PATIENCE = 60_000

/**
 * In the tests of a block, timers of the program run where the test says so: nothing hangs on how quick a machine is.
 * Waiting for something lets a few of its milliseconds pass.
 */
export function holdTime(): void {
  beforeEach(() => void vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] }))
  afterEach(() => void vi.useRealTimers())
}

/** The time that a tab which is gone is waited for goes by. */
export const losePatience = (): void => void vi.advanceTimersByTime(PATIENCE)

/** Serves each test of a file: called in it, since files share this module. */
export function serveEach(): void {
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'petalyard-server-'))
    const windowFolder = join(folder, 'renderer')
    await mkdir(windowFolder)
    await writeFile(join(windowFolder, 'index.html'), '<!doctype html><html><head></head></html>')
    await writeFile(join(windowFolder, 'app.js'), 'app()')
    await writeFile(join(folder, 'secret.js'), 'secret')
    await writeFile(join(folder, 'client.js'), 'client()')
    await writeFile(join(folder, 'enter.js'), 'enter()')
    entries = []
    server = new LoopbackServer({
      windowFolder,
      clientScript: join(folder, 'client.js'),
      streamScript: join(folder, 'stream.js'),
      entryScript: join(folder, 'enter.js'),
      onEntered: (how) => entries.push(how),
      saveFolder: join(folder, 'saved'),
      patience: PATIENCE,
    })
    world = await makeHost({ announce: server.announce })
    port = await server.listen(world.host)
  })
  afterEach(async () => {
    await server.close()
    await world.end()
    await rm(folder, { recursive: true })
  })
}

/** One raw request: nothing of it is tidied up on the way, as a browser or `fetch` would. */
export function raw(
  method: string,
  path: string,
  headers: OutgoingHttpHeaders = {},
  body: string | Buffer = '',
  agent: Agent | false = false,
): Promise<Answered> {
  return new Promise((resolve, reject) => {
    const sent = request({ host: '127.0.0.1', port, method, path, headers, agent }, (response) => {
      const heard: Buffer[] = []
      response.on('data', (data: Buffer) => heard.push(data))
      response.on('end', () => {
        const bytes = Buffer.concat(heard)
        const { statusCode: status = 0, headers: told } = response
        resolve({ status, headers: told, body: bytes.toString(), bytes })
      })
    })
    sent.on('error', reject)
    sent.end(body)
  })
}

export const origin = () => `http://127.0.0.1:${port}`

export async function enter(): Promise<string> {
  const answered = await showToken(nextToken())
  const cookie = answered.headers['set-cookie']?.[0]?.split(';')[0] ?? ''
  keys.set(cookie, (JSON.parse(answered.body) as { key: string }).key)
  return cookie
}

/** The token of a new address. */
export function nextToken(): string {
  return new URL(server.entryUrl()).hash.slice('#token='.length)
}

/** Shows a token at the door, as its page does. */
export function showToken(token: string, more: OutgoingHttpHeaders = {}): Promise<Answered> {
  return raw('POST', '/enter', { origin: origin(), ...more }, token)
}
/** What the server told of the door. */
export let entries: string[]
/** The key that came with each cookie. */
export const keys = new Map<string, string>()

export interface Tab {
  readonly cookie: string
  readonly project: string
  readonly seat: string
}

export async function openTab(cookie: string, project?: string): Promise<Tab> {
  const path = project ? `/?project=${project}` : ((await raw('GET', '/', { cookie })).headers.location ?? '')
  const page = await raw('GET', path, { cookie })
  const seat = /seat=([\w-]+)/.exec(page.body)?.[1] ?? ''
  return { cookie, seat, project: /project=([\w-]+)/.exec(page.body)?.[1] ?? '' }
}

/** Asks as a page does: sealed with the key of its cookie, or with another; what cannot be opened is as it came. */
export async function post(
  tab: Tab,
  path: string,
  body: object | string,
  more: OutgoingHttpHeaders = {},
  key = keys.get(tab.cookie) ?? '',
  agent?: Agent,
): Promise<Answered> {
  const read = readKey(key)!
  const question = newQuestion()
  const text = typeof body === 'string' ? body : JSON.stringify(body)
  const sealed = seal(read, asking(path, question), text)
  const own = { cookie: tab.cookie, 'x-petalyard-key': `${read.name}.${question}`, origin: origin() }
  const headers = { ...own, 'content-type': 'application/octet-stream', ...more }
  for (const name of Object.keys(headers) as (keyof typeof headers)[])
    if (headers[name] === undefined) delete headers[name]
  const answered = await raw('POST', path, headers, Buffer.from(sealed), agent)
  const opened = unseal(read, answering(question), answered.bytes)
  if (opened === null) return answered
  const reply = JSON.parse(opened) as Reply
  const told = typeof reply.body === 'string' ? reply.body : JSON.stringify(reply.body)
  return { ...answered, status: reply.status, body: told }
}

export async function ask(tab: Tab, name: string, payload: unknown = null, more: object = {}) {
  const { body } = await post(tab, `/ask/${name}`, { project: tab.project, seat: tab.seat, payload, ...more })
  return JSON.parse(body) as { outcome: unknown; shown?: unknown; download?: string }
}

/** A stream of events, which is heard from already. */
export async function openStream(id: string, cookie: string) {
  const heard: string[] = []
  let closed = (): void => undefined
  const ended = new Promise<void>((resolve) => (closed = resolve))
  const path = `/stream?id=${id}`
  const stream = request({ host: '127.0.0.1', port, path, headers: { cookie } }, (response) => {
    response.on('data', (data: Buffer) => heard.push(data.toString()))
    response.on('error', () => undefined)
    response.on('close', () => closed())
  })
  stream.on('error', () => undefined)
  stream.end()
  await eventually(() => expect(heard.join('')).toContain(': here'))
  const opened = () => heard.join('').replace(/^data: (.*)$/gm, (_, text: string) => open(text, cookie))
  return { heard: opened, asItCame: () => heard.join(''), ended, end: () => stream.destroy() }
}

/** What a tab that joined with the key of a cookie reads of what it is told. */
function open(told: string, cookie: string): string {
  const { seat, sealed } = JSON.parse(told) as Told
  return `${seat} ${unseal(readKey(keys.get(cookie)!)!, telling(seat), fromText(sealed))}`
}
