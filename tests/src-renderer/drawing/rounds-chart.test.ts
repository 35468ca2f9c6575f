import { describe, expect, it } from 'vitest'
import type { Project, RoundsMotif } from '../../../shared-types/project'
import { workedRounds } from '../../../src-core/accounts'
import { chartFigures } from '../../../src-core/figures/chart'
import { takeApart } from '../../../src-core/notation/take-apart'
import { settled } from '../../../src-core/settled'
import { drawRounds } from '../../../src-renderer/drawing/rounds-chart'
import { sameThreadBackground } from '../../../src-renderer/state/background'
import { replaceRounds } from '../../../src-renderer/places/motif/rounds/edits'
import { exampleBlock } from '../../../src-renderer/places/motif/rounds/example'
import { SMALL } from '../projects'

const empty: RoundsMotif = { id: 'm1', name: 'Flower', kind: 'rounds', rounds: [] }
const project: Project = replaceRounds(
  { ...SMALL, motifs: [empty] },
  'm1',
  takeApart(exampleBlock('US'), 'US'),
)

describe('the chart that is drawn beside the window', () => {
  it('is the one of the engine, with the words of each stitch', async () => {
    const motif = project.motifs![0] as RoundsMotif
    const { located, beginning } = workedRounds(settled(project), motif).drawing()!
    const [figure] = chartFigures(located, beginning, {
      hand: 'right',
      style: 'colour',
      width: 130,
      height: 130,
    })
    const chart = await sameThreadBackground().chart(project, 'm1')
    const [whole] = chart!.whole
    expect(whole!.items).toEqual(figure!.items)
    expect(whole!.marks.map(({ round, span }) => [round, span])).toEqual(
      figure!.marks.map(({ round, element }) => [round.round.index, element.span]),
    )
    expect(whole!.marks.every(({ d }) => d.startsWith('M'))).toBe(true)
  })

  it('has one repeat for itself, where rounds repeat', () => {
    const join = 'join with sl st in top of beg ch-3'
    // Twelve more in each round.
    const text = Array.from({ length: 12 }, (_, at) => {
      const plain = at < 2 ? '' : `, dc in next ${at - 1} dc`
      return at === 0
        ? `Rnd 1: Magic ring, ch 3 (counts as dc), 11 dc in ring, ${join}.`
        : `Rnd ${at + 1}: Ch 3 (counts as dc), dc in same st${at === 1 ? '' : plain}, *2 dc in next dc${plain}; rep from * around, ${join}.`
    }).join('\n')
    const flat = replaceRounds({ ...SMALL, motifs: [empty] }, 'm1', takeApart(text, 'US'))
    const chart = drawRounds(flat, 'm1')!
    expect(chart.repeats.map(({ repeats }) => repeats)).toEqual([12])
    expect(chart.repeats[0]!.marks.length).toBeLessThan(chart.whole[0]!.marks.length / 4)
  })

  it('goes through a message whole', () => {
    const chart = drawRounds(project, 'm1')
    expect(structuredClone(chart)).toEqual(chart)
  })

  it('is none of a motif that is measured, empty or not there', () => {
    expect(drawRounds(SMALL, SMALL.motifs![0]!.id)).toBeNull()
    expect(drawRounds({ ...project, motifs: [empty] }, 'm1')).toBeNull()
    expect(drawRounds(project, 'm7')).toBeNull()
  })
})
