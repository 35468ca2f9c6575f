/** A medallion among small squares, and a filler for each kind of opening: by mouse, then by keyboard. */
import { copyFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Motif, Project } from '../../shared-types/project'
import { cellsProject } from '../src-core/cells/projects'
import { eventually } from '../src-main/documents/session/world'
import { makeFolder, projectRoot, startDesktop } from './desktop'
import type { Desktop } from './desktop'
import { Hands, Keys, sentenceSays } from './hands'
import { keptBlanket } from './kept-layout'

/** 7 × 7 squares of 60 mm, and a square of 180 mm that no place has yet. */
function squares(): Project {
  const project = cellsProject(['square'], { columns: 7, rows: 7 })
  const medallion = {
    ...{ id: 'medallion', name: 'Medallion', kind: 'measured', outline: 'square', sideToSide: 180 },
    slots: [{ slot: 'all', grams: 30 }],
  } as Motif
  return { ...project, motifs: [...project.motifs!, medallion] }
}

let desktop: Desktop
let folder: Awaited<ReturnType<typeof makeFolder>>

const layout = () => keptBlanket(desktop.window)
const putIn = async () => {
  const { motifs, large } = (await layout()).cells ?? {}
  return { motifs, large }
}

describe('a medallion', () => {
  beforeAll(async () => {
    folder = await makeFolder()
    const path = join(folder.path, 'squares.petalyard')
    await writeFile(path, JSON.stringify(squares()))
    desktop = await startDesktop(folder.path, [path])
  })
  afterAll(async () => {
    await desktop?.close()
    await folder?.forget()
  })

  /** Takes row 3, motif 3 in the hand and selects the block of nine from there. */
  async function selectBlock(keys: Keys): Promise<void> {
    await desktop.window.getByRole('application').focus()
    // From wherever the arrows begin to the upper left corner, and from there two on and two down.
    await keys.press('ArrowRight')
    for (const key of ['ArrowLeft', 'ArrowUp']) for (let i = 0; i < 7; i++) await keys.press(key)
    for (const key of ['ArrowRight', 'ArrowRight', 'ArrowDown', 'ArrowDown']) await keys.press(key)
    for (const key of ['ArrowRight', 'ArrowRight', 'ArrowDown', 'ArrowLeft', 'ArrowLeft', 'ArrowDown'])
      await keys.press(`Shift+${key}`)
    for (const key of ['ArrowRight', 'ArrowRight']) await keys.press(`Shift+${key}`)
  }

  it('takes the place of nine squares: chosen beside the map, and given back', async () => {
    const page = desktop.window
    await sentenceSays(page, /^49 squares of 60 mm/)
    await selectBlock(new Keys(page))
    await page.getByRole('combobox', { name: 'One large motif here' }).selectOption('Medallion')
    // 49 − 9 + 1 motifs; 64 crossings less the 4 corners and 4 within it.
    await sentenceSays(page, /^41 motifs \(40 squares of 60 mm and 1 square of 180 mm\)/)
    await eventually(async () =>
      expect(await putIn()).toEqual({ motifs: { '4,4': 'medallion' }, large: { '4,4': 3 } }),
    )
    await page.getByText('56 join points').first().waitFor()
    const hands = new Hands(page)
    await hands.press('Small motifs here again')
    await sentenceSays(page, /^49 squares of 60 mm/)
    await eventually(async () => expect(await putIn()).toEqual({ motifs: undefined, large: undefined }))
  })

  it('by keyboard: the same, and Undo has its name', async () => {
    const page = desktop.window
    const keys = new Keys(page)
    await selectBlock(keys)
    await page.getByRole('combobox', { name: 'One large motif here' }).focus()
    await page.keyboard.type('Med')
    await eventually(async () => expect((await putIn()).large).toEqual({ '4,4': 3 }))
    await keys.reach('Undo: put one Medallion in the place of 9 motifs', true)
    await keys.press('Enter')
    await sentenceSays(page, /^49 squares of 60 mm/)
  })
})

describe('two kinds of openings', () => {
  beforeAll(async () => {
    folder = await makeFolder()
    const path = join(folder.path, 'cobbles.petalyard')
    await copyFile(join(projectRoot, 'tests', 'fixtures', 'cobbles.petalyard'), path)
    desktop = await startDesktop(folder.path, [path])
  })
  afterAll(async () => {
    await desktop?.close()
    await folder?.forget()
  })

  it('each has a filler of its own: one kind is left open, and filled again', async () => {
    const page = desktop.window
    const hands = new Hands(page)
    await sentenceSays(page, /56 fillers/)
    await hands.go('Arrangement')
    await page.locator('summary', { hasText: 'Gaps and sides' }).click()
    const kinds = page.getByRole('list', { name: 'Openings by kind' })
    await kinds.getByText('12 openings').waitFor()
    await kinds.getByText('32 openings').waitFor()
    const long = kinds.getByRole('combobox', { name: /^Filler / }).first()
    await long.selectOption('none')
    await sentenceSays(page, /32 fillers/)
    await long.selectOption('Large pebble')
    await sentenceSays(page, /56 fillers/)
    await eventually(async () =>
      expect((await layout()).fillers?.openings?.map(({ motif }) => motif)).toContain('bead'),
    )
  })

  it('by keyboard: the same', async () => {
    const page = desktop.window
    const kinds = page.getByRole('list', { name: 'Openings by kind' })
    const long = kinds.getByRole('combobox', { name: /^Filler / }).first()
    await long.focus()
    await page.keyboard.press('Home')
    await sentenceSays(page, /32 fillers/)
    await long.focus()
    await page.keyboard.type('Large p')
    await sentenceSays(page, /56 fillers/)
  })
})
