import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { mapPages, renderMap } from '../../../src-main/paper/index'
import { remembered } from '../../../src-core/memo'
import { createPlanner } from '../../../src-core/plan'
import { blanketOf, solidSquare } from '../../src-core/joining-round/flowers'
import { example, planOf } from './examples'
import { DATE, VERSION } from './projects'
import { readPdf } from './read-pdf'
import type { ReadPdf } from './read-pdf'

/** Printed and read once in each of the terms that are asked for. */
const printed = remembered(
  async (project: Project, terms?: 'US' | 'UK'): Promise<ReadPdf> =>
    readPdf(await renderMap(planOf(project), { date: DATE, version: VERSION, terms })),
  3,
)

const wordsOf = (read: ReadPdf): string => read.pages.map((page) => page.words).join(' ')

describe('the list of what is to be bought', () => {
  it('says that yarn on hand counts for this plan alone, and only where there is some', async () => {
    const file = example('limekiln-cushion')
    const has = (onHandGrams: number | undefined) => ({
      ...file,
      yarns: file.yarns!.map((yarn) => ({ ...yarn, onHandGrams, onHandBalls: undefined })),
    })
    const alone = 'What is on hand counts for this plan alone.'
    expect(wordsOf(await printed(has(40)))).toContain(alone)
    expect(wordsOf(await printed(has(undefined)))).not.toContain(alone)
    // A pattern for sale has nobody's stash in it.
    const options = { date: DATE, version: VERSION, titlePage: true }
    expect(wordsOf(await readPdf(await renderMap(planOf(has(40)), options)))).not.toContain(alone)
  })
})

describe('the page of a motif in written rounds', () => {
  it('prints the rows of a half motif that stands on the map, as a suggestion', async () => {
    const file = example('limekiln-cushion')
    const layout = {
      ...{ kind: 'blanket', arrangement: 'offset-rows', alternateRows: 'oneFewer', motif: 'hexagon' },
      ...{ columns: 4, rows: 5, halves: true },
    } as const
    const halved = { ...file, layout } as Project
    const words = wordsOf(await printed(halved))
    expect(words).toContain('Half motif A suggestion that follows from the rounds')
    expect(words).toContain('Row 1: Ch 3 (counts as dc), 6 dc in ring; turn. (7 dc)')
    // What these rows are told in and the rounds are not.
    expect(words).toContain('st stitch sts stitches')
    // A border says of each motif how many stitches it takes, in the same word.
    const { edging: _, ...bare } = file.layout as BlanketLayout
    const without = wordsOf(await printed({ ...file, layout: bare } as Project))
    expect(without).not.toContain('st stitch sts stitches')
    expect(words).toContain('sc in 3rd ch of beg ch-4; fasten off. (26 sc)')
    const said = { ...file.motifs![0]!, instructions: 'Half: as the whole, to row 4.' } as never
    expect(wordsOf(await printed({ ...halved, motifs: [said] }))).not.toContain('A suggestion that follows')
    expect(wordsOf(await printed(file))).not.toContain('A suggestion that follows')
  })

  it('prints the rounds word for word, the abbreviations they use, and the chart with its key', async () => {
    const read = await printed(example('orchard-wall-throw'))
    const words = wordsOf(read)
    expect(words).toContain('Rounds as written, in US terms')
    expect(words).toContain('sl st in first ch-4 sp, ch 1, (sc, hdc, 2 dc, hdc, sc) in same sp')
    expect(words).toMatch(/Abbreviations BPsc back post single crochet/)
    expect(words).toContain('Key to the chart')
    expect(words).toContain('Rounds 1 to 3')
    expect(words).toContain('Rounds 4 and 5, worked behind.')
    expect(read.bookmarks.map(([title]) => title)).toContain('Chart')
  })

  it('names the measure of its range, and spells the parts that a page named for who reads the sheet', async () => {
    const rounds = solidSquare(3)
    const square = blanketOf({ rounds, joining: { rule: 'tips' }, layout: { columns: 2, rows: 2 } })
    const motifs = square.motifs!.map((motif) => ({
      ...motif,
      rounds: rounds.map((work, i) => ({ slot: i === 0 ? 'main' : `color ${i === 1 ? 'B' : 'C'}`, work })),
    })) as typeof square.motifs
    const project = { ...square, ...(motifs && { motifs }) }
    const us = wordsOf(await printed(project, 'US'))
    expect(us).toMatch(/The next one may come out [\d.,]+ (mm|cm|in) to [\d.,]+ (mm|cm|in) side to side\./)
    expect(us).toContain('Colors from the middle outward: main, color B and color C.')
    const uk = wordsOf(await printed(project, 'UK'))
    expect(uk).toContain('Colours from the middle outward: main, colour B and colour C.')
    // Beside its round as well.
    expect(uk).toContain('Round 2 colour B')
    expect(uk).not.toMatch(/\bcolor\b/)
  })

  it('translates rounds, abbreviations and key where other terms are asked for', async () => {
    const words = wordsOf(await printed(example('dovecote-runner'), 'US'))
    expect(words).toContain('Rounds in US terms, translated from UK')
    expect(words).toContain('(sc, hdc, 2 dc, ch 3, 2 dc, hdc, sc) in same sp')
    expect(words).toContain('join with sl st in first sc')
    expect(words).toContain('hdc: half double crochet')
    expect(words).not.toMatch(/\bhtr\b/)
  })

  it('tells the joining round for each way in which it meets neighbours, in the printed terms', async () => {
    const uk = wordsOf(await printed(example('dovecote-runner')))
    expect(uk).toContain('Joining round Not joined to a neighbour yet: motif 1 Work Round 4 as written.')
    expect(uk).toContain('Joined at petals 7 and 8: 17 motifs')
    expect(uk).toContain('ch 1, ss in corresponding picot of neighbour, ch 1, ss in first ch of picot')
    const us = wordsOf(await printed(example('dovecote-runner'), 'US'))
    expect(us).toContain('ch 1, sl st in corresponding picot of neighbor, ch 1, sl st in first ch of picot')
    expect(us).not.toMatch(/picot of neighbour/)
  })

  it('says once what all of a measured motif’s joins come to, and nothing where motifs are sewn', async () => {
    const measured = wordsOf(await printed(example('hedgerow-baby-throw')))
    expect(measured.match(/sl st in the matching place of the neighbor/g)).toHaveLength(1)
    expect(wordsOf(await printed(example('limekiln-cushion')))).not.toContain('Joining round')
  })

  it('begins with the foundation, in the printed terms and for the hand', async () => {
    expect(wordsOf(await printed(example('dovecote-runner'), 'US'))).toContain(
      'Foundation ch 8, join with sl st to form a ring Round 1',
    )
    expect(wordsOf(await printed(example('dovecote-runner')))).toContain(
      'join with ss to form a ring Round 1',
    )
    expect(wordsOf(await printed(example('limekiln-cushion')))).toContain(
      'Foundation make an adjustable ring (magic ring) Round 1',
    )
    const wall = example('orchard-wall-throw')
    const [, , leaf] = wall.motifs!
    const layout = { kind: 'blanket', motif: leaf!.id, columns: 2, rows: 2 } as const
    const left = await printed({ ...wall, hand: 'left', layout, colourways: [] })
    expect(wordsOf(left)).toMatch(/Foundation ch 12, worked on both sides: first along it from left to right/)
  })

  it('prints the name of a round’s colour in full, however long it is', async () => {
    const project = example('limekiln-cushion')
    const [motif] = project.motifs!
    if (motif?.kind !== 'rounds') throw new Error('no rounds')
    const slot = 'Outermost round in the very darkest of all the slates'
    const rounds = motif.rounds!.map((round) => ({ ...round, slot }))
    const read = await printed({ ...project, motifs: [{ ...motif, rounds }] })
    expect(wordsOf(read)).toContain(slot)
  })

  it('prints the instructions of a measured motif, line by line', async () => {
    const words = wordsOf(await printed(example('orchard-gate-garland')))
    expect(words).toContain(
      'Instructions Make an adjustable ring in the color of the heart. Rnd 1: ch 1, 12 sc',
    )
    const uk = wordsOf(await printed(example('orchard-gate-garland'), 'UK'))
    expect(uk).toContain('Rnd 1: 1 ch, 12 dc in ring')
  })

  it('names the motif whose instructions begin a page behind its own', async () => {
    const { pages } = await printed(example('causeway-lap-blanket'))
    const begun = pages.filter(({ words }) => /^(Cobble|Stone|Slab|[A-Z]\w+): instructions /.test(words))
    expect(begun).toHaveLength(1)
    expect(pages.filter(({ words }) => words.startsWith('Instructions'))).toEqual([])
  })

  it('says nothing of how its rounds lie where they lie flat', async () => {
    const words = wordsOf(await printed(example('limekiln-cushion')))
    expect(words).toContain('Colors from the middle outward')
    // A border says how many stitches lie flat at its corners.
    expect(words).not.toMatch(/than lie flat|\b(?:may )?(?:cups?|ruffles?)\b/i)
  })

  it('explains special stitches that the text defines', async () => {
    const project = example('limekiln-cushion')
    const [motif] = project.motifs!
    if (motif?.kind !== 'rounds') throw new Error('no rounds')
    const special = 'Shell: 5 dc in one st'
    const first = { slot: 'Middle', work: 'ch 1, 12 sc in ring, join with sl st in first sc (12 sc)' }
    const read = await printed({ ...project, motifs: [{ ...motif, special, rounds: [first] }] })
    const words = wordsOf(read)
    expect(words).toMatch(/Round 1 Middle ch 1, 12 sc in ring/)
    expect(words).toContain('Special stitches Shell: 5 dc in one st')
    expect(words).not.toContain('Round 2')
    // Before the rounds, as patterns have them; alike where an older file has them as a round.
    expect(words.indexOf('Special stitches')).toBeLessThan(words.indexOf('Rounds as written'))
    const older = { work: `Special stitches: ${special}` }
    const again = await printed({
      ...project,
      motifs: [{ ...motif, special: undefined, rounds: [older, first] }],
    })
    expect(wordsOf(again)).toBe(words)
  })

  it('runs on over pages, and nothing lies below the footer', () => {
    const project = example('orchard-wall-throw')
    const [motif, ...rest] = project.motifs!
    if (motif?.kind !== 'rounds') throw new Error('no rounds')
    const extra = Array.from({ length: 24 }, (_, i) => ({
      slot: 'A colour with a name that is far too long to stand beside its round',
      work: `ch 1, sc in same st as joining, sc in each st around, join with sl st in first sc, which is round ${i + 6} of many more that this motif has`,
    }))
    const long = { ...project, motifs: [{ ...motif, rounds: [...motif.rounds!, ...extra] }, ...rest] }
    const pages = mapPages(createPlanner().plan(long), { date: DATE, paper: 'Letter' })
    const own = pages.filter(({ sections }) => sections.includes('motif'))
    expect(own.length).toBeGreaterThan(2)
    for (const page of own)
      for (const item of page.figure.items)
        if (item.kind === 'text') expect(item.y).toBeLessThan(page.figure.height - 10)
  })
})
