/** Every abbreviation of the craft that a page uses stands in the list beside the rounds of the motif. */
import { describe, expect, it } from 'vitest'
import type { Project, Terms } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { listExamples } from '../../../src-main/documents'
import { readProjectText } from '../../../src-main/documents/read'
import { mapPages } from '../../../src-main/paper/index'
import { motifParts } from '../../../src-main/phone/motifs'
import { record } from '../../src-core/figures/recorder'
import { DATE } from './projects'

/** As the trade has them, whatever our own table of words says; common practice, no source. */
const USED =
  /\b(ch|sc|dc|hdc|htr|tr|dtr|sl st|ss|lps?|sk|rep|rnd|beg|sps?|sts?|BLO|FLO|FPdc|BPdc|YO|yoh|inc|dec)\b/g

const HEXAGON = [
  'Ch 3 (counts as dc), dc in ring, ch 2, *2 dc in ring, ch 2; rep from * 4 more times, sl st in top of beg ch-3.',
  'Sl st in next dc and ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 4 more times, sl st in top of beg ch-3.',
]
const SHELLS =
  'ch 1, *sc in next st, sk 2 sts, 5 dc in next st, sk 2 sts; rep from * around, join with sl st in first sc.'

const hexagons = {
  ...{ format: 'petalyard-project', version: 1, terms: 'US', joining: { rule: 'edges' } },
  ...{ yarns: [], colourways: [] },
  motifs: [
    {
      ...{ id: 'm', kind: 'rounds', name: 'Hexagon', foundation: { ring: 'magic' } },
      ...{ gauge: { stitch: 'sc', stitches: 13, rows: 15, over: 100 } },
      rounds: HEXAGON.map((work) => ({ work })),
    },
  ],
  layout: {
    ...{ kind: 'blanket', arrangement: 'offset-rows', motif: 'm', columns: 4, rows: 4 },
    edging: { rounds: ['sc', 'sc'], written: [{ work: SHELLS }] },
  },
} as unknown as Project

/** Abbreviations that are used on some page, and those that are listed; null where nothing is listed. */
function abbreviations(project: Project, terms?: Terms) {
  const pages = mapPages(planProject(project), { date: DATE, ...(terms && { terms }) })
  const texts = pages.flatMap(({ figure }) => record(figure).texts)
  const listed = new Set<string>()
  let isList = false
  for (const { text, weight } of texts) {
    if (text === 'Abbreviations') isList = true
    else if (isList && weight === 'bold') listed.add(text)
  }
  const used = new Set(
    [
      ...texts
        .map(({ text }) => text)
        .join(' ')
        .matchAll(USED),
    ].map(([, found]) => found!),
  )
  return isList ? { used: [...used].sort(), listed } : null
}

describe('abbreviations on paper', () => {
  it.each(['US', 'UK'] as const)(
    'joining round and shells are listed beside the rounds, in %s terms',
    (terms) => {
      const { used, listed } = abbreviations(hexagons, terms)!
      expect(used.filter((each) => !listed.has(each))).toEqual([])
      for (const each of terms === 'US' ? ['lp', 'sk', 'sc', 'dc'] : ['lp', 'dc', 'tr'])
        expect(used).toContain(each)
    },
  )

  it('the stitches of a side that are joined are named, and no page counts others', () => {
    const pages = mapPages(planProject(hexagons), { date: DATE })
    const page = pages.find(({ section }) => section === 'joins')!
    const words = record(page.figure)
      .texts.map(({ text }) => text)
      .join(' ')
    expect(words).toContain('after the 1st, 3rd, 4th and 6th dc of the side')
    expect(words).toContain('evenly along the side')
    expect(words).toContain(
      'Evenly along a side means at the stitches of it that are named here, all of them.',
    )
    expect(words).toContain('Two that lie side by side are joined at their corners and evenly along the side')
    // Four stitches of a side stand for three places of the plan.
    for (const { figure } of pages) {
      const told = record(figure)
        .texts.map(({ text }) => text)
        .join(' ')
      expect(told).not.toMatch(/at 3 places|Two motifs meet at/)
    }
    expect(words).not.toContain('a quarter, half and three quarters')
  })

  it.each(['US', 'UK'] as const)(
    'of motifs that were measured those of joins and border, in %s terms',
    (terms) => {
      const measured = {
        ...hexagons,
        motifs: [{ id: 'm', kind: 'measured', name: 'Circle', outline: 'round', across: 90 }],
        layout: { ...hexagons.layout, edging: { style: 'bridge', rounds: ['sc', 'hdc'] } },
      } as unknown as Project
      const found = abbreviations(measured, terms)
      expect(found).not.toBeNull()
      expect(found!.used.filter((each) => !found!.listed.has(each))).toEqual([])
      for (const each of terms === 'US' ? ['sc', 'hdc', 'ch'] : ['dc', 'htr', 'ch'])
        expect(found!.listed).toContain(each)
      const phone = motifParts(planProject(measured), terms)
      expect(phone).toMatch(terms === 'US' ? /<dt>hdc<\/dt>/ : /<dt>htr<\/dt>/)
    },
  )

  it('on a phone, too', () => {
    const page = motifParts(planProject(hexagons), 'US')
    const [, list = ''] = page.split('Abbreviations')
    for (const each of ['lp', 'sk']) expect(list).toMatch(new RegExp(`<dt>${each}</dt>`))
  })

  it.each(listExamples())('$name: all that are used are listed where there is a list', ({ text }) => {
    const read = readProjectText(text)
    if (read.kind !== 'opened') throw new Error('An example does not open.')
    const found = abbreviations(read.project)
    if (found) expect(found.used.filter((each) => !found.listed.has(each))).toEqual([])
  })
})
