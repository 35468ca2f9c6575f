/** A shawl and a bag from the start: what is laid out is what was asked for. Every number is made up. */
import { fireEvent, screen, waitFor } from '@testing-library/svelte'
import { expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { errorWords } from '../../../src-core/ways/words'
import OwnMotifForm from '../../../src-renderer/start/OwnMotifForm.svelte'
import { inWindow } from '../in-window'

async function begin(
  form: string,
  numbers: Readonly<Record<string, string>>,
  ends: string | null = null,
): Promise<Project> {
  const made: Project[] = []
  await inWindow(
    OwnMotifForm,
    { onmade: (project: Project) => made.push(project), onwrite: () => undefined },
    { format: 'petalyard-project', version: 1 },
  )
  await fireEvent.click(screen.getByRole('radio', { name: form }))
  if (ends) await fireEvent.click(screen.getByRole('radio', { name: new RegExp(`^${ends} `) }))
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

it.each([
  ['a bag is closed at the bottom, whatever is answered', null, 'bottom', ['bottom']],
  ['a cowl is open at both ends', 'cowl', undefined, undefined],
  ['a cushion is closed at both', 'cushion', 'both', ['bottom', 'mouth']],
] as const)(
  '%s; it is joined in the round and as wide around as was typed, to about a motif',
  async (_, ends, closedEnds, closed) => {
    const numbers = { 'Once around': '72 cm', 'Finished height': '30 cm' }
    const project = await begin('bag, cowl, cushion', numbers, ends)
    const layout = project.layout as BlanketLayout
    expect(layout).toMatchObject({ inTheRound: true })
    expect(layout.closedEnds).toBe(closedEnds)
    const plan = planProject(project)
    expect(plan.closed?.map(({ end }) => end)).toEqual(closed)
    expect(errors(project)).toEqual([])
    expect(Math.abs(plan.round!.circumference - 720)).toBeLessThan(60)
    expect(plan.pieces).toBe(1)
  },
)

it('asks for ends only of what is joined in the round', async () => {
  await inWindow(
    OwnMotifForm,
    { onmade: () => undefined, onwrite: () => undefined },
    { format: 'petalyard-project', version: 1 },
  )
  const asked = () => screen.queryByRole('group', { name: 'Its ends' })
  expect(asked()).toBeNull()
  await fireEvent.click(screen.getByRole('radio', { name: 'bag, cowl, cushion' }))
  expect(asked()).not.toBeNull()
  expect((screen.getByRole('radio', { name: /^bag closed/ }) as HTMLInputElement).checked).toBe(true)
  await fireEvent.click(screen.getByRole('radio', { name: 'shawl' }))
  expect(asked()).toBeNull()
})
