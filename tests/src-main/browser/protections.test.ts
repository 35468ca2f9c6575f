/** Each protection of the server by itself: a test that sends several wrong things at once shows none of them. */
import type { IncomingMessage } from 'node:http'
import { connect } from 'node:net'
import type { Socket } from 'node:net'
import { Readable } from 'node:stream'
import { expect, it } from 'vitest'
import { readBody } from '../../../src-main/browser/answering'
import { eventually } from '../documents/session/world'
import { enter, nextToken, port, raw, serveEach } from './served'

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

it('connections beyond the limit are hung up on', async () => {
  let closed = 0
  const sockets: Socket[] = Array.from({ length: 210 }, () =>
    connect(port, '127.0.0.1')
      .on('error', () => undefined)
      .on('close', () => closed++),
  )
  try {
    await eventually(() => expect(closed).toBe(10))
  } finally {
    for (const socket of sockets) socket.destroy()
  }
})
