/** A shawl and a bag from the start: what is laid out is what was asked for. Every number is made up. */
import { fireEvent, screen, waitFor } from '@testing-library/svelte'
import { expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { errorWords } from '../../../src-core/ways/words'
import OwnMotifForm from '../../../src-renderer/start/OwnMotifForm.svelte'
import { inWindow } from '../in-window'

async function begin(form: string, numbers: Readonly<Record<string, string>>): Promise<Project> {
  const made: Project[] = []
  await inWindow(
    OwnMotifForm,
    { onmade: (project: Project) => made.push(project), onwrite: () => undefined },
    { format: 'petalyard-project', version: 1 },
  )
  await fireEvent.click(screen.getByRole('radio', { name: form }))
  for (const [name, value] of Object.entries(numbers)) {
    const field = screen.getByRole('textbox', { name })
    await fireEvent.input(field, { target: { value } })
    await fireEvent.change(field, { target: { value } })
  }
  await waitFor(() => expect(screen.getAllByRole('radio', { name: /join points/ }).length).toBeGreaterThan(0))
  await fireEvent.click(screen.getByRole('button', { name: 'Start with this motif' }))
  return made[0]!
}
const errors = (project: Project) =>
  planProject(project).findings.filter(({ severity }) => severity === 'error')

it('a shawl is a triangle as wide and deep as was typed, to about half a motif, and tells the rest', async () => {
  const project = await begin('shawl', { 'Across the top': '140 cm', 'Depth to the point': '70 cm' })
  const layout = project.layout as BlanketLayout
  expect(layout.outlineShape).toMatchObject({ kind: 'triangle', points: 'down' })
  const plan = planProject(project)
  expect(errors(project)).toEqual([])
  expect(Math.abs(plan.size.width - 1400)).toBeLessThan(45)
  expect(Math.abs(plan.size.height - 700)).toBeLessThan(45)
  // Motifs of 80 mm do not make 140 × 70 cm exactly: the card says by how much, and what leads there.
  const card = screen.getAllByRole('radio', { name: /join points/ })[0]!.closest('label')
  expect(card?.textContent).toContain(
    errorWords({ width: plan.size.width - 1400, height: plan.size.height - 700 }, 'metric'),
  )
  expect(card?.textContent).toMatch(/too (wide|narrow|long|short)/)
  expect(screen.getByText(/Find ways/)).toBeTruthy()
  const full = (layout.columns ?? 0) * (layout.rows ?? 0)
  expect(plan.motifs.length).toBeLessThan(full * 0.65)
})

it('a bag is joined in the round and as wide around as was typed, to about a motif', async () => {
  const project = await begin('bag or cowl', { 'Once around': '72 cm', 'Finished height': '30 cm' })
  expect(project.layout).toMatchObject({ inTheRound: true })
  const plan = planProject(project)
  expect(errors(project)).toEqual([])
  expect(Math.abs(plan.round!.circumference - 720)).toBeLessThan(60)
  expect(plan.pieces).toBe(1)
})
