/** Motifs that are sewn: in which yarn, through which loops, how corners close, and what it takes. */
import { describe, expect, it } from 'vitest'
import { seamYarn } from '../../../../src-core/figures/seam-words'
import { circles, hexagons, toldOf } from './pages-of'

const told = toldOf(hexagons())

describe('a throw that is sewn', () => {
  it('names the stitch and the yarn', () => {
    expect(told.of('overview')).toContain('Sew them with whip stitch in Cream')
    expect(told.phone).toContain('Sew them with whip stitch in Cream')
  })

  it('names the yarn that is planned for seams where the project names none', () => {
    const other = toldOf(hexagons({ joining: { rule: 'seam', seam: 'whip' } }))
    const used = other.plan.yarns.find(({ parts }) => parts.joins > 0)!
    expect(seamYarn(other.plan).toLowerCase()).toBe(used.id)
    expect(other.of('overview')).toMatch(/whip stitch in (Cream|Rust|Teal)/)
  })

  it('says through which loops, and what is done at corners', () => {
    for (const words of [told.of('joins'), told.phone]) {
      expect(words).toContain('sew through the back loops alone, stitch to stitch')
      expect(words).toContain('take the needle once through the corners of all of them')
    }
  })

  it('counts seams, not the marks along them', () => {
    const { count } = told.plan.counts.sides!
    expect(told.of('joins')).toContain(`${count} seams, `)
    expect(told.of('joins')).not.toMatch(/motifs? (meet|are joined) at/i)
    expect(told.of('overview')).toContain('Sides with dots are sewn')
  })

  it('has nothing but boxes in its order of work: whom each is sewn to the map shows', () => {
    const order = told.of('order')
    expect(order).toContain(
      'Sew each to all the motifs that are there already, along every side that it shares',
    )
    expect(order).not.toMatch(/Way \d|Ways to join|side \d/)
    for (const { label } of [...told.plan.motifs, ...told.plan.halves]) expect(order).toContain(`☐ ${label} `)
    expect(order).toContain('join each of them as soon as all the motifs beside it are there')
  })

  it('needs a needle', () => {
    expect(told.of('materials')).toContain('a blunt tapestry needle, to sew with and to weave in ends')
  })

  it.each([
    ['mattress', 'mattress stitch', 'under both loops of a stitch of one', 'the needle'],
    ['slip-stitch', 'a row of slip stitches', 'right sides together', 'the hook'],
    ['sc', 'a row of single crochet', 'wrong sides together', 'the hook'],
  ] as const)('tells a seam of %s by its own hold', (seam, how, hold, tool) => {
    const other = toldOf(hexagons({ joining: { rule: 'seam', seam, yarn: 'cream' } }))
    expect(other.of('overview')).toContain(how)
    expect(other.of('joins')).toContain(hold)
    expect(other.of('joins')).toContain(`take ${tool} once`)
  })
})

it('circles that are sewn at points count these', () => {
  const sewn = toldOf(circles({ joining: { rule: 'seam', seam: 'whip', yarn: 'w' } }))
  expect(sewn.of('joins')).toMatch(/Two motifs meet at \d+ points/)
  expect(sewn.of('overview')).toContain('A dot is a join point of two motifs')
})
