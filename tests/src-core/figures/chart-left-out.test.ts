/** A chart has no round whose stitches do not work out: nobody knows where they lie. What is said under it names them. */
import { describe, expect, it } from 'vitest'
import type { Project, RoundsMotif } from '../../../shared-types/project'
import { workedRounds } from '../../../src-core/accounts'
import { chartFigures, leftOutWords } from '../../../src-core/figures/chart'
import { settled } from '../../../src-core/settled'
import { chartPicture } from '../../../src-main/paper/chart'
import { record } from './recorder'

const ROUNDS = [
  'Ch 1, 6 sc in ring; join with sl st in first sc. (6 sc)',
  'Ch 1, 2 sc in each sc around; join with sl st in first sc. (12 sc)',
]

function drawingOf(third: string, ...more: readonly string[]) {
  const rounds = [...ROUNDS, third, ...more].map((work) => ({ work }))
  const motif: RoundsMotif = {
    id: 'm',
    kind: 'rounds',
    foundation: { ring: 'adjustable' },
    rounds,
  } as RoundsMotif
  const project = { format: 'petalyard-project', version: 1, motifs: [motif] } as Project
  return { motif, project, drawing: workedRounds(settled(project), motif).drawing()! }
}

describe('a chart of rounds that do not all work out', () => {
  it.each([
    '*sc in next 5 sc; rep from * around; join with sl st in first sc.',
    'Ch 1, sc in next 14 sc; join with sl st in first sc.',
    'Ch 1, blob in each sc around; join with sl st in first sc.',
  ])('leaves out: %s', (third) => {
    const { drawing, project, motif } = drawingOf(third)
    expect(drawing.left).toEqual([3])
    const [figure] = chartFigures(drawing.located, drawing.beginning, {
      ...{ hand: 'right', style: 'ink', width: 100, height: 100 },
    })
    expect(figure!.rounds).toEqual([1, 2])
    const words = record(chartPicture({ settled: settled(project), motif }, () => 10)!).texts
    expect(words.map(({ text }) => text).join(' ')).toContain(
      'Round 3 is not drawn: its stitches do not work out yet.',
    )
  })

  it('draws a round of which every stitch is counted, whatever its text states', () => {
    const { drawing } = drawingOf('Ch 1, 2 sc in each sc around; join with sl st in first sc. (23 sc)')
    expect(drawing.left).toEqual([])
    expect(drawing.located.map(({ round }) => round.number)).toEqual([1, 2, 3])
  })

  it('says it of several', () => {
    expect(leftOutWords([])).toBe('')
    expect(leftOutWords([3, 5])).toBe('Rounds 3 and 5 are not drawn: their stitches do not work out yet.')
  })
})
