import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { CONTENT_SECURITY_POLICY } from '../../src-main/host/static-files'
import { eventually } from '../src-main/documents/session/world'
import type { Desktop } from './desktop'
import { makeFolder, startDesktop } from './desktop'

let desktop: Desktop
let folder: Awaited<ReturnType<typeof makeFolder>>
let page: Page

beforeAll(async () => {
  folder = await makeFolder()
  desktop = await startDesktop(folder.path)
  page = desktop.window
})
afterAll(async () => {
  await desktop?.close()
  await folder?.forget()
})

describe('the page is locked in', () => {
  it('has nothing of Node or Electron', async () => {
    const found = await page.evaluate(() =>
      ['require', 'process', 'module', 'Buffer', 'global', '__dirname', 'electron', 'ipcRenderer'].filter(
        (name) => name in globalThis,
      ),
    )
    expect(found).toEqual([])
    const preferences = await desktop.app.evaluate(({ BrowserWindow }) => {
      const contents = BrowserWindow.getAllWindows()[0]?.webContents as unknown as {
        getLastWebPreferences(): Record<string, unknown>
      }
      return contents.getLastWebPreferences()
    })
    expect(preferences).toMatchObject({ contextIsolation: true, nodeIntegration: false, sandbox: true })
  })

  it('has a bridge of plain functions that it cannot change', async () => {
    const kinds = await page.evaluate(() => Object.values(window.petalyard).map((each) => typeof each))
    expect(new Set(kinds)).toEqual(new Set(['function']))
    const changed = await page.evaluate(() => {
      const before = window.petalyard.keepProject
      try {
        Object.assign(window.petalyard, { keepProject: null })
      } catch {
        // Frozen: strict code throws.
      }
      return window.petalyard.keepProject !== before
    })
    expect(changed).toBe(false)
  })

  it('comes with the content security policy, and no code in the page runs', async () => {
    const policy = await page.evaluate(async () =>
      (await fetch('app://petalyard/index.html')).headers.get('content-security-policy'),
    )
    expect(policy).toBe(CONTENT_SECURITY_POLICY)
    const ran = await page.evaluate(async () => {
      const script = document.createElement('script')
      script.textContent = 'globalThis.injected = true'
      document.head.append(script)
      const frame = document.createElement('iframe')
      frame.src = 'data:text/html,x'
      document.body.append(frame)
      await new Promise((resolve) => setTimeout(resolve, 50))
      script.remove()
      frame.remove()
      return 'injected' in globalThis
    })
    expect(ran).toBe(false)
  })

  it('goes nowhere and opens nothing', async () => {
    const before = await desktop.app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().length)
    const opened = await page.evaluate(() => globalThis.open('https://example.org/') !== null)
    expect(opened).toBe(false)
    await page.evaluate(() => {
      location.href = 'https://example.org/'
    })
    await page.evaluate(() => {
      const link = document.createElement('a')
      link.href = 'file:///etc/passwd'
      link.target = '_blank'
      document.body.append(link)
      link.click()
      link.remove()
    })
    await new Promise((resolve) => setTimeout(resolve, 200))
    expect(page.url()).toBe('app://petalyard/index.html')
    const after = await desktop.app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().length)
    expect(after).toBe(before)
  })

  it('is left for no other page, not even one of its own files', async () => {
    await page.evaluate(() => Object.assign(window, { isSamePage: true }))
    for (const url of [
      'data:text/html,elsewhere',
      'app://petalyard/elsewhere.html',
      'app://petalyard/index.html?elsewhere',
      'app://other/index.html',
      'chrome://version',
    ]) {
      await page.evaluate((to) => void (location.href = to), url)
      await new Promise((resolve) => setTimeout(resolve, 150))
      expect(page.url(), url).toBe('app://petalyard/index.html')
      expect(await page.evaluate(() => 'isSamePage' in window), url).toBe(true)
    }
  })

  it('comes back with its project from the empty page, for which Chromium asks nobody', async () => {
    await page.evaluate(() => void (location.href = 'about:blank'))
    await eventually(async () => expect(await page.evaluate(() => 'isSamePage' in window)).toBe(false))
    await page.waitForURL('app://petalyard/index.html')
    await page.getByRole('application').waitFor()
    expect(await page.evaluate(() => window.petalyard.currentProject())).toMatchObject({ outcome: 'done' })
  })

  it('reaches no network and no file', async () => {
    for (const url of [
      'https://example.org/',
      'http://127.0.0.1:9/',
      'file:///etc/passwd',
      'app://other/x.js',
    ]) {
      const reached = await page.evaluate(
        (each) =>
          fetch(each).then(
            (answered) => answered.ok,
            () => false,
          ),
        url,
      )
      expect(reached, url).toBe(false)
    }
  })

  it('gets its own files alone: no path leads out', async () => {
    for (const path of [
      '..%2fmain%2fdesktop.cjs',
      '%2e%2e%2fmain/desktop.cjs',
      '..%5cmain%5cdesktop.cjs',
      '..%2f..%2fpackage.json',
    ])
      expect(
        await page.evaluate(async (each) => (await fetch(`app://petalyard/${each}`)).status, path),
        path,
      ).toBe(404)
    expect(await page.evaluate(async () => (await fetch('app://petalyard/index.html')).status)).toBe(200)
  })

  it('gets no permission', async () => {
    const states = await page.evaluate(async () => {
      const names = ['geolocation', 'notifications', 'camera', 'microphone'] as unknown as PermissionName[]
      return Promise.all(names.map(async (name) => (await navigator.permissions.query({ name })).state))
    })
    expect(new Set(states)).toEqual(new Set(['denied']))
  })
})

describe('bad messages', () => {
  it.each([
    ['a wrong type', { revision: 'one', text: '{}' }],
    ['an unknown field', { revision: 1, text: '{}', path: '/tmp/x' }],
    ['nothing', null],
    ['a huge text', { revision: 1, text: 'x'.repeat(16_000_001) }],
    ['no project', { revision: 1, text: '{"format":"other"}' }],
  ])('with %s are refused', async (_, change) => {
    const answered = await page.evaluate(
      (each) => window.petalyard.keepProject(each as unknown as { revision: number; text: string }),
      change,
    )
    expect(answered.outcome).toBe('refused')
    const opened = await page.evaluate(() => window.petalyard.currentProject())
    expect(opened).toMatchObject({ value: { nextRevision: 1 } })
  })

  it('from a frame inside the page, or from a page of another address, are not listened to', async () => {
    // Plays both in the main process, where the frame of a message is looked at.
    const answers = await desktop.app.evaluate(async ({ ipcMain }) => {
      const handlers = (
        ipcMain as unknown as { _invokeHandlers: Map<string, (...words: unknown[]) => unknown> }
      )._invokeHandlers
      const handler = handlers.get('ask/currentProject')
      const main = { url: 'app://petalyard/index.html', parent: null }
      const frames = [{ ...main, parent: main }, { ...main, url: 'https://example.org/' }, null]
      const tries = frames.map(async (senderFrame) => {
        // Electron 25 hands the answer to `_reply`; later ones return it.
        let answered: unknown = null
        const event = {
          senderFrame,
          sender: null,
          _reply: (value: unknown) => (answered = value),
          _throw: (error: unknown) => (answered = String(error)),
        }
        try {
          answered = (await handler?.(event, null)) ?? answered
        } catch (error) {
          answered = String(error)
        }
        return answered
      })
      return { hasHandler: handler !== undefined, answered: await Promise.all(tries) }
    })
    expect(answers.hasHandler).toBe(true)
    for (const answered of answers.answered) expect(String(answered)).toContain('only the main frame')
  })
})
