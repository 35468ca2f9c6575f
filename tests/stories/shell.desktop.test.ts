import { mkdir, readFile, rm, writeFile } from 'node:fs/promises'
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { eventually, projectText, titleOf } from '../src-main/documents/session/world'
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

/** Titles of the open windows, as the system shows them. */
const titles = () =>
  desktop.app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().map((each) => each.getTitle()))

/** The next save or open dialogs answer with this path, or are cancelled. */
const dialogsAnswer = (path: string | null) =>
  desktop.app.evaluate(({ dialog }, chosen) => {
    dialog.showSaveDialog = (async () => ({
      canceled: chosen === null,
      filePath: chosen ?? '',
    })) as unknown as typeof dialog.showSaveDialog
    dialog.showOpenDialog = (async () => ({
      canceled: chosen === null,
      filePaths: chosen === null ? [] : [chosen],
    })) as unknown as typeof dialog.showOpenDialog
  }, path)

describe('the first window', () => {
  it('opens with an example and the list of examples', async () => {
    expect(page.url()).toBe('app://petalyard/index.html')
    const opened = await page.evaluate(() => window.petalyard.currentProject())
    expect(opened).toMatchObject({
      outcome: 'done',
      value: { origin: 'example', keeping: { place: 'nowhere' } },
    })
    const listed = await page.evaluate(() => window.petalyard.listExamples())
    expect(listed.outcome === 'done' && listed.value.length).toBeGreaterThanOrEqual(3)
    const facts = await page.evaluate(() => window.petalyard.facts())
    expect(facts).toMatchObject({ value: { host: 'desktop', firstStart: true, hasMenu: true } })
  })

  it('has a menu with the commands, whose clicks reach the window', async () => {
    await page.evaluate(() => {
      const heard: string[] = []
      Object.assign(globalThis, { heard })
      window.petalyard.onCommand((command) => heard.push(command))
    })
    await page.evaluate(() =>
      window.petalyard.showEditState({ undo: 'paint 3 motifs', redo: null, terms: 'US' }),
    )
    await eventually(async () => {
      const label = await desktop.app.evaluate(
        ({ Menu }) => Menu.getApplicationMenu()?.getMenuItemById('undo')?.label,
      )
      expect(label).toBe('Undo paint 3 motifs')
    })
    await desktop.app.evaluate(({ Menu }) => Menu.getApplicationMenu()?.getMenuItemById('undo')?.click())
    await eventually(async () => expect(await page.evaluate('heard')).toEqual(['undo']))
  })
})

describe('documents', () => {
  it('are saved where the user says, tell so in the title, and save themselves afterwards', async () => {
    const path = join(folder.path, 'Harbour throw.petalyard')
    await dialogsAnswer(path)
    const saved = await page.evaluate(
      (text) => window.petalyard.saveProject({ revision: 1, text }),
      projectText('Harbour'),
    )
    expect(saved).toMatchObject({ outcome: 'done', value: { name: 'Harbour throw', place: 'file' } })
    expect(titleOf(await readFile(path, 'utf8'))).toBe('Harbour')
    await eventually(async () => expect((await titles())[0]).toMatch(/^Harbour throw – saved at \d\d:\d\d/))
    await page.evaluate((text) => window.petalyard.keepProject({ revision: 2, text }), projectText('Second'))
    await eventually(async () => expect(titleOf(await readFile(path, 'utf8'))).toBe('Second'))
  })

  it('that somebody else changes are not written over, and the window is told', async () => {
    const path = join(folder.path, 'Harbour throw.petalyard')
    await page.evaluate(() => {
      const states: string[] = []
      Object.assign(globalThis, { states })
      window.petalyard.onKeeping((keeping) => states.push(keeping.disk))
    })
    await writeFile(path, projectText('Theirs'))
    await eventually(async () => expect(await page.evaluate('states')).toContain('changed'))
    const answered = await page.evaluate(
      (text) => window.petalyard.answerDisk({ revision: 3, text, answer: 'take-theirs' }),
      projectText('Mine'),
    )
    expect(answered).toMatchObject({ outcome: 'done', value: { keeping: { disk: 'same' } } })
    expect(titleOf(await readFile(path, 'utf8'))).toBe('Theirs')
  })

  it('open in windows of their own; one that is open comes to the front', async () => {
    const path = join(folder.path, 'Other.petalyard')
    await writeFile(path, projectText('Other'))
    await dialogsAnswer(path)
    const windowOpened = desktop.app.waitForEvent('window')
    await page.evaluate(() => window.petalyard.openProject())
    const other = await windowOpened
    await other.waitForFunction(() => 'petalyard' in globalThis)
    expect(await other.evaluate(() => window.petalyard.currentProject())).toMatchObject({
      value: { origin: 'file', keeping: { name: 'Other' } },
    })
    await page.evaluate(() => window.petalyard.openProject())
    expect(await titles()).toHaveLength(2)
    await other.evaluate(() => void window.petalyard.closeWindow())
    await eventually(async () => expect(await titles()).toHaveLength(1))
  })

  it('are opened by a second start, in the window that is there already', async () => {
    const path = join(folder.path, 'Other.petalyard')
    const windowOpened = desktop.app.waitForEvent('window')
    await desktop.app.evaluate(
      ({ app }, file) => void app.emit('second-instance', {}, ['petalyard', file], '/', null),
      path,
    )
    const other = await windowOpened
    await other.waitForFunction(() => 'petalyard' in globalThis)
    expect(await titles()).toHaveLength(2)
    await other.evaluate(() => void window.petalyard.closeWindow())
    await eventually(async () => expect(await titles()).toHaveLength(1))
  })

  it('hand over their last change when the window closes, without being asked', async () => {
    const windowOpened = desktop.app.waitForEvent('window')
    await page.evaluate(() => window.petalyard.newProject({ from: 'blank' }))
    const other = await windowOpened
    await other.waitForFunction(() => 'petalyard' in globalThis)
    await other.evaluate(
      (text) =>
        window.petalyard.onBeforeClose(async () => {
          await window.petalyard.keepProject({ revision: 1, text })
        }),
      projectText('At the last moment'),
    )
    await desktop.app.evaluate(({ BrowserWindow }) => {
      const all = BrowserWindow.getAllWindows()
      all.find((each) => each.getTitle().startsWith('Untitled'))?.close()
    })
    await eventually(async () => expect(await titles()).toHaveLength(1))
    const listed = await page.evaluate(() => window.petalyard.listRecent())
    expect(listed.outcome === 'done' && listed.value.map((entry) => entry.name)).toContain(
      'At the last moment',
    )
  })
})

describe('paper', () => {
  it('is written where the user says, with progress; a cancelled export writes nothing', async () => {
    const opened = await page.evaluate(async () => {
      const listed = await window.petalyard.listExamples()
      return listed.outcome === 'done' ? listed.value[0]?.name : undefined
    })
    const windowOpened = desktop.app.waitForEvent('window')
    await page.evaluate((name) => window.petalyard.newProject({ from: 'example', name: name ?? '' }), opened)
    const other = await windowOpened
    await other.waitForFunction(() => 'petalyard' in globalThis)
    const path = join(folder.path, 'map.pdf')
    await dialogsAnswer(path)
    const ended = await other.evaluate(async () => {
      const current = await window.petalyard.currentProject()
      const text = current.outcome === 'done' ? current.value.text : ''
      const cancelled = window.petalyard.exportProject({ kind: 'map', text }, () => cancelled.cancel())
      const first = await cancelled.finished
      const told: number[] = []
      const job = window.petalyard.exportProject({ kind: 'map', text }, (each) => told.push(each.done))
      return { first, second: await job.finished, told }
    })
    expect(ended.first).toEqual({ outcome: 'cancelled' })
    expect(ended.second).toMatchObject({
      outcome: 'done',
      value: { where: expect.stringContaining('map.pdf in') },
    })
    expect(ended.told.at(-1)).toBe(100)
    expect((await readFile(path)).subarray(0, 5).toString()).toBe('%PDF-')
    await other.evaluate(() => void window.petalyard.closeWindow())
    await eventually(async () => expect(await titles()).toHaveLength(1))
  })
})

describe('closing when the file cannot be written', () => {
  it('asks, goes back to the project, or closes and keeps everything', async () => {
    const place = join(folder.path, 'stick')
    await mkdir(place)
    await writeFile(join(place, 'On a stick.petalyard'), projectText('On a stick'))
    await dialogsAnswer(join(place, 'On a stick.petalyard'))
    const windowOpened = desktop.app.waitForEvent('window')
    await page.evaluate(() => window.petalyard.openProject())
    const other = await windowOpened
    await other.waitForFunction(() => 'petalyard' in globalThis)
    await rm(place, { recursive: true })
    await other.evaluate((text) => window.petalyard.keepProject({ revision: 1, text }), projectText('Newer'))
    const answerWith = (button: number) =>
      desktop.app.evaluate(({ dialog }, response) => {
        dialog.showMessageBox = (async (_window: unknown, options: { message: string }) => {
          Object.assign(globalThis, { askedWith: options.message })
          return { response, checkboxChecked: false }
        }) as unknown as typeof dialog.showMessageBox
      }, button)
    await answerWith(1)
    await other.evaluate(() => void window.petalyard.closeWindow())
    await eventually(async () =>
      expect(await desktop.app.evaluate(() => (globalThis as { askedWith?: string }).askedWith)).toContain(
        'is no longer where it was',
      ),
    )
    expect(await titles()).toHaveLength(2)
    const saved = await other.evaluate(
      (text) => window.petalyard.keepProject({ revision: 2, text }),
      projectText('Newest'),
    )
    expect(saved.outcome).toBe('done')
    await answerWith(0)
    await other.evaluate(() => void window.petalyard.closeWindow())
    await eventually(async () => expect(await titles()).toHaveLength(1))
    const listed = await page.evaluate(() => window.petalyard.listRecent())
    const entry =
      listed.outcome === 'done'
        ? listed.value.find((each) => each.where.startsWith('On a stick.petalyard'))
        : undefined
    expect(entry).toMatchObject({ interrupted: false })
    const again = desktop.app.waitForEvent('window')
    await page.evaluate((id) => window.petalyard.openRecent({ id }), entry?.id ?? '')
    const reopened = await again
    await reopened.waitForFunction(() => 'petalyard' in globalThis)
    const opened = await reopened.evaluate(() => window.petalyard.currentProject())
    expect(opened).toMatchObject({ outcome: 'done', value: { keeping: { disk: 'missing' } } })
    expect(opened.outcome === 'done' && titleOf(opened.value.text)).toBe('Newest')
    await reopened.evaluate(() => void window.petalyard.closeWindow())
    await eventually(async () => expect(await titles()).toHaveLength(1))
  })
})

describe('the next start', () => {
  it('goes on with the last project, at the same place on the screen', async () => {
    await desktop.app.evaluate(({ BrowserWindow }) =>
      BrowserWindow.getAllWindows()[0]?.setBounds({ x: 60, y: 40, width: 1000, height: 700 }),
    )
    await eventually(() => expect(existsSync(join(folder.path, 'projects', 'window.json'))).toBe(true))
    await new Promise((resolve) => setTimeout(resolve, 600))
    await desktop.close()
    desktop = await startDesktop(folder.path, [join(folder.path, 'Harbour throw.petalyard')])
    page = desktop.window
    const opened = await page.evaluate(() => window.petalyard.currentProject())
    expect(opened).toMatchObject({ value: { origin: 'file', keeping: { name: 'Harbour throw' } } })
    expect(await page.evaluate(() => window.petalyard.facts())).toMatchObject({
      value: { firstStart: false },
    })
    const bounds = await desktop.app.evaluate(({ BrowserWindow }) =>
      BrowserWindow.getAllWindows()[0]?.getNormalBounds(),
    )
    expect(bounds).toMatchObject({ width: 1000, height: 700 })
  })
})
