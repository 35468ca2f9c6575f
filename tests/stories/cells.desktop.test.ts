import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { eventually } from '../src-main/documents/session/world'
import { cellsProject } from '../src-core/cells/projects'
import { makeFolder, startDesktop } from './desktop'
import type { Desktop } from './desktop'
import { Hands, Keys, sentenceSays } from './hands'
import { keptBlanket } from './kept-layout'

let desktop: Desktop
let folder: Awaited<ReturnType<typeof makeFolder>>

beforeAll(async () => {
  folder = await makeFolder()
  const path = join(folder.path, 'squares.petalyard')
  await writeFile(path, JSON.stringify(cellsProject(['square'], { edging: { rounds: ['sc'] } })))
  desktop = await startDesktop(folder.path, [path])
})
afterAll(async () => {
  await desktop?.close()
  await folder?.forget()
})

const layout = () => keptBlanket(desktop.window)

const undoAll = async (): Promise<void> => {
  const undo = desktop.window.getByRole('button', { name: /^Undo: / })
  while ((await undo.count()) > 0) await undo.click()
}

describe('a bag in the round', () => {
  it('by mouse: the rows are joined at their ends, and the sentence tells how far round it is', async () => {
    const page = desktop.window
    const hands = new Hands(page)
    await sentenceSays(page, /^48 squares of 60 mm/)
    await hands.go('Arrangement')
    await page.locator('summary', { hasText: 'Shawl, bag, second motif' }).click()
    await hands.press('Joined in the round', 'checkbox')
    await sentenceSays(page, /joined in the round: 48 cm around, 24 cm wide laid flat/)
    await eventually(async () => expect((await layout()).inTheRound).toBe(true))
    await hands.press('Undo: join it in the round')
    await sentenceSays(page, /^(?!.*in the round)/)
    await undoAll()
    await hands.press('Close Arrangement')
  })

  it('by keyboard: the same, from the list of places to the sentence, and back', async () => {
    const page = desktop.window
    const keys = new Keys(page)
    await page.getByRole('application').focus()
    await keys.reach('Arrangement', true)
    await keys.press('Enter')
    await keys.reach('Joined in the round')
    await keys.press('Space')
    await sentenceSays(page, /joined in the round: 48 cm around, 24 cm wide laid flat/)
    await eventually(async () => expect((await layout()).inTheRound).toBe(true))
    await keys.reach('Undo: join it in the round', true)
    await keys.press('Enter')
    await sentenceSays(page, /^(?!.*in the round)/)
    await eventually(async () => expect((await layout()).inTheRound).toBeUndefined())
  })
})

describe('a shawl', () => {
  it('by mouse: a triangle is cut out, and a motif left out of it and brought back', async () => {
    const page = desktop.window
    const hands = new Hands(page)
    await page.getByRole('combobox', { name: 'Cut out as' }).selectOption('triangle')
    await hands.fill('Width of the outline', '50 cm')
    await sentenceSays(page, /of different lengths/)
    await eventually(async () =>
      expect((await layout()).outlineShape).toMatchObject({ kind: 'triangle', size: 500 }),
    )
    await hands.press('Close Arrangement')
    await page.getByRole('application').focus()
    await page.keyboard.press('ArrowRight')
    await hands.press('Leave it out')
    await eventually(async () => expect(Object.values((await layout()).cells?.motifs ?? {})).toEqual([null]))
    await hands.go('Arrangement')
    await hands.press('Bring all back')
    await eventually(async () => expect((await layout()).cells?.motifs).toBeUndefined())
    await undoAll()
  })

  it('by keyboard: the same, and Shift + Delete leaves out what is selected', async () => {
    const page = desktop.window
    const keys = new Keys(page)
    await page.getByRole('combobox', { name: 'Cut out as' }).focus()
    await page.keyboard.type('a tri')
    await eventually(async () => expect((await layout()).outlineShape?.kind).toBe('triangle'))
    await keys.reach('Width of the outline')
    await keys.type('50 cm')
    await keys.press('Enter')
    await eventually(async () => expect((await layout()).outlineShape?.size).toBe(500))
    await page.getByRole('application').focus()
    await keys.press('ArrowRight')
    await keys.press('Shift+Delete')
    await eventually(async () => expect(Object.values((await layout()).cells?.motifs ?? {})).toEqual([null]))
    await undoAll()
    await eventually(async () => expect((await layout()).outlineShape).toBeUndefined())
  })
})
