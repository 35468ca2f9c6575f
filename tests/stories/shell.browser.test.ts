import { readdir, readFile, writeFile } from 'node:fs/promises'
import { createServer } from 'node:http'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { beforeEach, afterEach, describe, expect, it } from 'vitest'
import { eventually, projectText, titleOf } from '../src-main/documents/session/world'
import { startChromium, startLoopback } from './browser'
import type { OpenedWindow } from './opened'
import { openWindow } from './opened'

let story: OpenedWindow
let page: Page

beforeEach(async () => {
  story = await openWindow()
  page = story.page
})
afterEach(() => story.close())

const ask = (target: Page) => target.evaluate(() => window.petalyard.currentProject())

describe('the same window in a browser', () => {
  it('opens with an example, without a word of complaint', async () => {
    const complaints: string[] = []
    page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()))
    page.on('pageerror', (error) => complaints.push(error.message))
    await page.reload()
    await page.waitForFunction(() => 'petalyard' in globalThis)
    expect(await ask(page)).toMatchObject({ outcome: 'done', value: { origin: 'example' } })
    expect(await page.evaluate(() => window.petalyard.facts())).toMatchObject({
      value: { host: 'browser', hasMenu: false },
    })
    expect(new URL(page.url()).search).toMatch(/^\?project=/)
    expect(page.url()).not.toContain('token')
    expect(complaints).toEqual([])
  })

  it('has its key in no address: a browser writes those into its list of visited pages', async () => {
    story.loopback.child.stdin?.write('\n')
    const another = await story.context.newPage()
    const visited: string[] = []
    another.on('framenavigated', (frame) => visited.push(frame.url()))
    await another.goto(await story.loopback.nextAddress())
    await another.waitForFunction(() => 'petalyard' in globalThis)
    expect(await another.evaluate(() => window.petalyard.facts())).toMatchObject({ outcome: 'done' })
    const key = await another.evaluate(() => sessionStorage.getItem('petalyard-key')!)
    expect(visited.length).toBeGreaterThan(1)
    expect(visited.join(' ')).not.toContain(key)
    expect(visited.filter((url) => url.includes('#') && !url.includes('/enter#token='))).toEqual([])
  })

  it('cannot be read without an address that lets in', async () => {
    const stranger = await (await startChromium()).newContext()
    const other = await stranger.newPage()
    for (const address of [page.url(), new URL('/', page.url()).href]) {
      const answered = await other.goto(address)
      expect(answered?.status()).toBe(403)
      expect(await other.content()).not.toContain('script')
    }
    await stranger.close()
  })

  it('says that its address was used a second time, and goes on once its browser is let in again', async () => {
    await page.getByRole('application').waitFor()
    const stranger = await (await startChromium()).newContext()
    const other = await stranger.newPage()
    await other.goto(/http\S+/.exec(story.loopback.said())?.[0] ?? '')
    await other.getByText('whoever was let in with it is shut out now').waitFor()
    await stranger.close()
    await page.getByText('not kept: this window was shut out').waitFor()
    await page.getByRole('alert').filter({ hasText: 'was used a second time' }).waitFor()
    await eventually(() => expect(story.loopback.said()).toContain('an address was used a second time'))
    const keep = (title: string, revision: number) =>
      page.evaluate(([text, number]) => window.petalyard.keepProject({ revision: number, text }), [
        projectText(title),
        revision,
      ] as const)
    expect(await keep('While shut out', 1)).toMatchObject({ problem: { code: 'app/shut-out' } })
    story.loopback.child.stdin?.write('\n')
    const again = await story.context.newPage()
    await again.goto(await story.loopback.nextAddress())
    await again.waitForFunction(() => 'petalyard' in globalThis)
    await page.getByText('not kept: this window was shut out').waitFor({ state: 'detached' })
    expect(await keep('Let in again', 2)).toMatchObject({ outcome: 'done' })
  })

  it('is closed to pages of other origins in the same browser, cookie and all', async () => {
    const own = new URL(page.url())
    const evil = await story.context.newPage()
    // A page of another port on this machine: the same site for cookies.
    await story.context.route('http://127.0.0.1:1/**', (route) =>
      route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>Evil</title>' }),
    )
    await evil.goto('http://127.0.0.1:1/')
    const tries = await evil.evaluate(async (base) => {
      const read = async (path: string, how: RequestInit) => {
        try {
          const answered = await fetch(base + path, { credentials: 'include', ...how })
          return `${answered.type} ${answered.status}`
        } catch {
          return 'refused'
        }
      }
      const frame = document.createElement('iframe')
      frame.src = base
      document.body.append(frame)
      // Until something has come, the frame holds an empty page of our own.
      const isEmpty = () => frame.contentDocument?.URL === 'about:blank'
      for (let tries = 0; tries < 100 && (tries < 3 || isEmpty()); tries++)
        await new Promise((resolve) => setTimeout(resolve, 100))
      const framed = frame.contentDocument?.title ?? 'nothing to see'
      return {
        page: await read('/', {}),
        blind: await read('/ask/facts', { method: 'POST', mode: 'no-cors', body: '{}' }),
        ask: await read('/ask/facts', {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: '{}',
        }),
        framed,
      }
    }, own.origin)
    expect(tries).toMatchObject({ page: 'refused', ask: 'refused', framed: 'nothing to see' })
    expect(await ask(page)).toMatchObject({ outcome: 'done' })
  })

  it('keeps to its policy: no foreign script, no code in the page', async () => {
    const ran = await page.evaluate(async () => {
      const script = document.createElement('script')
      script.textContent = 'globalThis.injected = true'
      document.head.append(script)
      await new Promise((resolve) => setTimeout(resolve, 50))
      return 'injected' in globalThis
    })
    expect(ran).toBe(false)
  })
})

describe('documents in a browser', () => {
  it('are kept at once, and found again after the server was killed', async () => {
    await page.evaluate((text) => window.petalyard.keepProject({ revision: 1, text }), projectText('Kept'))
    await story.loopback.kill()
    story.loopback = await startLoopback(story.folder)
    const again = await story.context.newPage()
    await again.goto(await story.loopback.nextAddress())
    await again.waitForFunction(() => 'petalyard' in globalThis)
    const opened = await ask(again)
    expect(opened).toMatchObject({ value: { origin: 'recovered', keeping: { name: 'Kept', place: 'app' } } })
  })

  it('say so when the program behind them is gone', async () => {
    await story.loopback.kill()
    const refused = await page.evaluate(
      (text) => window.petalyard.keepProject({ revision: 1, text }),
      projectText('Too late'),
    )
    expect(refused).toMatchObject({ outcome: 'refused', problem: { code: 'app/host-gone' } })
  })

  it('hand nothing over to whoever listens in its place', async () => {
    const { port } = new URL(page.url())
    await page.getByRole('application').waitFor()
    // Its stream is there, and tells of what is kept: a worker that was not loaded yet would ask nobody.
    await page.evaluate(
      (text) =>
        new Promise<void>((resolve) => {
          window.petalyard.onKeeping(() => resolve())
          void window.petalyard.keepProject({ revision: 1, text })
        }),
      projectText('Before'),
    )
    await story.loopback.kill()
    const handOver = () =>
      page.evaluate(
        (text) => window.petalyard.keepProject({ revision: 2, text }),
        projectText('For nobody else'),
      )
    expect(await handOver()).toMatchObject({ problem: { code: 'app/host-gone' } })
    const key = await page.evaluate(() => sessionStorage.getItem('petalyard-key')!.split('.')[1]!)
    expect(key).toHaveLength(64)
    const heard: string[] = []
    // Whoever it is plays along: a stream that stays and tells lies, a tab that is not known, changes that are kept.
    const other = createServer((request, response) => {
      heard.push(`${request.method} ${request.url} ${JSON.stringify(request.headers)}`)
      if (request.url?.startsWith('/stream?')) {
        const lie = JSON.stringify({ seat: 'x', event: 'movedElsewhere', payload: null, sealed: '00' })
        return void response.writeHead(200, { 'Content-Type': 'text/event-stream' }).write(`data: ${lie}\n\n`)
      }
      if (request.url === '/stream/join') return void response.writeHead(404).end()
      request.on('data', (data: Buffer) => heard.push(data.toString('latin1'), data.toString('hex')))
      request.on('end', () =>
        response.end('{"status":200,"body":{"outcome":{"outcome":"done","value":null}}}'),
      )
    })
    await page.evaluate(() => Object.assign(window, { isSamePage: true }))
    await new Promise<void>((resolve) => other.listen(Number(port), '127.0.0.1', resolve))
    expect(await handOver()).toMatchObject({ outcome: 'refused', problem: { code: 'app/host-gone' } })
    await eventually(() => expect(heard.join('\n')).toContain('GET /stream?'))
    // Two more rounds of asking whether it is ours.
    const asked = () => heard.filter((line) => line.startsWith('POST /ask/facts')).length
    const before = asked()
    await eventually(() => expect(asked()).toBeGreaterThan(before + 1))
    await eventually(() => expect(heard.join('\n')).toContain('POST /stream/join'))
    expect(heard.join('\n')).toContain('POST /ask/keepProject')
    expect(heard.join('\n')).not.toContain('For nobody else')
    expect(heard.join('\n')).not.toContain('revision')
    // Neither as it is written nor as it is.
    expect(heard.join('\n')).not.toContain(key)
    expect(heard.join('\n')).not.toContain(Buffer.from(key, 'hex').toString('latin1'))
    await page.getByText('not kept: Petalyard does not answer').waitFor()
    expect(await page.evaluate(() => 'isSamePage' in window)).toBe(true)
    other.closeAllConnections()
    await new Promise((resolve) => other.close(resolve))
  })

  it('save into the folder of saved projects, and download as copies', async () => {
    const saved = await page.evaluate(
      (text) => window.petalyard.saveProject({ revision: 1, text }),
      projectText('Kitchen table'),
    )
    expect(saved).toMatchObject({ value: { place: 'file', where: 'Kitchen table.petalyard in saved' } })
    const path = join(story.folder, 'saved', 'Kitchen table.petalyard')
    expect(titleOf(await readFile(path, 'utf8'))).toBe('Kitchen table')
    const downloaded = page.waitForEvent('download')
    await page.evaluate(
      (text) => window.petalyard.saveProjectAs({ revision: 2, text }),
      projectText('Kitchen table 2'),
    )
    const download = await downloaded
    expect(download.suggestedFilename()).toBe('Kitchen table.petalyard')
    expect(titleOf(await readFile(await download.path(), 'utf8'))).toBe('Kitchen table 2')
  })

  it('open from the picker of the browser, in a tab of their own once something was changed', async () => {
    await page.evaluate((text) => window.petalyard.keepProject({ revision: 1, text }), projectText('First'))
    const path = join(story.folder, 'brought.petalyard')
    await writeFile(path, projectText('Brought'))
    const [chooser, opened] = [page.waitForEvent('filechooser'), story.context.waitForEvent('page')]
    await page.evaluate(() => void window.petalyard.openProject())
    await (await chooser).setFiles(path)
    const tab = await opened
    await tab.waitForFunction(() => 'petalyard' in globalThis)
    expect(await ask(tab)).toMatchObject({
      value: { origin: 'file', keeping: { name: 'Brought', place: 'app' } },
    })
    expect(await ask(page)).toMatchObject({ value: { keeping: { name: 'First' } } })
  })

  it('replace an example that nobody touched', async () => {
    const before = page.url()
    await page.evaluate(() => void window.petalyard.newProject({ from: 'blank' }))
    await page.waitForURL((url) => url.href !== before)
    await page.waitForFunction(() => 'petalyard' in globalThis)
    expect(await ask(page)).toMatchObject({ value: { origin: 'blank' } })
    expect(story.context.pages()).toHaveLength(1)
  })

  it('move to the tab that opened them last; the first is told and may only look on', async () => {
    await page.evaluate(() => {
      const heard: string[] = []
      Object.assign(globalThis, { heard })
      window.petalyard.onMovedElsewhere(() => heard.push('moved'))
    })
    const second = await story.context.newPage()
    await second.goto(page.url())
    await second.waitForFunction(() => 'petalyard' in globalThis)
    await eventually(async () => expect(await page.evaluate('heard')).toEqual(['moved']))
    const refused = await page.evaluate(
      (text) => window.petalyard.keepProject({ revision: 1, text }),
      projectText('From the first'),
    )
    expect(refused).toMatchObject({ problem: { code: 'app/open-elsewhere' } })
    expect(await ask(second)).toMatchObject({ outcome: 'done' })
  })

  it('hand over their last change when the tab is closed', async () => {
    await page.evaluate((text) => {
      window.petalyard.onBeforeClose(async () => {
        await window.petalyard.keepProject({ revision: 1, text })
      })
    }, projectText('At the last moment'))
    await page.close({ runBeforeUnload: true })
    const kept = join(story.folder, 'projects', 'kept')
    await eventually(async () => {
      const [name] = await readdir(kept)
      expect(JSON.parse(await readFile(join(kept, name ?? ''), 'utf8'))).toMatchObject({
        title: 'At the last moment',
      })
    })
  })

  it('are all saved when the server is stopped with Ctrl+C', async () => {
    await page.evaluate((text) => window.petalyard.saveProject({ revision: 1, text }), projectText('Throw'))
    await page.evaluate((text) => window.petalyard.keepProject({ revision: 2, text }), projectText('Throw 2'))
    await story.loopback.stop()
    const path = join(story.folder, 'saved', 'Throw.petalyard')
    expect(titleOf(await readFile(path, 'utf8'))).toBe('Throw 2')
    expect(await readdir(join(story.folder, 'projects', 'running'))).toEqual([])
  })
})

describe('paper in a browser', () => {
  it('is exported with progress and downloaded; previews are pages', async () => {
    const opened = await ask(page)
    const text = opened.outcome === 'done' ? opened.value.text : ''
    const downloaded = page.waitForEvent('download')
    const made = await page.evaluate(async (project) => {
      const told: number[] = []
      const job = window.petalyard.exportProject({ kind: 'map', text: project }, (each) =>
        told.push(each.done),
      )
      return { ended: await job.finished, told }
    }, text)
    expect(made.ended).toMatchObject({ outcome: 'done' })
    expect(made.told.at(-1)).toBe(100)
    const path = await (await downloaded).path()
    expect((await readFile(path)).subarray(0, 5).toString()).toBe('%PDF-')
    const preview = await page.evaluate(
      (project) => window.petalyard.previewPage({ text: project, page: 1 }),
      text,
    )
    expect(preview).toMatchObject({ outcome: 'done', value: { page: 1 } })
  })
})
