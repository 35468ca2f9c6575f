/** What a page proposes for a project, taken and left. */
import { describe, expect, it } from 'vitest'
import { projectSchema } from '../../../shared-types/project'
import type { Project, RoundsMotif } from '../../../shared-types/project'
import { measureProject } from '../../../src-core/accounts'
import { takeApart } from '../../../src-core/notation/take-apart'
import {
  answered,
  askAgain,
  leaveProposals,
  proposalsFor,
  proposalsOfText,
  takeProposals,
  withPage,
} from '../../../src-core/page/proposals'

const WORKS = [
  'In magic ring, ch 1, 8 sc, sl st in first sc.',
  'Ch 3 (counts as dc), dc in same st, 2 dc in each sc around, sl st in top of ch-3.',
]
const ROUNDS = `Rnd 1: ${WORKS[0]}\nRnd 2: ${WORKS[1]}`
const HEAD = `Meadow Coaster
by Ada Birch

Skill level: Easy
Materials: DK cotton (50 g/125 m) in yellow (A) and white (B); a needle
Hook: 4 mm
Gauge: Rnds 1 and 2 = 2½"
Finished size: 10 cm across
Notes: Weave in ends.`

const motif: RoundsMotif = {
  id: 'm1',
  kind: 'rounds',
  name: 'Written flower',
  gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 },
  rounds: WORKS.map((work, i) => ({ slot: i === 0 ? 'colour A' : 'colour B', work })),
}
const base: Project = {
  format: 'petalyard-project',
  version: 1,
  yarns: [{ id: 'y1', name: 'Old grey' }],
  motifs: [motif],
  colourways: [{ id: 'c1', motif: 'm1', yarns: { 'colour A': 'y1', 'colour B': 'y1' } }],
  layout: { kind: 'blanket', arrangement: 'straight-rows', motif: 'm1', columns: 3, rows: 3 },
}
const pasted = (head = HEAD, project = base) => withPage(project, 'm1', `${head}\n\n${ROUNDS}`, 'US')
const open = (project: Project) => proposalsFor(project, 'm1', 'round')
const ids = (project: Project) => open(project).map(({ id }) => id)
const take = (project: Project, ...wanted: string[]) => takeProposals(project, 'm1', wanted, 'round')
const motifOf = (project: Project) => project.motifs![0] as RoundsMotif

describe('a page of a motif', () => {
  it('proposes what it says, with what there is now, and changes nothing by itself', () => {
    const project = pasted()
    expect({ ...project, motifs: [] }).toEqual({ ...base, motifs: [] })
    expect(open(project).map(({ label, value, now }) => [label, value, now])).toEqual([
      ['Name of the motif', 'Meadow Coaster', 'Written flower'],
      ['Designer', 'Ada Birch', null],
      ['Skill level', 'Easy', null],
      ['Instructions', 'Materials: DK cotton (50 g/125 m) in yellow (A) and white (B); a needle', null],
      ['Yarn A', 'Yellow, 50 g, 125 m, cotton', null],
      ['Yarn B', 'White, 50 g, 125 m, cotton', null],
      ['Hook', '4 mm', '3.5 mm'],
      ['Gauge by rounds', 'rounds 1–2 measure 6.35 cm across', '20 sc and 22 rows to 10 cm'],
      ['Size of the motif', '10 cm across', null],
      ['Instructions', 'Notes: Weave in ends.', null],
    ])
    expect(projectSchema.parse(project)).toEqual(project)
  })

  it('gives one after the other to the project, and asks no more for what was taken', () => {
    const project = take(pasted(), 'hook-1')
    expect(motifOf(project).gauge).toEqual({ ...motif.gauge, hook: 4 })
    expect(ids(project)).toEqual(ids(pasted()).filter((id) => id !== 'hook-1'))
    // Later it is changed by hand: that is no reason to ask again.
    const changed = { ...project, motifs: [{ ...motifOf(project), gauge: { hook: 5 } }] }
    expect(ids(changed)).not.toContain('hook-1')
  })

  it('gives all of it at once', () => {
    const project = take(pasted(), ...ids(pasted()))
    expect(open(project)).toEqual([])
    const taken = motifOf(project)
    expect(taken.name).toBe('Meadow Coaster')
    expect(project.designer).toBe('Ada Birch')
    expect(project.pattern).toEqual({ skill: 'easy' })
    expect(taken.gauge).toMatchObject({ rounds: 2, across: 63.5, hook: 4 })
    expect(taken.measured).toEqual({ across: 100 })
    expect(taken.instructions).toBe(
      'Materials: DK cotton (50 g/125 m) in yellow (A) and white (B); a needle\nNotes: Weave in ends.',
    )
    expect(project.yarns?.map(({ name, ballGrams }) => [name, ballGrams])).toEqual([
      ['Old grey', undefined],
      ['Yellow', 50],
      ['White', 50],
    ])
    expect(project.colourways![0]!.yarns).toEqual({ 'colour A': 'y2', 'colour B': 'y3' })
  })

  it('is left as it is, and asked again when wished', () => {
    const project = leaveProposals(pasted(), 'm1', ['hook-1', 'name-1'])
    expect(ids(project)).not.toContain('hook-1')
    expect(motifOf(project).gauge?.hook).toBe(3.5)
    expect(answered(motifOf(project))).toBe(2)
    expect(ids(askAgain(project, 'm1'))).toEqual(ids(pasted()))
  })

  it('does not propose what is there already', () => {
    const project = pasted('Hook: 3.5 mm\nDesigner: Ada Birch', { ...base, designer: 'Ada Birch' })
    expect(ids(project)).toEqual([])
  })

  it('has one of two hooks taken, and asks for the other', () => {
    const project = pasted('Materials: 4 mm hook, 5 mm hook for the edging')
    const taken = take(project, ...ids(project))
    expect(motifOf(taken).gauge?.hook).toBe(4)
    expect(ids(taken)).toEqual(['hook-2'])
  })

  it('gives the only yarn of a page to the only colour of its motif', () => {
    const ways = [{ id: 'c1', motif: 'm1', yarns: { main: 'y1' } }]
    const one = pasted('Yarn: fingering cotton in Ice, 100 g / 400 m', { ...base, colourways: ways })
    expect(take(one, 'yarn-1').colourways).toEqual([{ ...ways[0], yarns: { main: 'y2' } }])
    // Of two yarns, or two colours, nobody knows which is meant.
    const two = pasted('Yarn: fingering cotton in Ice, 100 g / 400 m', base)
    expect(take(two, 'yarn-1').colourways).toEqual(base.colourways)
    const more = pasted('Yarn\nfingering cotton\nsilk thread, 20 g', { ...base, colourways: ways })
    expect(take(more, 'yarn-1').colourways).toEqual(ways)
  })

  it('changes the yarn of that name instead of adding one', () => {
    const yarns = [
      { id: 'y1', name: 'dk cotton', price: 3, assumed: ['ballGrams', 'price'] as ('ballGrams' | 'price')[] },
    ]
    const project = pasted('Yarn: DK cotton (50 g/125 m)', { ...base, yarns })
    expect(open(project)[0]).toMatchObject({ label: 'Yarn', now: 'dk cotton' })
    expect(take(project, 'yarn-1').yarns).toEqual([
      {
        id: 'y1',
        name: 'DK cotton',
        price: 3,
        assumed: ['price'],
        ballGrams: 50,
        ballMetres: 125,
        fibre: 'cotton',
      },
    ])
  })

  it('with a swatch takes the place of a gauge by rounds that would rule over it', () => {
    const own = { ...motif, gauge: { rounds: 2, across: 60, rows: 9 } }
    const project = take(pasted('Gauge: 16 dc = 4 in', { ...base, motifs: [own] }), 'swatch-1')
    const { rounds, across, rows, stitches } = motifOf(project).gauge!
    expect([rounds, across, rows, stitches]).toEqual([undefined, undefined, undefined, 16])
  })

  it('names the stitch of its gauge in the terms of the project', () => {
    const text = 'Tension: 16 tr to 10 cm\n\nRound 1: Magic ring, 1 ch, 8 dc, ss to first dc.'
    const project = take(withPage(base, 'm1', text, 'UK'), 'swatch-1')
    expect(motifOf(project).gauge?.stitch).toBe('dc')
  })

  it('has a size of a blanket for its target alone', () => {
    const project = pasted('Finished size: 48 x 60 in')
    expect(take(project, 'size-1').layout).toMatchObject({ target: { width: 1219.2, height: 1524 } })
    expect(ids({ ...project, layout: { kind: 'garland', cord: { length: 1000 }, items: [] } })).toEqual([])
  })

  it('sets the measure that a motif of its shape is known by', () => {
    const project = pasted('Finished size: 10 cm across')
    const sizes = (shape: 'petals' | 'straight' | 'round' | 'leaf') =>
      motifOf(takeProposals(project, 'm1', ['size-1'], shape)).measured
    expect(sizes('petals')).toEqual({ overTips: 100 })
    expect(sizes('straight')).toEqual({ sideToSide: 100 })
    expect(sizes('round')).toEqual({ across: 100 })
    expect(sizes('leaf')).toEqual({ length: 100 })
  })

  it('takes a size as stated: nobody has measured one, and one that was measured stays so', () => {
    const project = pasted('Finished size: 10 cm across')
    const taken = take(project, 'size-1')
    expect(motifOf(taken)).toMatchObject({ measured: { across: 100 }, stated: { across: 100 } })
    expect(measureProject(taken).motifs[0]).toMatchObject({ provenance: 'stated', overTips: 100 })
    const own = { ...motif, measured: { across: 100 } }
    const before = { ...project, motifs: [{ ...motifOf(project), ...own }] }
    expect(ids(before)).toEqual([])
    expect(motifOf(take(before, 'size-1'))).not.toHaveProperty('stated')
  })

  it('makes its rounds come out as it says (M3)', () => {
    const project = take(pasted('Gauge: Rnds 1 and 2 = 3 in'), 'rounds-gauge-1')
    expect(measureProject(project).motifs[0]!.rounds[1]!.outerRadius * 2).toBeCloseTo(76.2, 1)
  })

  it('takes the skill level by the words of old and new lists; others stay words (§project-levels)', () => {
    const sets = (level: string) =>
      proposalsOfText(`Skill level: ${level}\n\n${ROUNDS}`, 'US').find(({ id }) => id === 'skill-1')!.sets
    for (const [level, skill] of [
      ['Beginner', 'basic'],
      ['Easy', 'easy'],
      ['Advanced beginner', 'easy'],
      ['Intermediate', 'intermediate'],
      ['Experienced', 'complex'],
    ] as const)
      expect(sets(level)).toEqual({ 'pattern.skill': skill })
    expect(sets('Easy to intermediate')).toEqual({
      'motif.instructions': 'Skill level: Easy to intermediate',
    })
    expect(sets('Two balls out of five')).toEqual({
      'motif.instructions': 'Skill level: Two balls out of five',
    })
  })

  it('goes on where more is pasted, and is forgotten with the rounds', () => {
    const more = withPage(pasted('Hook: 4 mm'), 'm1', 'Designer: Jo Fern', 'US', true)
    expect(ids(more)).toEqual(['hook-1', 'designer-1'])
    expect(motifOf(withPage(more, 'm1', ROUNDS, 'US')).page).toBeUndefined()
  })
})

describe('a text by itself', () => {
  it('tells what it would set by its place in the file', () => {
    expect(proposalsOfText(`${HEAD}\n\n${ROUNDS}`, 'US').map(({ id, sets }) => [id, sets])).toEqual([
      ['name-1', { title: 'Meadow Coaster', 'motif.name': 'Meadow Coaster' }],
      ['designer-1', { designer: 'Ada Birch' }],
      ['skill-1', { 'pattern.skill': 'easy' }],
      ['notes-1', expect.anything()],
      ['yarn-1', expect.objectContaining({ 'yarns[].name': 'Yellow', 'yarns[].ballGrams': 50 })],
      ['yarn-2', expect.objectContaining({ 'yarns[].name': 'White', 'yarns[].ballMetres': 125 })],
      ['hook-1', { 'motif.gauge.hook': 4 }],
      ['rounds-gauge-1', { 'motif.gauge.rounds': 2, 'motif.gauge.across': 63.5 }],
      ['size-1', { 'motif.measured.across': 100 }],
      ['notes-2', { 'motif.instructions': 'Notes: Weave in ends.' }],
    ])
  })
})

/** The rounds of the second motif. */
const rounds = (of: Project) => (of.motifs![1] as RoundsMotif).rounds!

describe('later pieces of a page', () => {
  const FLOWER = `FLOWER (make 6)
${ROUNDS}

LEAF (make 12)
Ch 8.
Rnd 1: Sc in 2nd ch from hook, hdc in next ch, dc in next 3 chs, hdc in next ch, 3 sc in last ch; working along opposite side of foundation ch, hdc in next ch, dc in next 3 chs, hdc in next ch, sc in last ch; join with sl st in first sc.`
  /** As the window pastes it. */
  const project = (): Project => {
    const { rounds, foundation, special, text, terms } = takeApart(FLOWER, 'US', 'US')
    const own: RoundsMotif = {
      ...motif,
      foundation,
      rounds: rounds.map(({ work }) => ({ slot: 'colour A', work })),
    }
    return withPage({ ...base, motifs: [{ ...own, ...(special && { special }) }] }, 'm1', text, terms)
  }

  it('with a foundation of their own are proposed as motifs, with how many to make', () => {
    expect(open(project()).map(({ label, value, at }) => [label, value, at.line])).toEqual([
      ['Name of the motif', 'Flower', 1],
      ['Instructions', 'Make 6.', 1],
      ['Motif of its own', 'Leaf, make 12, 1 round', 5],
    ])
  })

  it.each([
    ['FLOWER (make 6)', 'LEAF (make 12)', 2],
    ['FLOWER', 'LEAF (make 2)', 2],
    // Of the whole work, of which nobody knows how many motifs it has.
    ['FLOWER', 'LEAF (make 24)', null],
    ['FLOWER (make 8)', 'LEAF (make 12)', null],
    ['FLOWER', 'LEAF', null],
  ])('go with the first one: %s, %s', (first, second, each) => {
    const text = FLOWER.replace('FLOWER (make 6)', first).replace('LEAF (make 12)', second)
    const own = { ...project().motifs![0]!, page: undefined } as RoundsMotif
    const taken = take(withPage({ ...base, motifs: [own] }, 'm1', text, 'US'), 'piece-1')
    const [, leaf] = taken.motifs!
    expect(leaf!.goesWith).toEqual({ motif: 'm1', ...(each !== null && { each }) })
    const make = /make (\d+)/.exec(second)
    expect(leaf!.instructions).toBe(make && each === null ? `Make ${make[1]}.` : undefined)
  })

  it('keep the special stitches that their own rounds name', () => {
    const special =
      'Back post single crochet (BPsc): sc around post.\nHalf double crochet (hdc): yo, insert hook.'
    const own = { ...project().motifs![0]!, special } as RoundsMotif
    const [flower, leaf] = take({ ...project(), motifs: [own] }, 'piece-1').motifs as RoundsMotif[]
    expect(flower!.special).toBe(special)
    expect(leaf!.special).toBe('Half double crochet (hdc): yo, insert hook.')
  })

  it('become motifs that are measured by themselves, out of the rounds that they stood in', () => {
    const before = measureProject(project())
    expect(before.findings.map(({ code }) => code)).toContain('motif/other-piece')
    const after = take(project(), 'piece-1')
    expect(motifOf(after).rounds?.map(({ work }) => work)).toEqual(WORKS)
    expect(after.motifs![1]).toMatchObject({
      id: 'm2',
      name: 'Leaf',
      goesWith: { motif: 'm1', each: 2 },
      gauge: motif.gauge,
    })
    const told = measureProject(after)
    expect(told.findings.filter(({ severity }) => severity !== 'note')).toEqual([])
    expect(told.motifs.map(({ shape }) => shape)).toEqual(['round', 'leaf'])
    expect(told.motifs[0]!.overTips).toBe(before.motifs[0]!.overTips)
    expect(open(after).map(({ kind }) => kind)).not.toContain('piece')
  })

  it('get a colourway in the yarns of the motif that they stood in', () => {
    const before = project()
    const slot = motifOf(before).rounds![0]!.slot ?? 'main'
    const after = take(
      {
        ...before,
        yarns: [{ id: 'y1', name: 'Fern' }],
        colourways: [{ id: 'c1', code: 'A', motif: motifOf(before).id, yarns: { [slot]: 'y1' } }],
      },
      'piece-1',
    )
    const [way] = after.colourways!.filter(({ motif }) => motif === 'm2')
    expect(way).toMatchObject({ id: 'c2', code: 'B' })
    expect(Object.values(way!.yarns!)).toEqual(['y1'])
    expect(Object.keys(way!.yarns!)).toEqual([...new Set(rounds(after).map(({ slot }) => slot))])
  })

  it('are not taken from rounds that were changed since', () => {
    const changed = project()
    const own = motifOf(changed)
    const rounds = own.rounds!.map((round, i) =>
      i === 2 ? { ...round, work: `${round.work} Fasten off.` } : round,
    )
    const after = take({ ...changed, motifs: [{ ...own, rounds }] }, 'piece-1')
    expect(motifOf(after).rounds).toEqual(rounds)
    expect(after.motifs).toHaveLength(2)
  })

  it('are none where a part goes on from the one before it', () => {
    const text = `CENTER\nRnd 1: ${WORKS[0]}\nPETALS\nRnd 2: ${WORKS[1]}`
    expect(proposalsOfText(text, 'US').map(({ kind }) => kind)).not.toContain('piece')
  })
})
