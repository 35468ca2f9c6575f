/** M46, M47: a weighing that moves colours of what is still to be made says so, with how many. */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { remeasuredWords, renewedWords } from '../../../src-core/progress/words'
import { measuredFrom } from '../../../src-renderer/state/measured-from'

/** Forty squares of 10 g in two colours, 220 g of each; ten are made. */
const IDS = ['a', 'b']
const bare: Project = {
  ...{ format: 'petalyard-project', version: 1, terms: 'UK' },
  yarns: IDS.map((id) => ({ id, name: id.toUpperCase(), ballGrams: 50, ballMetres: 125, onHandGrams: 220 })),
  motifs: [
    {
      ...{ id: 'm', kind: 'measured', outline: 'square', sideToSide: 100 },
      slots: [{ slot: 'all', grams: 10 }],
    },
  ],
  colourways: IDS.map((id) => ({ id, code: id.toUpperCase(), motif: 'm', yarns: { all: id } })),
  joining: { rule: 'edges' },
  allowance: { wastePercent: 0 },
  layout: {
    ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'm', columns: 8, rows: 5 },
    cells: { fill: { pattern: 'by-stash', colourways: IDS, seed: 1 } },
  },
}
const plain = planProject(bare)
const made = plain.order.slice(0, 10).map(({ motif }) => motif)
const begun: Project = {
  ...bare,
  made: Object.fromEntries(made.map((id) => [id, ''])),
  layout: {
    ...bare.layout!,
    cells: {
      ...(bare.layout as { cells: object }).cells,
      held: Object.fromEntries(
        plain.motifs.flatMap((m) => (made.includes(m.id) ? [[m.id, m.colourway]] : [])),
      ),
    },
  } as Project['layout'],
}
const weighed: Project = {
  ...begun,
  yarns: begun.yarns!.map((yarn) => (yarn.id === 'a' ? { ...yarn, left: { grams: 100, at: 10 } } : yarn)),
}

describe('colours that follow a weighing', () => {
  it('are told with how many motifs change, none of them made', () => {
    const [before, after] = [planProject(begun), planProject(weighed)]
    const was = new Map(before.motifs.map(({ id, colourway }) => [id, colourway]))
    const moved = after.motifs.filter(({ id, colourway }) => was.get(id) !== colourway)
    expect(moved.length).toBeGreaterThan(1)
    expect(moved.filter(({ id }) => made.includes(id))).toEqual([])
    expect(remeasuredWords(before, after, bare.yarns!, 'metric', 'UK')).toContain(
      `${moved.length} motifs still to be made in another colour (Undo brings back what was)`,
    )
    expect(remeasuredWords(before, after, bare.yarns!, 'metric', 'US')).toContain('in another color')
    expect(remeasuredWords(before, before, bare.yarns!, 'metric')).toBe('')
  })

  it('are held against the plan before the yarn was weighed, until something else is changed', () => {
    const before = planProject(begun)
    const from = measuredFrom(begun, weighed, before, null)
    expect(from).toMatchObject({ what: ['yarn'] })
    expect(from!.plan).toBe(before)
    expect(renewedWords(from!.what, 'UK')).toBe('New weight of the yarn that is left')
    // What a yarn costs is no weighing.
    const priced = { ...begun, yarns: begun.yarns!.map((yarn) => ({ ...yarn, price: 4 })) }
    expect(measuredFrom(begun, priced, before, null)).toBeNull()
  })
})
