/** Ways in which pages name sizes, yarns, hooks and titles: pages as designers send them, and leaflets of a century ago. */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { takeApart } from '../../../src-core/notation/take-apart'
import { proposalsFor, proposalsOfText, takeProposals, withPage } from '../../../src-core/page/proposals'
import { readPage } from '../../../src-core/page/read-page'
import { facts, only, US } from './facts'

const sizes = (head: string) => only(facts(head), 'size').map(({ size }) => size.of === 'motif' && size.sizes)
const yarns = (head: string, terms: 'US' | 'UK' = 'US') =>
  only(facts(head, terms), 'yarn').map(({ yarn, role }) => [role, yarn.name, yarn.ballGrams, yarn.ballMetres])

describe('a size that names its motif', () => {
  it.each([
    ['Finished hexagon: 7" from side to side', [['sideToSide', 177.8]]],
    ['Finished size of hexagon: 7" side to side', [['sideToSide', 177.8]]],
    ['Finished size of each hexagon: 7 inches from side to side', [['sideToSide', 177.8]]],
    ['Size of finished motif: 10 cm across', [['across', 100]]],
    ['Finished square: 6" x 6"', [['sideToSide', 152.4]]],
    ['Motif measures: 4" across', [['across', 101.6]]],
    ['Size, 5 inches', [['across', 127]]],
  ])('is one: %s', (head, expected) => {
    expect(sizes(`Millrace Hexagon\n\n${head}`)).toEqual([expected])
  })

  it('of two pieces is that of the first', () => {
    expect(sizes('Finished size: Flower about 3 1/2" [9 cm] across; leaf about 2" [5 cm] long')).toEqual([
      [['across', 88.9]],
    ])
    expect(sizes('Size: square 15 cm across, flower 6 cm across')).toEqual([[['sideToSide', 150]]])
  })
})

describe('yarns that are named before their colors', () => {
  it.each([
    [
      'Materials\nFellside Worsted (100% wool, 100 g / 200 m [219 yds])\n  A: Fog\n  B: Heather',
      [
        ['A', 'Fellside Worsted, Fog', 100, 200],
        ['B', 'Fellside Worsted, Heather', 100, 200],
      ],
    ],
    [
      'You will need\nHawthorn DK, 50g ball/120m: \nA - Oatmeal x 1 ball\nB - Blackberry x 1 ball\n4mm hook',
      [
        ['A', 'Hawthorn DK, Oatmeal', 50, 120],
        ['B', 'Hawthorn DK, Blackberry', 50, 120],
      ],
    ],
    [
      'Yarn\nHawthorn DK (50 g ball, 120 m)\nMC: Oatmeal, 2 balls\nCC: dusty pink, 1 ball',
      [
        ['MC', 'Hawthorn DK, Oatmeal', 50, 120],
        ['CC', 'Hawthorn DK, dusty pink', 50, 120],
      ],
    ],
  ])('keep their name and their capitals: %s', (head, expected) => {
    expect(yarns(head)).toEqual(expected)
  })
})

describe('an old leaflet', () => {
  const HEAD =
    'No. 214. STAR DOILY.\n\nMATERIALS: Mercerized Crochet Cotton, size 20, White, 1 ball of 175 yds. Steel crochet hook No. 9.\n\nSIZE: Doily measures about 6 inches in diameter.'

  it('has its name without its number, its hook, its size', () => {
    const list = facts(HEAD)
    expect(only(list, 'name').map(({ name }) => name)).toEqual(['Star Doily'])
    expect(only(list, 'hook').map(({ hook }) => hook)).toEqual([1.4])
    expect(sizes(HEAD)).toEqual([[['across', 152.4]]])
  })

  it('has thread with its length and color', () => {
    const [yarn, ...others] = only(facts(HEAD), 'yarn')
    expect(others).toEqual([])
    expect(yarn!.yarn).toMatchObject({
      name: 'Mercerized Crochet Cotton, size 20, White',
      ballMetres: 160.02,
      fibre: 'cotton',
    })
  })
})

describe('a page in centimeters', () => {
  it('speaks of centimeters where it is read by itself', () => {
    const page = 'Measurements: 14 cm x 14 cm\nTension: 17 dc and 9 rows to 10 cm.'
    const values = proposalsOfText(page + US, 'US').map(({ value }) => value)
    expect(values).toContain('17 dc and 9 rows to 10 cm')
    expect(values).toContain('14 cm side to side')
  })
})

describe('a title', () => {
  const named = (page: string) => only(readPage(page, 'US'), 'name').map(({ name, motif }) => [name, motif])
  it.each([
    ['Millrace Hexagon Throw', 'First Hexagon', 'Hexagon'],
    ['Millrace Hexagon Throw', '', 'Hexagon'],
    ['African Flower Hexagon', '', 'African Flower Hexagon'],
    ['Classic Granny Square', '', 'Classic Granny Square'],
    ['Circle Coaster in the Round', '', 'Circle Coaster in the Round'],
    ['Triangle Granny', '', 'Triangle Granny'],
    ['Granny Square Blanket', '', 'Granny square'],
    ['African Flower Cushion Cover', '', 'Flower'],
    ['Sunny Throw', '', 'Sunny Throw'],
    ['Tollgate Marigold with Leaf', 'FLOWER', 'Flower'],
    ['Bramble Lane Square', 'Square', 'Bramble Lane Square'],
    ['Meadow Coaster', '', 'Meadow Coaster'],
    ['Bell Motif', 'CENTER', 'Bell Motif'],
  ])('names the page, and the motif by its kind: %s, %s', (title, part, motif) => {
    expect(named(`${title}\nby Ada Birch\n\nHook: 4 mm\n\n${part}${US}`)).toEqual([[title, motif]])
  })

  const page = `Millrace Hexagon Throw\n\nYarn: DK cotton (50 g/125 m) in Fog (A)\n\nWith A, make a ring.${US}`
  const begun: Project = {
    ...{ format: 'petalyard-project', version: 1, title: '' },
    yarns: [
      { id: 'y1', name: 'Main yarn', ballGrams: 50, ballMetres: 125, assumed: ['ballGrams', 'ballMetres'] },
      { id: 'y2', name: 'Yarn 2', ballGrams: 50, ballMetres: 125, assumed: ['ballGrams', 'ballMetres'] },
      { id: 'y3', name: 'Second yarn', ballGrams: 50, ballMetres: 125, assumed: ['ballGrams', 'ballMetres'] },
      {
        id: 'y4',
        name: 'Second yarn',
        ballGrams: 50,
        ballMetres: 125,
        assumed: ['ballGrams'],
        onHandBalls: 2,
      },
      { id: 'y5', name: 'Yarn', ballGrams: 40, ballMetres: 90 },
    ],
    motifs: [
      { id: 'm1', name: 'Flower', kind: 'rounds', rounds: [{ slot: 'color A', work: '8 sc in ring' }] },
    ],
    colourways: [{ id: 'c1', motif: 'm1', yarns: { 'color A': 'y1' } }],
    joining: { rule: 'tips', yarn: 'y3' },
    layout: { kind: 'blanket', motif: 'm1' },
  }
  const taken = (project: Project) => {
    const paged = withPage(project, 'm1', page, 'US')
    return takeProposals(
      paged,
      'm1',
      proposalsFor(paged, 'm1', 'round').map(({ id }) => id),
      'round',
    )
  }

  it('names an untitled project, and none that has a name', () => {
    expect(taken(begun)).toMatchObject({ title: 'Millrace Hexagon Throw', motifs: [{ name: 'Hexagon' }] })
    expect(taken({ ...begun, title: 'For Ines' })).toMatchObject({
      title: 'For Ines',
      motifs: [{ name: 'Hexagon' }],
    })
  })

  it('comes with yarns that those which nothing uses make room for', () => {
    const names = taken(begun).yarns!.map(({ id, name }) => [id, name])
    // What somebody has on hand or entered stays, and what something is worked in.
    expect(names).toEqual([
      ['y3', 'Second yarn'],
      ['y4', 'Second yarn'],
      ['y5', 'Yarn'],
      ['y6', 'Fog'],
    ])
  })
})

describe('a border that goes round the joined motifs', () => {
  const PAGE = `${US.trim()}

Second and Following Circles
Work as for First Circle to end of Rnd 1.

Edging
Join D in any ch-3 sp.
Rnd 1: Ch 1, 3 sc in each ch-3 sp around, join.
Rnd 2: Ch 1, sc in each sc around, join.
Fasten off.

Finishing
Weave in all ends.`
  const notes = (page: string) => only(readPage(page, 'US'), 'notes').map(({ text }) => text)

  it('is no round of the motif, and stays with its heading and its color among the instructions', () => {
    expect(takeApart(PAGE, 'US', 'US').rounds).toHaveLength(2)
    expect(notes(PAGE)).toEqual([
      'Second and following circles: Work as for First Circle to end of Rnd 1.',
      'Edging: Join D in any ch-3 sp.\nRnd 1: Ch 1, 3 sc in each ch-3 sp around, join.\nRnd 2: Ch 1, sc in each sc around, join.\nFasten off.',
      'Finishing: Weave in all ends.',
    ])
  })

  it('but one of the motif itself is', () => {
    const own = `${US.trim()}\n\nEdging\nRnd 3: Ch 1, sc in each st around, join.`
    expect(takeApart(own, 'US', 'US').rounds).toHaveLength(3)
    const single = `${US.trim()}\n\nEdging\nRnd 1: Ch 1, sc in each st around, join.`
    expect(takeApart(single, 'US', 'US').rounds).toHaveLength(3)
  })
})
