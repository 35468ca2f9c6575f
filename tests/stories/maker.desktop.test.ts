import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Project } from '../../shared-types/project'
import { eventually } from '../src-main/documents/session/world'
import { answerSave, makeFolder, startDesktop } from './desktop'
import type { Desktop } from './desktop'
import { Hands, sentence, sentenceSays } from './hands'

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

const kept = async (): Promise<Project> => {
  const opened = await desktop.window.evaluate(() => window.petalyard.currentProject())
  if (opened.outcome !== 'done') throw new Error('there is no project')
  return JSON.parse(opened.value.text) as Project
}

describe('a maker with one finished flower', () => {
  it('gets from the first start to an exported map in under 25 actions', async () => {
    const page = desktop.window
    const hands = new Hands(page)
    const path = join(folder.path, 'map.pdf')
    await answerSave(desktop, path)

    await hands.press('Start from your own motif')
    await hands.fill('Petals', '8')
    await hands.fill('Tip to tip, across', '95 mm')
    await hands.fill('Dip to dip, across', '6.6 cm + 4 mm')
    await hands.fill('Finished width', '120 cm')
    await hands.fill('Finished length', '160 cm')
    await hands.press('Start with this motif')
    await sentenceSays(page, /^\d+ eight-petal flowers of /)

    await hands.go('Motif')
    await hands.fill('Together they weigh', '43 g')
    await hands.go('Colors')
    await hands.press('Add a colorway')
    await hands.press(/^No two alike touching/, 'radio')
    await hands.go('Yarn')
    await hands.fill('Petal yarn on hand, by weight', '100 g')
    await hands.go('Paper')
    await page.getByRole('img', { name: /^Page 1 of \d+/ }).waitFor()
    await hands.press('Export the map as PDF')
    await page
      .getByText(/^Exported: map\.pdf/)
      .first()
      .waitFor()

    expect(hands.actions).toBeLessThan(25)
    expect((await readFile(path)).subarray(0, 5).toString()).toBe('%PDF-')
    const project = await kept()
    expect(project.motifs?.[0]).toMatchObject({ petals: 8, overTips: 95, overValleys: 70 })
    expect(project.layout).toMatchObject({ target: { width: 1200, height: 1600 } })
  })

  it('takes everything back, step by step and by name, and does it again', async () => {
    const page = desktop.window
    const before = await kept()
    const names: string[] = []
    for (;;) {
      const undo = page.getByRole('button', { name: /^Undo: / })
      if ((await undo.count()) === 0) break
      names.push((await undo.getAttribute('aria-label')) ?? '')
      await undo.click()
    }
    // The first step that is taken back is one in the own project: nothing leads into what was open before.
    expect(names.filter((name) => name.startsWith('Undo: start'))).toEqual([])
    await eventually(async () => expect((await kept()).motifs?.[0]).toMatchObject({ petals: 8 }))
    expect(names).toContain('Undo: change the weight')
    expect(names).toContain('Undo: change the pattern')
    for (;;) {
      const redo = page.getByRole('button', { name: /^Redo: / })
      if ((await redo.count()) === 0) break
      await redo.click()
    }
    await eventually(async () => expect(await kept()).toEqual(before))
  })

  it('drags nothing and still sees what would follow: the sentence is nudged by its keys', async () => {
    const page = desktop.window
    const rows = page.getByRole('button', { name: /change the motifs in a row$/ })
    const sizeIn = (words: string) => words.slice(words.lastIndexOf(':'))
    const size = sizeIn(await sentence(page))
    await rows.focus()
    await page.keyboard.press('ArrowUp')
    const ledger = page.getByRole('region', { name: 'Ledger' })
    await ledger
      .getByText(/^\+\d+$/)
      .first()
      .waitFor()
    // The numbers come first, the size in the sentence with the plan.
    await eventually(async () => expect(sizeIn(await sentence(page))).not.toBe(size))
    const tried = await sentence(page)
    await page.keyboard.press('Escape')
    await eventually(async () => expect(await sentence(page)).not.toBe(tried))
    await page.keyboard.press('ArrowUp')
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'Undo: change the number of motifs' }).waitFor()
    await eventually(async () => expect(await sentence(page)).toBe(tried))
  })

  it('takes back with the key what was done last, not what was typed in another field before', async () => {
    const page = desktop.window
    const hands = new Hands(page)
    await hands.go('Motif')
    await hands.fill('One takes', '14 min')
    await hands.press('Add a color')
    const undo = page.getByRole('button', { name: /^Undo: / })
    const label = () => undo.getAttribute('aria-label')
    await eventually(async () => expect(await label()).toBe('Undo: add a color'))
    // As a hand presses it: through the window, past the menu.
    await desktop.app.evaluate(({ BrowserWindow }) => {
      const contents = BrowserWindow.getAllWindows()[0]!.webContents
      contents.sendInputEvent({ type: 'keyDown', keyCode: 'Z', modifiers: ['control'] })
      contents.sendInputEvent({ type: 'keyUp', keyCode: 'Z', modifiers: ['control'] })
    })
    await eventually(async () => expect(await label()).toBe('Undo: change the minutes for a motif'))
    await eventually(async () => {
      const [motif] = (await kept()).motifs ?? []
      expect(motif).toMatchObject({ minutes: 14, slots: [{ slot: 'center' }, { slot: 'petals' }] })
    })
  })
})
