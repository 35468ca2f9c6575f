import { readdir, readFile, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { eventually } from '../src-main/documents/session/world'
import { makeFolder, startDesktop } from './desktop'
import type { Desktop } from './desktop'
import { sentenceSays } from './hands'
import type { Export } from './seller'
import { keptProject, makeGarland, makeKit, printKit } from './seller'

let desktop: Desktop
let folder: Awaited<ReturnType<typeof makeFolder>>

beforeAll(async () => {
  folder = await makeFolder()
  desktop = await startDesktop(folder.path)
})
afterAll(async () => {
  await desktop?.close()
  await folder?.forget()
})

/** Saves under the name that the dialog proposes, in the story's own folder. */
async function answerDialogs(): Promise<void> {
  await desktop.app.evaluate(({ dialog }, place) => {
    const save = (...asked: unknown[]) => {
      const options = asked.at(-1) as { defaultPath?: string }
      const name = (options.defaultPath ?? 'export').split(/[\\/]/).at(-1)!
      return Promise.resolve({ canceled: false, filePath: `${place}/${name}` })
    }
    dialog.showSaveDialog = save as unknown as typeof dialog.showSaveDialog
  }, folder.path)
}

const names: string[] = []
/** Takes the file that an export leaves in the story's folder, and tidies it away. */
const exported: Export = async (press) => {
  await press()
  let name = ''
  await eventually(async () => {
    name = (await readdir(folder.path)).find((entry) => /\.(pdf|csv)$/.test(entry)) ?? ''
    expect(name).not.toBe('')
  })
  names.push(name)
  const path = join(folder.path, name)
  const bytes = new Uint8Array(await readFile(path))
  await rm(path)
  // The next one starts when this one has been told.
  await desktop.window.getByText(`Exported: ${name}`).first().waitFor()
  return bytes
}

describe('a seller of garland kits', () => {
  it('makes a garland of the own flower, a leaf and beads, in swags', () => makeGarland(desktop.window))

  it('sells it as a kit, with a price', () => makeKit(desktop.window))

  it('prints card, packing list and labels, and takes the lists along', async () => {
    await answerDialogs()
    await printKit(desktop.window, exported)
    for (const end of [
      'kit card.pdf',
      'packing list.pdf',
      'labels.pdf',
      'purchases.csv',
      'along the cord.csv',
    ])
      expect(
        names.some((name) => name.endsWith(end)),
        end,
      ).toBe(true)
  })

  it('takes everything back by name, and does it again', async () => {
    const page = desktop.window
    const before = await keptProject(page)
    const told: string[] = []
    for (;;) {
      const undo = page.getByRole('button', { name: /^Undo: / })
      if ((await undo.count()) === 0) break
      told.push((await undo.getAttribute('aria-label')) ?? '')
      await undo.click()
    }
    expect(told.filter((name) => name.startsWith('Undo: start'))).toEqual([])
    for (const name of [
      'sell it as a kit',
      'add Leaf',
      'add wooden bead',
      'change the drop',
      'change the margin',
    ])
      expect(told).toContain(`Undo: ${name}`)
    for (;;) {
      const redo = page.getByRole('button', { name: /^Redo: / })
      if ((await redo.count()) === 0) break
      await redo.click()
    }
    await eventually(async () => expect(await keptProject(page)).toEqual(before))
  })

  it('nudges the sentence with its keys, and edits it in place', async () => {
    const page = desktop.window
    const kits = page.getByRole('button', { name: /^25 kits at .*: change the kit$/ })
    await kits.focus()
    await page.keyboard.press('ArrowUp')
    await page.getByRole('region', { name: 'Ledger' }).getByText(/^\+€/).first().waitFor()
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'Undo: change the number of kits' }).waitFor()
    await sentenceSays(page, 'sold as 26 kits')
    await page.getByRole('button', { name: /apart: change the spacing$/ }).click()
    const dialog = page.getByRole('dialog', { name: 'Change the spacing' })
    await dialog.getByRole('textbox', { name: 'Distance' }).fill('30 mm')
    await page.keyboard.press('Enter')
    await page.keyboard.press('Escape')
    await sentenceSays(page, '30 mm apart')
  })
})
