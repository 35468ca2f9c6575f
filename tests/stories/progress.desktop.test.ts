import { mkdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Project } from '../../shared-types/project'
import { eventually } from '../src-main/documents/session/world'
import { makeFolder, startDesktop } from './desktop'
import type { Desktop } from './desktop'
import { Hands } from './hands'

let desktop: Desktop
let folder: Awaited<ReturnType<typeof makeFolder>>
let path: string

beforeAll(async () => {
  folder = await makeFolder()
  path = join(folder.path, 'throw.petalyard')
  await mkdir(join(folder.path, 'data'))
  await writeFile(path, await readFile('examples/hedgerow-baby-throw.petalyard'))
  desktop = await startDesktop(join(folder.path, 'data'), [path])
})
afterAll(async () => {
  await desktop?.close()
  await folder?.forget()
})

const saved = async (): Promise<Project> => JSON.parse(await readFile(path, 'utf8')) as Project

describe('a blanket that is being made', () => {
  it('has fifty marked by keyboard, is measured and weighed again, saved and opened again', async () => {
    const page = desktop.window
    const hands = new Hands(page)
    const map = page.getByRole('application', { name: 'Map of 173 motifs' })
    await map.focus()
    await page.keyboard.press('ArrowRight')
    for (let i = 1; i < 50; i++) await page.keyboard.press('.')
    await page.keyboard.press('3')
    await hands.go('Progress')
    await page.getByText('50 of 173 motifs made, 50 joined.', { exact: true }).waitFor()

    await hands.go('Motif')
    await hands.fill('Tip to tip, across', '76 mm')
    await hands.go('Progress')
    await page.getByText(/^New measurements: size 82\.7 × 90\.9 cm → /).waitFor()
    await hands.fill('Hawthorn leaf: left now', '140 g')
    const lasts = /^At this rate Hawthorn leaf lasts to motif \d+ of 173/
    await page.getByRole('status').filter({ hasText: lasts }).waitFor()

    // Fewer rows than are made are asked about first.
    await hands.go('Arrangement')
    await hands.fill('Rows', '3')
    const question = page.getByRole('dialog', { name: 'Made motifs' })
    await question.waitFor()
    await question.getByRole('button', { name: 'Keep as it was' }).click()
    await page.keyboard.press('Control+s')
    await eventually(async () => {
      const project = await saved()
      expect(Object.keys(project.made ?? {})).toHaveLength(50)
      expect(project.motifs?.[0]).toMatchObject({ overTips: 76 })
      expect(project.layout).toMatchObject({ rows: 15 })
      expect(project.yarns?.find(({ id }) => id === 'sage')).toMatchObject({ left: { grams: 140, at: 50 } })
    })

    await desktop.close()
    desktop = await startDesktop(join(folder.path, 'data'), [path])
    await new Hands(desktop.window).go('Progress')
    await desktop.window.getByText('50 of 173 motifs made, 50 joined.', { exact: true }).waitFor()
  })
})
