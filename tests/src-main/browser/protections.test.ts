/** Each protection of the server by itself: a test that sends several wrong things at once shows none of them. */
import { Agent } from 'node:http'
import type { IncomingMessage } from 'node:http'
import { connect } from 'node:net'
import { Readable } from 'node:stream'
import { expect, it, vi } from 'vitest'
import { readBody } from '../../../src-main/browser/answering'
import { Doorkeeper } from '../../../src-main/browser/doorkeeper'
import { SILENT_AT_MOST } from '../../../src-main/browser/tabs'
import { eventually } from '../documents/session/world'
import { ask, enter, nextToken, openStream, openTab, port, post, raw, serveEach, world } from './served'

serveEach()

it.runIf(process.platform === 'linux')('nobody listens at another address of the machine', async () => {
  // On Linux all of 127.0.0.0/8 is this machine: a server of every address answers there as well.
  const outcome = await new Promise<string>((resolve) => {
    const socket = connect(port, '127.0.0.2')
    socket.on('connect', () => resolve('connected'))
    socket.on('error', (error: NodeJS.ErrnoException) => resolve(error.code ?? ''))
    socket.on('close', () => socket.destroy())
  })
  expect(outcome).toBe('ECONNREFUSED')
})

it('a token has 256 bits, and none is like another', () => {
  const tokens = [nextToken(), nextToken()]
  for (const token of tokens) expect(Buffer.from(token, 'base64url')).toHaveLength(32)
  expect(tokens[0]).not.toBe(tokens[1])
})

it('what is answered is kept by nobody and gives no address away', async () => {
  const { headers } = await raw('GET', '/app.js', { cookie: await enter() })
  expect(headers['referrer-policy']).toBe('no-referrer')
  expect(headers['cache-control']).toBe('no-store')
})

it('a foreign origin is enough to be refused, and so is another site', async () => {
  const cookie = await enter()
  for (const wrong of [{ origin: 'https://example.org' }, { 'sec-fetch-site': 'cross-site' }])
    expect((await raw('GET', '/app.js', { cookie, ...wrong })).status).toBe(403)
})

it('a body without a length is read no further than allowed', async () => {
  const bodyOf = (pieces: number) => {
    const body = Readable.from(Array.from({ length: pieces }, () => Buffer.from('12345')))
    return Object.assign(body, { headers: {} }) as unknown as IncomingMessage
  }
  expect((await readBody(bodyOf(2), 10))?.toString()).toBe('1234512345')
  expect(await readBody(bodyOf(3), 10)).toBeNull()
})

/** Connections that say nothing, as another user of this machine may open them. */
function silent(count: number) {
  const closed = new Set<number>()
  const sockets = Array.from({ length: count }, (_, at) =>
    connect(port, '127.0.0.1')
      .on('error', () => undefined)
      .on('close', () => closed.add(at)),
  )
  return { closed, end: () => sockets.forEach((socket) => socket.destroy()) }
}

it('connections beyond the limit are hung up on, those first that waited longest', async () => {
  const strangers = silent(450)
  try {
    await eventually(() => expect(strangers.closed.size).toBe(50))
    expect(Math.max(...strangers.closed)).toBeLessThan(50)
  } finally {
    strangers.end()
  }
})

it('strangers who hold all the connections that they can get keep no tab from its own', async () => {
  const tab = await openTab(await enter())
  const stream = await openStream('one', tab.cookie)
  let isCut = false
  void stream.ended.then(() => (isCut = true))
  const member = { project: tab.project, seat: tab.seat }
  expect((await post(tab, '/stream/join', { ...member, stream: 'one' })).status).toBe(200)
  // A connection that stays open between two words, as a browser holds it.
  const agent = new Agent({ keepAlive: true, maxSockets: 1 })
  const first = await post(tab, '/ask/facts', { ...member, payload: null }, {}, undefined, agent)
  const strangers: ReturnType<typeof silent>[] = []
  try {
    for (let wave = 1; wave <= 3; wave++) {
      strangers.push(silent(450))
      const closed = () => strangers.reduce((sum, each) => sum + each.closed.size, 0)
      await eventually(() => expect(closed()).toBe(wave * 450 - 400))
      // On the connection that it has, and on a new one.
      for (const by of [agent, undefined])
        expect((await post(tab, '/ask/facts', { ...member, payload: null }, {}, undefined, by)).status).toBe(
          200,
        )
    }
    expect(first.status).toBe(200)
    expect(isCut).toBe(false)
  } finally {
    for (const each of strangers) each.end()
    agent.destroy()
    stream.end()
  }
})

it('those who only heard the cookie take the place of nobody who has a key, strangers that of nobody with the cookie', async () => {
  const tab = await openTab(await enter())
  const member = { project: tab.project, seat: tab.seat }
  const withKey = new Agent({ keepAlive: true, maxSockets: 1 })
  const withCookie = new Agent({ keepAlive: true, maxSockets: 300 })
  const speak = () => post(tab, '/ask/facts', { ...member, payload: null }, {}, undefined, withKey)
  try {
    expect((await speak()).status).toBe(200)
    const held = socketsOf(withKey)
    // Whoever is hung up on may not have been answered yet: that is what there are places for.
    const outcomes = await Promise.allSettled(
      Array.from({ length: 300 }, () => raw('GET', '/app.js', { cookie: tab.cookie }, '', withCookie)),
    )
    const answered = outcomes.filter(({ status }) => status === 'fulfilled')
    expect(answered.length).toBeGreaterThanOrEqual(200)
    await eventually(() => expect(socketsOf(withCookie)).toHaveLength(200))
    const strangers = silent(450)
    await eventually(() => expect(strangers.closed.size).toBe(50))
    expect(socketsOf(withCookie)).toHaveLength(200)
    strangers.end()
    expect((await speak()).status).toBe(200)
    // On the very connection that it had.
    expect(socketsOf(withKey)).toEqual(held)
  } finally {
    withKey.destroy()
    withCookie.destroy()
  }
})

/** The local ends of connections that are open. */
function socketsOf(agent: Agent): unknown[] {
  const sockets = [...Object.values(agent.freeSockets), ...Object.values(agent.sockets)].flat()
  return sockets.filter((socket) => socket && !socket.destroyed).map((socket) => socket?.localPort)
}

it('has no icon for whoever asks without one of a page, and writes no error for it', async () => {
  const { status, body, headers } = await raw('GET', '/favicon.ico')
  expect([status, body]).toEqual([204, ''])
  expect(headers['set-cookie']).toBeUndefined()
  expect((await raw('GET', '/favicon.ico', { 'sec-fetch-site': 'cross-site' })).status).toBe(403)
})

/** Sends all of it at once and answers with what came back until the server hung up. */
const pipelined = (text: string): Promise<string> =>
  new Promise((resolve) => {
    let said = ''
    const socket = connect(port, '127.0.0.1', () => socket.write(text))
    socket.on('data', (data: Buffer) => (said += data.toString()))
    socket.on('error', () => undefined)
    socket.on('close', () => resolve(said))
  })

it.each(['/enter', '/enter.js', '/favicon.ico', '/', '/app.js', '//', '/%'])(
  'a stranger who asks for %s a thousand times without waiting has one answer',
  async (path) => {
    const one = `GET ${path} HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n\r\n`
    const looked = vi.spyOn(Doorkeeper.prototype, 'checkOrigin')
    const said = await pipelined(one.repeat(1_000))
    // What came with the first is not even looked at.
    expect(looked.mock.calls.length).toBeLessThanOrEqual(1)
    looked.mockRestore()
    expect(said.match(/^HTTP\/1\.1 /gm)).toHaveLength(1)
    expect(said).toMatch(/^connection: close\r$/im)
  },
)

it('those with the cookie ask again and again on one connection', async () => {
  const cookie = await enter()
  const one = `GET /app.js HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nCookie: ${cookie}\r\n`
  const said = await pipelined(`${one}\r\n${one}\r\n${one}Connection: close\r\n\r\n`)
  expect(said.match(/^HTTP\/1\.1 200 /gm)).toHaveLength(3)
})

it('whoever only heard the cookie has no more projects opened than a browser loads at once, and keeps nobody out', async () => {
  const cookie = await enter()
  for (let times = 0; times < 3 * SILENT_AT_MOST; times++) await openTab(cookie)
  expect(world.host.openIds).toHaveLength(SILENT_AT_MOST)
  // Pages that speak have a project each, one of these first.
  for (let more = 0; more < 3; more++) {
    const tab = await openTab(cookie)
    const member = { project: tab.project, seat: tab.seat }
    expect((await ask(tab, 'facts')).outcome).toMatchObject({ outcome: 'done' })
    const stream = await openStream(`s${more}`, cookie)
    expect((await post(tab, '/stream/join', { ...member, stream: `s${more}` })).status).toBe(200)
    stream.end()
  }
  expect(world.host.openIds.length).toBeLessThanOrEqual(SILENT_AT_MOST + 3)
})
