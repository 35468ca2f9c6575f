import { describe, expect, it } from 'vitest'
import { createGround } from '../../../src-core/layout/ground'
import { settled } from '../../../src-core/settled'
import type { BlanketLayout, Motif, Project } from '../../../shared-types/project'
import type { SettledBlanket } from '../../../shared-types/settled'

/** Whatever is laid out, its motifs stay the same objects. */
const START: Project = {
  format: 'petalyard-project',
  version: 1,
  motifs: [
    { id: 'm', kind: 'measured', outline: 'petals', petals: 6, overTips: 80, overValleys: 56, slots: [] },
    { id: 'n', kind: 'measured', outline: 'petals', petals: 8, overTips: 60, overValleys: 44, slots: [] },
  ],
}
const LAYOUT = { kind: 'blanket', motif: 'm', arrangement: 'offset-rows', columns: 6, rows: 7 } as const

describe('the lattice', () => {
  const ground = createGround()
  const latticeOf = (layout: Partial<BlanketLayout>) => {
    const made = settled({ ...START, layout: { ...LAYOUT, ...layout } })
    return ground(made, made.layout as SettledBlanket).parts!.grid
  }
  const own = latticeOf({})

  it.each<Partial<BlanketLayout>>([{ columns: 9 }, { rows: 30 }, { rows: 8, alternateRows: 'oneFewer' }])(
    'is the same one for so many motifs more: %j',
    (counts) => expect(latticeOf(counts)).toBe(own),
  )

  it.each<Partial<BlanketLayout>>([
    { turn: 15 },
    { arrangement: 'straight-rows' },
    { alternate: { motifs: ['m', 'n'] } },
    { cells: { motifs: { '2,2': 'n' } } },
  ])('is another one where it hangs on what differs: %j', (other) => expect(latticeOf(other)).not.toBe(own))

  it.each<[string, Partial<Project>]>([
    ['weighs', { motifs: [{ ...START.motifs![0]!, weighed: { motifs: 3, grams: 30 } }, START.motifs![1]!] }],
    ['takes', { motifs: [{ ...START.motifs![0]!, minutes: 12 }, START.motifs![1]!] }],
    ['is called', { motifs: [{ ...START.motifs![0]!, name: 'Clover' }, START.motifs![1]!] }],
  ])('is the same one whatever a motif %s', (_, change) => {
    const made = settled({ ...START, ...change, layout: LAYOUT })
    expect(ground(made, made.layout as SettledBlanket).parts!.grid).toBe(own)
  })

  it('is another one where a motif or a gap is larger', () => {
    for (const change of [
      { motifs: [{ ...START.motifs![0]!, overTips: 81 } as Motif, START.motifs![1]!] },
      { joining: { rule: 'apart', gap: 5 } as const },
    ]) {
      const made = settled({ ...START, ...change, layout: LAYOUT })
      expect(ground(made, made.layout as SettledBlanket).parts!.grid).not.toBe(own)
    }
  })
})
