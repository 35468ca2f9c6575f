/** Parts that a pattern names by a colour, in colourways that work them in other yarns: nobody is to guess which is which. */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { colourwayMarks } from '../../../src-core/figures/marks'
import { planProject } from '../../../src-core/plan'
import { otherYarns } from '../../../src-main/paper/words-colours'
import { slotWords } from '../../../src-main/paper/words'
import { phonePage } from '../../../src-main/phone/page'
import { pagesOf } from './kits'

const YARNS = ['White', 'Lilac', 'Grey']
const WORK = [
  'With white, make a magic ring, ch 1, 12 sc in the ring, join with a sl st to the first sc.',
  'Join lilac with a sl st in any st. ch 3, dc in same st, 2 dc in each st around, join with sl st.',
  'With grey, ch 1, sc in each st around, join with sl st.',
]
/** `prefix`: as files have it in which words were named like letters. */
function project(prefix = ''): Project {
  const slots = ['white', 'lilac', 'grey'].map((name) => prefix + name)
  const way = (id: string, order: readonly number[]) => ({
    ...{ id, code: id, name: `Colorway ${id}`, motif: 'm1' },
    yarns: Object.fromEntries(slots.map((slot, i) => [slot, `y${order[i]! + 1}`])),
  })
  return {
    ...{ format: 'petalyard-project', version: 1, title: 'Wheels', terms: 'US' },
    yarns: YARNS.map((name, i) => ({ id: `y${i + 1}`, name })),
    motifs: [
      {
        ...{ id: 'm1', name: 'Wheel', kind: 'rounds', measured: { across: 80 } },
        rounds: WORK.map((work, i) => ({ slot: slots[i]!, work })),
      },
    ],
    colourways: [way('A', [0, 1, 2]), way('B', [0, 2, 1])],
    layout: {
      ...{ kind: 'blanket', motif: 'm1', columns: 4, rows: 4 },
      cells: { fill: { pattern: 'rows', colourways: ['A', 'B'] } },
    },
  } as Project
}
const OTHER =
  'The colors in the words are those of the pattern. In colorway B lilac is Grey and grey is Lilac.'

describe('colors that a pattern names', () => {
  it('stand before the yarn in the key, without “color”', () => {
    const slots = [
      { slot: 'lilac', yarnName: 'Grey' },
      { slot: 'color dark green', yarnName: 'Moss' },
      { slot: 'rose petals', yarnName: 'Sand' },
    ]
    expect(slotWords(slots, 'US')).toBe('lilac: Grey, dark green: Moss, Sand rose petals')
  })

  it.each(['', 'color '])('are told beside the rounds where a yarn is another one (“%slilac”)', (prefix) => {
    const words = JSON.stringify(pagesOf(project(prefix), { sheets: ['map'] })).replace(/\s+/g, ' ')
    expect(words).toContain('The colors in the words are those of the pattern.')
    expect(words).not.toMatch(/color lilac/)
    const page = phonePage(planProject(project(prefix)), { version: '1.0.0' })
    expect(page).toContain(OTHER)
  })

  it('and nothing where each is in the yarn that is called so', () => {
    const plan = planProject(project())
    const marks = colourwayMarks(plan)
    expect(otherYarns(plan.settled, marks, 'm1', 'US')).toBe(OTHER)
    expect(otherYarns(plan.settled, marks, 'm1', 'US', 'sc in lilac')).toBe(
      'The colors in the words are those of the pattern. In colorway B lilac is Grey.',
    )
    const [first] = marks
    expect(otherYarns(plan.settled, [first!], 'm1', 'US')).toBe('')
  })
})
