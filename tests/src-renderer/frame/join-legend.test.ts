/** The legend of the map explains the pin of a fixed colour where there is one, and only there. */
import { screen } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import JoinLegend from '../../../src-renderer/frame/JoinLegend.svelte'
import { samplePlan } from '../../src-core/figures/sample'
import { inWindow } from '../in-window'

const { project } = samplePlan({ columns: 3, rows: 3 })
const legend = (): string => screen.getByRole('list', { name: 'Marks on the map' }).textContent ?? ''

describe('the legend of the map', () => {
  it('explains the pin once a colour is fixed, in the spelling of the project', async () => {
    await inWindow(JoinLegend, {}, project)
    expect(legend()).toContain('motifs meet')
    expect(legend()).not.toContain('fixed')
  })

  it.each([
    ['US', 'color fixed: painted or kept'],
    ['UK', 'colour fixed: painted or kept'],
  ] as const)('says it in %s spelling', async (terms, words) => {
    const { layout, colourways } = project
    const cells = { ...(layout as BlanketLayout).cells, painted: { '1,1': colourways![0]!.id } }
    await inWindow(JoinLegend, {}, { ...project, terms, layout: { ...layout, cells } } as Project)
    expect(legend()).toContain(words)
  })
})
