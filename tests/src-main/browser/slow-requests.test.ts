/** Requests that come in by drops hold nothing up, and are ended. */
import { mkdtemp, rm } from 'node:fs/promises'
import { connect } from 'node:net'
import type { Socket } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { newQuestion } from '../../../src-main/browser/sealed'
import { LoopbackServer } from '../../../src-main/browser/server'
import type { HostWorld } from '../host/host-world'
import { makeHost } from '../host/host-world'

let folder: string
let world: HostWorld
let server: LoopbackServer
let port: number
let sockets: Socket[] = []

/** None of them is asked for. */
const files = () => {
  const none = join(folder, 'none')
  return {
    windowFolder: folder,
    clientScript: none,
    streamScript: none,
    entryScript: none,
    saveFolder: folder,
  }
}

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'petalyard-slow-'))
  server = new LoopbackServer({ ...files(), pace: { head: 300, whole: 600, look: 50 } })
  world = await makeHost({ announce: server.announce })
  port = await server.listen(world.host)
  sockets = []
})
afterEach(async () => {
  for (const socket of sockets) socket.destroy()
  await server.close()
  await world.end()
  await rm(folder, { recursive: true })
})

/** Sends the words, then a drop every 40 ms; answers with what came back once the server has hung up. */
function drip(words: string, drop: string, at = port): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(at, '127.0.0.1')
    sockets.push(socket)
    let said = ''
    const timer = setInterval(() => socket.write(drop), 40)
    const late = setTimeout(() => reject(new Error('the server still listens')), 10_000)
    socket.on('connect', () => socket.write(words))
    socket.on('data', (data: Buffer) => (said += data.toString()))
    socket.on('error', () => undefined)
    socket.on('close', () => {
      clearInterval(timer)
      clearTimeout(late)
      resolve(said)
    })
  })
}

it('whose head never ends are hung up on', async () => {
  const said = await drip(`GET / HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n`, 'X-A: b\r\n')
  expect(said).toMatch(/^(HTTP\/1\.1 408 |$)/)
})

it('whose body never ends are hung up on', async () => {
  const head = [
    'POST /ask/facts HTTP/1.1',
    `Host: 127.0.0.1:${port}`,
    `Origin: http://127.0.0.1:${port}`,
    'Content-Type: application/json',
    'Content-Length: 100000',
  ]
  const said = await drip(`${head.join('\r\n')}\r\n\r\n`, ' ')
  expect(said).toMatch(/^(HTTP\/1\.1 4\d\d |$)/)
})

it('whose body never ends are hung up on, even of who was let in', async () => {
  const origin = `http://127.0.0.1:${port}`
  const token = new URL(server.entryUrl()).hash.slice('#token='.length)
  const admitted = await fetch(`${origin}/enter`, { method: 'POST', headers: { origin }, body: token })
  const { key } = (await admitted.json()) as { key: string }
  const cookie = admitted.headers.get('set-cookie')!.split(';')[0]!
  const head = [
    'POST /ask/facts HTTP/1.1',
    `Host: 127.0.0.1:${port}`,
    `Origin: ${origin}`,
    `Cookie: ${cookie}`,
    `X-Petalyard-Key: ${key.split('.')[0]}.${newQuestion()}`,
    'Content-Type: application/octet-stream',
    'Content-Length: 100000',
  ]
  // Nobody but the time for the whole request ends it.
  expect(await drip(`${head.join('\r\n')}\r\n\r\n`, ' ')).toMatch(/^(HTTP\/1\.1 408 |$)/)
})

it('of strangers are answered and hung up on, however long their bodies are', async () => {
  // As patient as it is in use: only the answer ends it.
  const patient = new LoopbackServer(files())
  const at = await patient.listen(world.host)
  for (const origin of [`http://127.0.0.1:${at}`, 'https://example.org']) {
    const head = ['POST /ask/facts HTTP/1.1', `Host: 127.0.0.1:${at}`, `Origin: ${origin}`]
    const said = await drip(
      `${head.join('\r\n')}\r\nContent-Length: 1000000000000\r\n\r\n`,
      ' '.repeat(1_000),
      at,
    )
    expect(said).toMatch(/^HTTP\/1\.1 403 /)
  }
  await patient.close()
})

it('do not keep others waiting', async () => {
  const slow = Array.from({ length: 20 }, () => drip('GET / HTTP/1.1\r\n', 'X-A: b\r\n'))
  const answered = await fetch(`http://127.0.0.1:${port}/`)
  expect(answered.status).toBe(403)
  await Promise.all(slow)
})
