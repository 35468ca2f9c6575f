import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { LAYOUT_KINDS, layoutKindOf, setLayoutKind } from '../../../src-renderer/state/edits/layout-kind'
import { example } from '../projects'

const errorsOf = (project: Parameters<typeof planProject>[0]) =>
  planProject(project).findings.filter((finding) => finding.severity === 'error')

describe('what motifs are made into', () => {
  it('every kind follows from every other, without an error', () => {
    for (const name of ['hedgerow-baby-throw', 'orchard-gate-garland', 'quince-wreath-cushion'])
      for (const kind of LAYOUT_KINDS) {
        const made = setLayoutKind(example(name), kind)
        expect(layoutKindOf(made)).toBe(kind)
        expect(errorsOf(made), `${name} as ${kind}`).toEqual([])
      }
  })

  it('hangs every motif on a new garland, lays none on a new panel, and keeps the kit', () => {
    const garland = setLayoutKind(example('quince-wreath-cushion'), 'garland')
    expect(new Set(planProject(garland).garland!.items.map((item) => item.motif))).toEqual(
      new Set(['quince', 'leaf', 'bud']),
    )
    const panel = setLayoutKind(example('orchard-gate-garland'), 'applique')
    expect(planProject(panel).counts.motifs).toBe(0)
    expect(panel.layout?.kit).toEqual(example('orchard-gate-garland').layout?.kit)
  })

  it('hangs each motif in all of its colorways in turn', () => {
    const way = (id: string, motif: string) => ({ id, code: id, motif, yarns: {} })
    const motif = (id: string) => ({ id, kind: 'measured', outline: 'round', across: 60 })
    const project = {
      ...{ format: 'petalyard-project', version: 1, motifs: [motif('m1'), motif('m2')] },
      colourways: [way('A', 'm1'), way('B', 'm1'), way('C', 'm1'), way('D', 'm2')],
    } as Project
    const { layout } = setLayoutKind(project, 'garland')
    expect(layout).toMatchObject({
      items: ['A', 'D', 'B', 'D', 'C', 'D'].map((colourway, i) => ({
        ...{ motif: i % 2 === 0 ? 'm1' : 'm2', colourway },
      })),
    })
    // Without colourways each comes once.
    expect(setLayoutKind({ ...project, colourways: [] }, 'garland').layout).toMatchObject({
      items: [{ motif: 'm1' }, { motif: 'm2' }],
    })
  })

  it('lays squares in straight rows, and what they are told by their stitches; petals in offset ones', () => {
    const corners = '(2 dc, ch 2, 2 dc) in each ch-2 sp'
    const join = 'join with sl st in top of beg ch-3'
    const rounds = [
      `ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc, ch 2) 3 times in ring, ${join}`,
      `ch 3 (counts as dc), dc in each dc around, working ${corners}, ${join}`,
    ]
    const square: Project = {
      format: 'petalyard-project',
      version: 1,
      motifs: [
        {
          id: 'm1',
          kind: 'rounds',
          foundation: { ring: 'chain', chains: 4 },
          rounds: rounds.map((work) => ({ work })),
        },
      ],
    }
    expect(setLayoutKind(square, 'blanket').layout).toMatchObject({ arrangement: 'straight-rows' })
    const petals = setLayoutKind(example('quince-wreath-cushion'), 'blanket')
    expect(petals.layout).toMatchObject({ arrangement: 'offset-rows' })
  })

  it('leaves a project alone that is of that kind', () => {
    const project = example('orchard-gate-garland')
    expect(setLayoutKind(project, 'garland')).toBe(project)
  })
})
