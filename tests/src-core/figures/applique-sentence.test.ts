import { describe, expect, it } from 'vitest'
import type { AppliqueLayout, Project } from '../../../shared-types/project'
import { projectSentence, sentenceText } from '../../../src-core/figures/sentence'
import { planProject } from '../../../src-core/plan'

const project: Project = {
  format: 'petalyard-project',
  version: 1,
  motifs: [
    { id: 'd', name: 'Daisy', kind: 'measured', outline: 'round', across: 40 },
    { id: 'l', name: 'Leaf', kind: 'measured', outline: 'leaf', length: 50, width: 20 },
  ],
}

function said(layout: Partial<AppliqueLayout>, units: 'metric' | 'imperial' = 'metric'): string {
  const panel = { shape: 'circle', diameter: 250 } as const
  const whole: Project = { ...project, units, layout: { kind: 'applique', panel, ...layout } }
  return sentenceText(projectSentence(planProject(whole)))
}

describe('an appliqué as a sentence', () => {
  const at = (motif: string, x: number) => ({ motif, x, y: 125 })

  it('tells items by motif, the panel in both units, and the smallest distance', () => {
    expect(said({ items: [at('d', 60), at('d', 110), at('l', 190)] })).toBe(
      '3 items (2 × Daisy and 1 × Leaf) on a circle of 250 mm (9⅞ in), 10 mm apart at the closest.',
    )
    expect(said({ items: [at('d', 60)] }, 'imperial')).toBe(
      '1 item (1 × Daisy) on a circle of 9⅞ in (250 mm).',
    )
  })

  it('tells what lies on what, and an empty panel', () => {
    const panel = { shape: 'rectangle', width: 300, height: 200 } as const
    expect(said({ panel, overlaps: 'allowed', items: [at('d', 100), at('d', 120)] })).toBe(
      '2 items (2 × Daisy) on a rectangle of 30 × 20 cm (11¾ × 7⅞ in), some of them on others.',
    )
    expect(said({ items: [] })).toBe('Nothing is placed yet on a circle of 250 mm (9⅞ in).')
  })
})
