import { describe, expect, it } from 'vitest'
import { createGround } from '../../../src-core/layout/ground'
import { settled } from '../../../src-core/settled'
import type { BlanketLayout, Project } from '../../../shared-types/project'
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
})
