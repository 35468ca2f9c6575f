/** Half motifs that follow from written rounds: what their rows do not say. */
import { describe, expect, it } from 'vitest'
import { halfMaking } from '../../../../src-core/half-motif/half-motif'
import { hexagons, toldOf } from './pages-of'

const told = toldOf(hexagons())
const making = (told: ReturnType<typeof toldOf>): string => halfMaking(told.plan, told.plan.motif!, 'US')

describe('half motifs', () => {
  it('have a right side: that of the last row', () => {
    // Three rounds, three rows.
    expect(making(told)).toContain('Rows 1 and 3 are worked with the right side facing.')
    const rounds = hexagons().motifs![0]! as { rounds: unknown[] }
    const two = toldOf(hexagons({ motifs: [{ ...rounds, rounds: rounds.rounds.slice(0, 2) }] as never }))
    expect(making(two)).toContain('Row 2 is worked with the right side facing.')
  })

  it('change color from row to row where the motif does, and nowhere else', () => {
    expect(making(told)).toContain('has another color, change to it in the last step of the row before')
    const rounds = hexagons().motifs![0]! as { rounds: { work: string }[] }
    const plain = rounds.rounds.map(({ work }) => ({ work }))
    const one = toldOf(hexagons({ motifs: [{ ...rounds, rounds: plain }] as never }))
    expect(making(one)).not.toContain('another color')
    expect(making(one)).toContain('right side facing')
  })

  it('are as long along the cut as the whole one from point to point, and half as wide', () => {
    const { overTips, overValleys } = told.plan.motif!
    const [long, wide] = [overTips, overValleys / 2].map((mm) => `${Math.round(mm)} mm`)
    expect(making(told)).toContain(`${long} long along its straight edge and ${wide} wide`)
    expect(making(told)).toContain('pin it out to that length')
  })

  it('stand with all of that on paper and on the phone, next to their rows', () => {
    for (const words of [told.of('motif'), told.phone]) {
      expect(words).toContain('Rows 1 and 3 are worked with the right side facing.')
      expect(words).toContain('Row 3: Ch 4 (counts as dc and ch 1)')
      expect(words).toContain('work it as many times as it says after')
      expect(words).toContain('a repeat begins here')
    }
  })
})
