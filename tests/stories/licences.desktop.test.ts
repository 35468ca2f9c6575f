/** Help, "Licences…": what is shipped is listed, in both themes, by keyboard. */
import { existsSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { eventually } from '../src-main/documents/session/world'
import { violationsOf, WCAG } from './access'
import type { Desktop } from './desktop'
import { makeFolder, projectRoot, startDesktop } from './desktop'

let desktop: Desktop
let folder: Awaited<ReturnType<typeof makeFolder>>
beforeAll(async () => {
  folder = await makeFolder()
  desktop = await startDesktop(folder.path)
  // Before it is drawn, the window hears no menu.
  await desktop.window.getByRole('textbox', { name: 'Title' }).waitFor()
})
afterAll(async () => {
  await desktop?.close()
  await folder?.forget()
})

/** As the menu does it. */
const chooseLicences = () =>
  desktop.app.evaluate(({ Menu }) => Menu.getApplicationMenu()?.getMenuItemById('licences')?.click())

describe('the licences', () => {
  it('list every package of which something is behind the window, by its own source maps', async () => {
    const listed = await desktop.window.evaluate(() => window.petalyard.licences())
    if (listed.outcome !== 'done') throw new Error('no list')
    const names = new Set(listed.value.map(({ name }) => name))
    const built = join(projectRoot, 'out', 'main')
    const sources = new Set<string>()
    for (const script of ['desktop.cjs', 'paper.cjs']) {
      const map = JSON.parse(await readFile(join(built, `${script}.map`), 'utf8')) as { sources: string[] }
      for (const source of map.sources) {
        const folderName = /.*node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(source)?.[1]
        if (!folderName) continue
        const path = join(projectRoot, 'node_modules', folderName, 'package.json')
        // A package within a package has a folder of its own there; its name is the same.
        const { name } = existsSync(path)
          ? (JSON.parse(await readFile(path, 'utf8')) as { name: string })
          : { name: folderName }
        sources.add(name)
      }
    }
    expect(sources.size).toBeGreaterThan(10)
    expect([...sources].filter((name) => !names.has(name))).toEqual([])
    // What is no script: the letters; what draws; what the window is made with.
    for (const name of ['@expo-google-fonts/source-sans-3', '@resvg/resvg-wasm', 'konva', 'svelte'])
      expect([...names]).toContain(name)
    for (const { name, text } of listed.value) expect([name, text.length > 200]).toEqual([name, true])
  })

  it('are searched and read by keyboard, and can be seen in both themes', async () => {
    const page = desktop.window
    await chooseLicences()
    const dialog = page.getByRole('dialog', { name: 'Licenses' })
    await dialog.getByText(/^(\d+) of \1 packages$/).waitFor()
    await dialog.getByRole('searchbox').focus()
    await page.keyboard.type('konva')
    await dialog.getByText(/^1 of \d+ packages$/).waitFor()
    await page.keyboard.press('Tab')
    await page.keyboard.press('Enter')
    await eventually(async () =>
      expect(await dialog.getByText('Permission is hereby granted').isVisible()).toBe(true),
    )
    for (const theme of ['light', 'dark'] as const) {
      await page.evaluate((each) => window.petalyard.changeSettings({ theme: each }), theme)
      await eventually(async () =>
        expect(await page.evaluate(() => document.documentElement.dataset.theme)).toBe(theme),
      )
      expect(await violationsOf(page, WCAG)).toEqual([])
    }
    await page.keyboard.press('Escape')
    await dialog.waitFor({ state: 'hidden' })
  })

  it('of Electron and Chromium are shown by the system', async () => {
    await desktop.app.evaluate(({ shell }) => {
      shell.openPath = async (path) => {
        Object.assign(globalThis, { shownPath: path })
        return ''
      }
    })
    await chooseLicences()
    await desktop.window.getByRole('button', { name: 'Licenses of Electron and Chromium…' }).click()
    const shown = await eventually(async () => {
      const path = await desktop.app.evaluate(() => (globalThis as { shownPath?: string }).shownPath)
      expect(path).toBeTruthy()
      return path!
    })
    expect(basename(shown)).toBe('LICENSES.chromium.html')
    expect(await readFile(shown, 'utf8')).toContain('Chromium')
  })
})
