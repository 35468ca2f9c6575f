/** Somebody else listens where Petalyard did, while tabs are still open. */
import { createServer } from 'node:http'
import type { RequestListener } from 'node:http'
import type { Page } from 'playwright-core'
import { beforeEach, describe, expect, it } from 'vitest'
import { answering, asking, readKey, seal, unseal } from '../../src-main/browser/sealed'
import { eventually, projectText } from '../src-main/documents/session/world'
import { browserAnew } from './anew'
import type { Loopback } from './browser'
import { startLoopback } from './browser'
import { Hands } from './hands'

const story = browserAnew()
let loopback: Loopback
let page: Page
beforeEach(async () => {
  story.loopback = loopback = await startLoopback(story.folder.path)
  page = await story.context.newPage()
  await page.goto(await loopback.nextAddress())
  await page.getByRole('application').waitFor()
})

const ask = (target: Page) => target.evaluate(() => window.petalyard.currentProject())

/** Ends Petalyard, and listens in its place; answers with what closes that. */
async function replacePetalyard(answer: RequestListener): Promise<() => Promise<void>> {
  await loopback.kill()
  await page.getByText('not kept: Petalyard does not answer').waitFor()
  const other = createServer(answer)
  const { port } = new URL(page.url())
  await new Promise<void>((resolve) => other.listen(Number(port), '127.0.0.1', resolve))
  return async () => {
    other.closeAllConnections()
    await new Promise((resolve) => other.close(resolve))
  }
}

describe('open tabs', () => {
  it('believe nothing of a page that a tab got from whoever listens in its place', async () => {
    await page.evaluate((text) => window.petalyard.keepProject({ revision: 1, text }), projectText('Secret'))
    // One tab that the first one opened, and one whose address somebody typed.
    const opening = story.context.waitForEvent('page')
    await page.evaluate(() => void window.petalyard.newProject({ from: 'blank' }))
    const opened = await opening
    const typed = await story.context.newPage()
    const others = [opened, typed]
    await typed.goto(new URL('/', page.url()).href)
    for (const tab of others) {
      await tab.getByRole('textbox', { name: 'Title' }).waitFor()
      expect(await ask(tab)).toMatchObject({ outcome: 'done' })
    }

    const stolen: string[] = []
    const read: string[] = []
    let tries = 0
    const close = await replacePetalyard((request, response) => {
      if (request.method === 'GET' && request.url !== '/thief.js')
        return void response
          .writeHead(200, { 'Content-Type': 'text/html', 'Cross-Origin-Opener-Policy': 'same-origin' })
          .end('<!doctype html><title>Stranger</title><script src="/thief.js"></script>')
      if (request.method === 'GET') return void response.end()
      const chunks: Buffer[] = []
      request.on('data', (data: Buffer) => chunks.push(data))
      request.on('end', () => {
        tries++
        const question = String(request.headers['x-petalyard-key']).split('.')[1]!
        const keys = stolen.map((text) => readKey(text)!)
        for (const key of keys)
          read.push(unseal(key, asking(request.url!, question), Buffer.concat(chunks)) ?? '')
        const lie = { status: 200, body: { outcome: { outcome: 'done', value: 'lie' } } }
        // As whichever key it has.
        const key = keys[tries % keys.length]
        response.end(key && seal(key, answering(question), JSON.stringify(lie)))
      })
    })
    for (const tab of others) {
      await tab.reload()
      expect(await tab.title()).toBe('Stranger')
      expect(await tab.evaluate(() => window.opener === null)).toBe(true)
      const found = await tab.evaluate(() => [
        ...Object.values(localStorage),
        ...Object.values(sessionStorage),
      ])
      stolen.push(...found.filter((text): text is string => readKey(String(text)) !== null))
      // Nor does the worker that all tabs share give out another.
      const given = await tab.evaluate(
        () =>
          new Promise<unknown>((resolve) => {
            const { port: hub } = new SharedWorker('/stream.js')
            hub.onmessage = ({ data }) => resolve(data)
            hub.postMessage('key')
          }),
      )
      expect(given).toEqual({ kind: 'key', key: null })
    }
    // Each tab has a key of its own, which was of use to itself alone.
    expect(new Set(stolen).size).toBe(2)
    const handOver = () =>
      page.evaluate(
        (text) => window.petalyard.keepProject({ revision: 2, text }),
        projectText('For nobody else'),
      )
    const before = tries
    for (let time = 0; time < 4; time++)
      expect(await handOver()).toMatchObject({ problem: { code: 'app/host-gone' } })
    expect(tries).toBeGreaterThanOrEqual(before + 4)
    expect(read.filter((text) => text !== '')).toEqual([])
    await close()
  })

  it('start no worker from the script of whoever listens in its place', async () => {
    const asked: string[] = []
    const close = await replacePetalyard((request, response) => {
      asked.push(request.url!)
      response.writeHead(404).end()
    })
    // The finder of motifs in photos is begun with the first picture.
    const hands = new Hands(page)
    await hands.press('Start from your own motif')
    await hands.press('Measure it in a photo')
    const dialog = page.getByRole('dialog', { name: 'Measure a photo' })
    const started = page.waitForEvent('worker')
    const buffer = Buffer.from('ffd8ffe000104a46494600010100000100010000', 'hex')
    await dialog
      .locator('input[type=file]')
      .setInputFiles({ name: 'cut.jpg', mimeType: 'image/jpeg', buffer })
    expect((await started).url()).toMatch(/^blob:/)
    // It works.
    await dialog.getByText('cut.jpg is damaged or cut off.').waitFor()
    await eventually(() => expect(asked.length).toBeGreaterThan(0))
    expect(asked.filter((url) => url.endsWith('.js'))).toEqual([])
    await close()
  })

  it('say what to do where one was opened without a key and no other has one', async () => {
    const address = page.url()
    const last = await story.context.newPage()
    await page.close()
    await last.goto(address)
    await last.getByText('This tab has no key.').waitFor()
    loopback.child.stdin?.write('\n')
    await last.goto(await loopback.nextAddress())
    await last.waitForFunction(() => 'petalyard' in globalThis)
    expect(await ask(last)).toMatchObject({ outcome: 'done' })
  })
})
