/** An edging from written rounds: chosen from pictures, its words changed, taken back; by mouse, then by keyboard. */
import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../shared-types/project'
import { squares } from '../src-core/edging/helpers'
import { eventually } from '../src-main/documents/session/world'
import { makeFolder, startDesktop } from './desktop'
import type { Desktop } from './desktop'
import { Hands, sentenceSays } from './hands'

let desktop: Desktop
let folder: Awaited<ReturnType<typeof makeFolder>>

beforeAll(async () => {
  folder = await makeFolder()
  const path = join(folder.path, 'squares.petalyard')
  await writeFile(path, JSON.stringify(squares(8, 6, { rounds: ['sc'] })))
  desktop = await startDesktop(folder.path, [path])
})
afterAll(async () => {
  await desktop?.close()
  await folder?.forget()
})

const edging = async (): Promise<NonNullable<BlanketLayout['edging']>> => {
  const opened = await desktop.window.evaluate(() => window.petalyard.currentProject())
  if (opened.outcome !== 'done') throw new Error('there is no project')
  const project = JSON.parse(opened.value.text) as Project
  if (project.layout?.kind !== 'blanket' || !project.layout.edging) throw new Error('there is no edging')
  return project.layout.edging
}

describe('a shell border', () => {
  it('is chosen from its picture, counted, changed in words and taken back', async () => {
    const page = desktop.window
    const hands = new Hands(page)
    await sentenceSays(page, /^48 squares of 60 mm/)
    await hands.go('Arrangement')
    await page.locator('summary', { hasText: 'Border' }).click()
    await hands.press('Shell')
    await eventually(async () =>
      expect((await edging()).written?.[0]?.work).toMatch(
        /^ch 1, \*sc in next st, sk 2 sts, 5 dc in next st/,
      ),
    )
    await page.getByText(/repeats.* high\./).waitFor()
    await page.getByText('Comes out even on a multiple of 6 stitches in the whole round.').waitFor()
    const words = page.getByRole('textbox', { name: 'Round 2 in words' })
    await words.fill(
      '*5 dc in next st, sk 2 sts, sc in next st; rep from * around, join with sl st in first dc.',
    )
    await page.getByText('Comes out even on a multiple of 4 stitches in the whole round.').waitFor()
    await hands.press('Undo: change the words of the border')
    await page.getByText('Comes out even on a multiple of 6 stitches in the whole round.').waitFor()
  })

  it('by keyboard: another one in its place', async () => {
    const page = desktop.window
    await page.getByRole('button', { name: 'Picot' }).focus()
    await page.keyboard.press('Enter')
    await page
      .getByText(/picots/)
      .first()
      .waitFor()
    await eventually(async () =>
      expect((await edging()).written?.[0]?.work).toContain('ch 3, sl st in third ch'),
    )
    const shot = process.env['PETALYARD_PICTURES']
    if (shot) await page.screenshot({ path: join(shot, 'edging.png') })
  })
})
