import { readFile } from 'node:fs/promises'
import type { OutgoingHttpHeaders } from 'node:http'
import { basename, dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { answering, asking, newKey, newQuestion, readKey } from '../../../src-main/browser/sealed'
import { seal, unseal, writeKey } from '../../../src-main/browser/sealed'
import { eventually, projectText, titleOf } from '../documents/session/world'
import {
  ask,
  enter,
  entries,
  holdTime,
  keys,
  losePatience,
  nextToken,
  openStream,
  openTab,
  origin,
  port,
  post,
  raw,
  serveEach,
  server,
  showToken,
  world,
} from './served'

serveEach()

describe('the door', () => {
  it('starts in the units, terms and paper of the language of the browser, once and only for who is let in', async () => {
    const { settings } = world.host
    expect(settings.current).toMatchObject({ terms: 'UK', paper: 'A4' })
    await showToken('wrong', { 'accept-language': 'en-US,en;q=0.9' })
    expect(settings.current.terms).toBe('UK')
    const enterIn = async (language: string): Promise<void> => {
      await showToken(nextToken(), { 'accept-language': language })
    }
    // A language without a country says nothing of either.
    await enterIn('en')
    expect(settings.current.terms).toBe('UK')
    await enterIn('en-US,en;q=0.9')
    expect(settings.current).toMatchObject({ units: 'imperial', terms: 'US', paper: 'Letter' })
    await enterIn('de-DE')
    expect(settings.current).toMatchObject({ units: 'imperial', terms: 'US' })
  })

  it('opens once for a token, and not for a wrong one', async () => {
    const token = nextToken()
    for (const wrong of ['', 'wrong', token.slice(1), `${token}x`, 'x'.repeat(100_000)])
      expect((await showToken(wrong)).status).toBe(403)
    expect((await showToken(token, { origin: 'null' })).status).toBe(403)
    const first = await showToken(token)
    expect(first.status).toBe(200)
    expect(first.headers['set-cookie']?.[0]).toMatch(/; HttpOnly; SameSite=Strict; Path=\/$/)
    expect((await showToken(token)).status).toBe(403)
  })

  it('is the same page for everybody, reached from a file of ours, and gives nothing', async () => {
    const fromFile = { 'sec-fetch-site': 'cross-site', 'sec-fetch-mode': 'navigate' }
    const page = await raw('GET', '/enter', fromFile)
    expect(page.status).toBe(200)
    expect(page.body).not.toMatch(/token|project|key/)
    // A browser asks for no icon by itself: it would be shut out, and a first load would begin with an error.
    expect(page.body).toContain('<link rel="icon" href="data:,"')
    expect(page.headers['set-cookie']).toBeUndefined()
    expect(page.headers['content-security-policy']).toContain("frame-ancestors 'none'")
    expect((await raw('GET', '/enter', { ...fromFile, 'sec-purpose': 'prefetch' })).status).toBe(503)
    expect((await raw('GET', '/enter', { ...fromFile, 'sec-fetch-mode': 'no-cors' })).status).toBe(403)
    expect((await raw('GET', '/', fromFile)).status).toBe(403)
  })

  it('shuts out whoever came in with an address that is used a second time, and says so to both', async () => {
    const token = nextToken()
    const first = await showToken(token)
    const cookie = first.headers['set-cookie']![0]!.split(';')[0]!
    keys.set(cookie, (JSON.parse(first.body) as { key: string }).key)
    const tab = await openTab(cookie)
    const stream = await openStream('taken', cookie)
    const body = { project: tab.project, seat: tab.seat, stream: 'taken' }
    expect((await post(tab, '/stream/join', body)).status).toBe(200)
    // Somebody who entered by another address is no concern of it.
    const other = await enter()
    const second = await showToken(token)
    expect(second.status).toBe(403)
    expect(second.body).toContain('whoever was let in with it is shut out now')
    expect(entries).toEqual(['first', 'first', 'again'])
    await eventually(() => expect(stream.heard()).toContain('"event":"shutOut"'))
    await stream.ended
    expect((await raw('GET', '/', { cookie })).status).toBe(403)
    expect((await post(tab, '/ask/facts', { ...body, payload: null })).status).toBe(403)
    const withOldKey = await post(
      { ...tab, cookie: other },
      '/ask/facts',
      { ...body, payload: null },
      {},
      keys.get(cookie),
    )
    expect(withOldKey.status).toBe(403)
    // Its page believes that, since it is sealed with the key that it has.
    expect(withOldKey.body).toContain('was used before')
    // A third time ends nothing more, and the project is there for who enters next.
    expect((await showToken(token)).status).toBe(403)
    expect(entries).toHaveLength(3)
    expect((await openTab(other)).project).toBe(tab.project)
  })

  it('a new address makes the unused one before it useless', async () => {
    const token = nextToken()
    server.entryUrl()
    expect((await showToken(token)).status).toBe(403)
  })

  it.each([
    '/',
    '/index.html',
    '/app.js',
    '/host.js',
    '/stream.js',
    '/stream?id=x',
    '/download/x',
    '/nothing',
  ])('%s gives nothing without a session', async (path) => {
    const answered = await raw('GET', path)
    expect(answered.status).toBe(403)
    expect(answered.body).not.toMatch(/doctype|app\(|client\(/)
    expect((await raw('GET', path, { cookie: `petalyard-${port}=guess` })).status).toBe(403)
  })

  it('operations need a session, our origin and a seal', async () => {
    const tab = await openTab(await enter())
    const body = { project: tab.project, seat: tab.seat, payload: null }
    const status = async (more: OutgoingHttpHeaders) => (await post(tab, '/ask/facts', body, more)).status
    expect(await status({})).toBe(200)
    expect(await status({ cookie: '' })).toBe(403)
    expect(await status({ origin: 'https://example.org' })).toBe(403)
    expect(await status({ origin: 'null' })).toBe(403)
    expect(await status({ origin: `http://localhost:${port}` })).toBe(403)
    expect(await status({ origin: `http://127.0.0.1:${port + 1}` })).toBe(403)
    expect(await status({ 'sec-fetch-site': 'same-site' })).toBe(403)
    expect(await status({ 'sec-fetch-site': 'cross-site' })).toBe(403)
    expect(await status({ 'content-type': 'text/plain' })).toBe(415)
    expect(await status({ 'content-type': 'application/json' })).toBe(415)
    expect(await status({ origin: undefined })).toBe(403)
  })

  it('a cookie that another port of this machine heard asks and changes nothing without the key', async () => {
    const tab = await openTab(await enter())
    const other = await enter()
    const body = { project: tab.project, seat: tab.seat, payload: null }
    const [name] = keys.get(tab.cookie)!.split('.')
    const guess = `${name}.${'0'.repeat(64)}`
    const unknown = writeKey(newKey())
    for (const path of ['/ask/facts', '/export', '/export/cancel', '/stream/join', '/stream/leave']) {
      for (const key of [guess, unknown])
        expect((await post(tab, path, body, {}, key)).status, path).toBe(403)
      for (const said of ['', 'guess', tab.cookie.split('=')[1], `${name}.`])
        expect((await post(tab, path, body, { 'x-petalyard-key': said })).status, path).toBe(403)
    }
    // A browser that entered again shows its new cookie in pages that have the key of the one before.
    expect((await post({ ...tab, cookie: other }, '/ask/facts', body)).status).toBe(200)
    expect((await post(tab, '/ask/facts', body, {}, keys.get(other))).status).toBe(200)
  })

  it('changes nothing at a word that is not sealed with the key, for its place and its question', async () => {
    const tab = await openTab(await enter())
    const key = readKey(keys.get(tab.cookie)!)!
    const [question, another] = [newQuestion(), newQuestion()]
    const message = { project: tab.project, seat: tab.seat }
    const change = JSON.stringify({ ...message, payload: { revision: 1, text: projectText('Forged') } })
    const send = async (sealed: Uint8Array) => {
      const headers = {
        cookie: tab.cookie,
        origin: origin(),
        'content-type': 'application/octet-stream',
        'x-petalyard-key': `${key.name}.${question}`,
      }
      const { bytes } = await raw('POST', '/ask/keepProject', headers, Buffer.from(sealed))
      const reply = unseal(key, answering(question), bytes)
      return reply === null ? 'not heard' : (JSON.parse(reply) as { status: number }).status
    }
    const path = '/ask/keepProject'
    const wrongKey = { name: key.name, bytes: newKey().bytes }
    const right = seal(key, asking(path, question), change)
    const turned = Uint8Array.from(right, (byte, at) => (at === 40 ? byte ^ 1 : byte))
    for (const wrong of [
      Buffer.from(change),
      new Uint8Array(),
      seal(wrongKey, asking(path, question), change),
      seal(key, asking('/ask/saveProject', question), change),
      seal(key, asking(path, another), change),
      turned,
      right.subarray(0, -1),
    ])
      expect(await send(wrong)).toBe('not heard')
    expect(titleOf(world.host.session(tab.project)?.text ?? '')).not.toBe('Forged')
    expect(await send(right)).toBe(200)
    expect(titleOf(world.host.session(tab.project)?.text ?? '')).toBe('Forged')
  })

  it('answers to no other name, even with a session', async () => {
    const cookie = await enter()
    for (const host of [
      'localhost',
      `localhost:${port}`,
      `evil.example:${port}`,
      '127.0.0.1',
      `[::1]:${port}`,
    ])
      expect((await raw('GET', '/app.js', { cookie, host })).status, host).toBe(403)
    expect((await raw('GET', '/app.js', { cookie })).status).toBe(200)
  })

  it('lets pages of other sites read nothing', async () => {
    const cookie = await enter()
    const foreign = { cookie, origin: 'https://example.org', 'sec-fetch-site': 'cross-site' }
    const answered = await raw('GET', '/app.js', foreign)
    expect(answered.status).toBe(403)
    expect(answered.headers['access-control-allow-origin']).toBeUndefined()
    expect((await raw('OPTIONS', '/ask/facts', foreign)).status).toBe(403)
    expect((await raw('PUT', '/app.js', { cookie, origin: origin() })).status).toBe(405)
  })
})

describe('files', () => {
  it('come with the security headers', async () => {
    const { headers } = await raw('GET', '/app.js', { cookie: await enter() })
    expect(headers['content-security-policy']).toContain("default-src 'none'")
    expect(headers['content-type']).toBe('text/javascript; charset=utf-8')
    expect(headers['x-content-type-options']).toBe('nosniff')
    expect(headers['cross-origin-resource-policy']).toBe('same-origin')
  })

  it('do not leave their folder', async () => {
    const cookie = await enter()
    for (const path of [
      '/../secret.js',
      '/..%2fsecret.js',
      '/%2e%2e%2fsecret.js',
      '/..%5csecret.js',
      '//x/../secret.js',
    ])
      expect((await raw('GET', path, { cookie })).status, path).toBe(404)
  })
})

describe('messages', () => {
  it('that are no questions are refused', async () => {
    const tab = await openTab(await enter())
    expect((await post(tab, '/ask/facts', 'not json')).status).toBe(400)
    expect((await post(tab, '/ask/facts', '[]')).status).toBe(400)
    expect((await post(tab, '/ask/facts', { project: 1 })).status).toBe(400)
    expect((await post(tab, '/ask/facts', { ...tab, payload: null })).status).toBe(400)
    expect((await post(tab, '/other', {})).status).toBe(404)
    const deep = '['.repeat(100_000)
    expect((await post(tab, '/ask/facts', deep + ']'.repeat(100_000))).status).toBe(400)
  })

  it('of the wrong shape are refused in words', async () => {
    const tab = await openTab(await enter())
    for (const [name, payload] of [
      ['keepProject', { revision: 'x' }],
      ['nobody', null],
      ['constructor', null],
      ['saveProject', { revision: 1, text: projectText('x'), path: '/etc/passwd' }],
    ] as const)
      expect((await ask(tab, name, payload)).outcome).toMatchObject({ problem: { code: 'app/bad-message' } })
  })

  it('that are huge are cut off', async () => {
    const tab = await openTab(await enter())
    const announced = await post(tab, '/ask/facts', '', { 'content-length': 60_000_000 }).catch(() => null)
    expect(announced?.status ?? 413).toBe(413)
  })
})

describe('a tab', () => {
  it('gets a project and keeps it', async () => {
    const tab = await openTab(await enter())
    const opened = await ask(tab, 'currentProject')
    expect(opened.outcome).toMatchObject({ outcome: 'done', value: { origin: 'example', nextRevision: 1 } })
    await ask(tab, 'keepProject', { revision: 1, text: projectText('Kept') })
    expect(titleOf(world.host.session(tab.project)?.text ?? '')).toBe('Kept')
  })

  it('loses the project to the tab that opened it last, once that speaks', async () => {
    const cookie = await enter()
    const first = await openTab(cookie)
    const second = await openTab(cookie, first.project)
    // Loading a page takes no key: by itself it takes nothing from anybody.
    const loaded = { project: first.project, seat: second.seat, payload: null }
    const guess = writeKey({ ...readKey(keys.get(cookie)!)!, bytes: newKey().bytes })
    expect((await post(second, '/ask/facts', loaded, {}, guess)).status).toBe(403)
    expect((await ask(first, 'currentProject')).outcome).toMatchObject({ outcome: 'done' })
    expect((await ask(second, 'currentProject')).outcome).toMatchObject({ outcome: 'done' })
    expect((await ask(first, 'currentProject')).outcome).toMatchObject({
      problem: { code: 'app/open-elsewhere' },
    })
    const events = await post(first, '/stream/join', {
      project: first.project,
      seat: first.seat,
      stream: 'x',
    })
    expect(events.status).toBe(404)
  })

  it('is not taken over by a page that is fetched in advance', async () => {
    const cookie = await enter()
    const tab = await openTab(cookie)
    const early = await raw('GET', `/?project=${tab.project}`, { cookie, 'sec-purpose': 'prefetch' })
    expect(early.status).toBe(503)
    expect((await ask(tab, 'currentProject')).outcome).toMatchObject({ outcome: 'done' })
  })

  it('saves into the folder of saved projects, and opens what is handed over', async () => {
    const tab = await openTab(await enter())
    const saved = await ask(tab, 'saveProject', { revision: 1, text: projectText('Kitchen table') })
    expect(saved.outcome).toMatchObject({ outcome: 'done', value: { name: 'Kitchen table', place: 'file' } })
    const opened = await ask(tab, 'openProject', null, {
      upload: { name: 'x', text: projectText('Handed over') },
    })
    expect(opened).toMatchObject({ outcome: { outcome: 'done' }, shown: { inThisTab: false } })
    expect(await ask(tab, 'openProject')).toEqual({ outcome: { outcome: 'cancelled' } })
    const wrong = await ask(tab, 'openProject', null, { upload: { name: 'x', text: 'no project' } })
    expect(wrong.outcome).toMatchObject({ problem: { code: 'app/cannot-open' } })
  })

  it('lets a file without a title follow the title that the project gets, and no file that has a name', async () => {
    const tab = await openTab(await enter())
    await ask(tab, 'saveProject', { revision: 1, text: projectText('') })
    const path = world.host.session(tab.project)!.path!
    expect(basename(path)).toBe('Untitled.petalyard')
    const saved = await ask(tab, 'saveProject', { revision: 2, text: projectText('Market bag') })
    expect(saved.outcome).toMatchObject({ outcome: 'done', value: { name: 'Market bag', place: 'file' } })
    const named = world.host.session(tab.project)!.path!
    expect(named).toBe(join(dirname(path), 'Market bag.petalyard'))
    expect(titleOf(await readFile(named, 'utf8'))).toBe('Market bag')
    await expect(readFile(path, 'utf8')).rejects.toThrow()
    // It has a name now: another title leaves it.
    await ask(tab, 'saveProject', { revision: 3, text: projectText('Beach bag') })
    expect(world.host.session(tab.project)!.path).toBe(named)
    expect(titleOf(await readFile(named, 'utf8'))).toBe('Beach bag')
    const listed = await world.host.recent.list()
    expect(listed.filter(({ place }) => place === 'file').map(({ name }) => name)).toEqual(['Beach bag'])
  })

  it('gets a copy whatever its title is: half a character is none', async () => {
    const tab = await openTab(await enter())
    const copy = await ask(tab, 'saveProjectAs', { revision: 1, text: projectText('Throw \ud83e') })
    const fetched = await raw('GET', `/download/${copy.download}`, { cookie: tab.cookie })
    expect(fetched.status).toBe(200)
    expect(fetched.headers['content-disposition']).toBe("attachment; filename*=UTF-8''Throw.petalyard")
  })

  it('gets copies and exports as downloads, each once', async () => {
    const tab = await openTab(await enter())
    const copy = await ask(tab, 'saveProjectAs', { revision: 1, text: projectText('Überwurf') })
    const fetched = await raw('GET', `/download/${copy.download}`, { cookie: tab.cookie })
    expect(titleOf(fetched.body)).toBe('Überwurf')
    expect(fetched.headers['content-disposition']).toContain('attachment')
    expect((await raw('GET', `/download/${copy.download}`, { cookie: tab.cookie })).status).toBe(404)
    const request = { kind: 'map', text: projectText('x') }
    const made = await post(tab, '/export', {
      project: tab.project,
      seat: tab.seat,
      job: 1,
      payload: request,
    })
    const { download } = JSON.parse(made.body) as { download: string }
    expect((await raw('GET', `/download/${download}`, { cookie: tab.cookie })).body).toBe('%PDF of map')
  })

  it('can cancel an export', async () => {
    const tab = await openTab(await enter())
    const who = { project: tab.project, seat: tab.seat, job: 1 }
    let isOver = false
    const running = post(tab, '/export', { ...who, payload: { kind: 'map', text: projectText('x') } })
    void running.finally(() => (isOver = true))
    // Who comes before the export cancels nothing.
    while (!isOver) await post(tab, '/export/cancel', who)
    expect(JSON.parse((await running).body)).toEqual({ outcome: { outcome: 'cancelled' } })
  })
})

describe('a tab that is gone', () => {
  holdTime()

  it('for good has its project saved and ended; coming back finds it', async () => {
    const tab = await openTab(await enter())
    await ask(tab, 'saveProject', { revision: 1, text: projectText('First') })
    const path = world.host.session(tab.project)?.path ?? ''
    await ask(tab, 'keepProject', { revision: 2, text: projectText('Second') })
    losePatience()
    await eventually(() => expect(world.host.session(tab.project)).toBeNull())
    expect(titleOf(await readFile(path, 'utf8'))).toBe('Second')
    const back = await raw('GET', `/?project=${tab.project}`, { cookie: tab.cookie })
    const again = await openTab(tab.cookie, /project=([\w-]+)/.exec(back.headers.location ?? '')?.[1])
    expect(titleOf(world.host.session(again.project)?.text ?? '')).toBe('Second')
  })
})
