/** One hook is worked with: notes that name the one of the pasted page say which it is now. */
import { describe, expect, it } from 'vitest'
import type { Motif } from '../../../shared-types/project'
import { toldInstructions } from '../../../src-core/motif/instructions'

const LINE = 'Worsted yarn, 5.0 mm hook. US terms.'
const motif = (hook: number | undefined, instructions = LINE): Motif => ({
  ...{ id: 'm', kind: 'rounds', rounds: [{ work: '6 sc in ring' }], page: { text: `Hexagon\n${LINE}` } },
  ...{ instructions, gauge: hook === undefined ? {} : { hook } },
})

describe('the notes of a motif', () => {
  it('say the hook in force where the page says another', () => {
    expect(toldInstructions(motif(5.5), 'US')).toEqual([
      `${LINE} (Here it is worked with a hook of 5.5 mm (US I-9); 5 mm (US H-8) is what the pattern says.)`,
    ])
    expect(toldInstructions(motif(5.5), 'UK')[0]).toContain('a hook of 5.5 mm; 5 mm is what')
  })

  it('stay as they are where it is the same, none is known, or another hook is meant', () => {
    expect(toldInstructions(motif(5), 'US')).toEqual([LINE])
    expect(toldInstructions(motif(undefined), 'US')).toEqual([LINE])
    const border = 'Take a 4 mm hook for the border.'
    expect(toldInstructions(motif(5.5, border), 'US')).toEqual([border])
    const { page: _, ...own } = motif(5.5) as Extract<Motif, { kind: 'rounds' }>
    expect(toldInstructions(own, 'US')).toEqual([LINE])
  })
})
