/** Colors of a page whose parts are worked in yarns of their own, and what else its head says of them. The pages are ours. */
import { describe, expect, it } from 'vitest'
import { projectOfPage } from '../../../src-core/page/project-of-page'
import { facts, only } from './facts'

const PARTS = `Clover Corner

Materials: 4-ply cotton (50 g / 125 m) in Moss (M), Blush (B) and Gold (G); 3 mm hook.

LEAF (make 2)
With M make 9 ch.
Round 1: dc in 2nd ch from hook, htr in next ch, tr in next 4 ch, htr in next ch, (dc, 2 ch, dc) in last ch; now along the other side of the chain: htr in next ch, tr in next 4 ch, htr in next ch, dc in last ch. Ss to first dc.

FLOWER
With G make an adjustable ring.
Round 1: 1 ch, 10 dc into the ring, ss to first dc. Change to B.
Round 2: *2 ch, 2 tr in same place as ss, (2 tr, 2 ch, ss) in next dc**, ss in next dc; repeat from * 4 more times ending last rep at **.`

/** Names of yarn by the colors of each motif. */
const yarnsOf = (text: string, terms: 'US' | 'UK') => {
  const project = projectOfPage(text, terms, undefined)!
  const name = (id: string) => project.yarns!.find((yarn) => yarn.id === id)!.name
  return project.motifs!.map((motif) => [
    motif.kind === 'rounds' ? motif.rounds!.map(({ slot }) => slot) : [],
    ...project
      .colourways!.filter((way) => way.motif === motif.id)
      .map(({ yarns }) => Object.entries(yarns!).map(([slot, id]) => `${slot}: ${name(id)}`)),
  ])
}

describe('parts in colors of their own', () => {
  it('begin in what their ring or chain was made with, and take their colors with them', () => {
    expect(yarnsOf(PARTS, 'UK')).toEqual([
      [['colour M'], ['colour M: Moss']],
      [
        ['colour G', 'colour B'],
        ['colour G: Gold', 'colour B: Blush'],
      ],
    ])
  })

  it('have the yarn that is called like the color in the rounds', () => {
    const text = `Lane Coaster
Yarn: DK cotton in red, green and dusty rose
Rnd 1: With green, make a magic ring, ch 1, 8 sc in ring, sl st in first sc.
Rnd 2: Join dusty rose, ch 1, 2 sc in each sc around, sl st in first sc.
Rnd 3: With red, ch 1, sc in each sc around, sl st in first sc.`
    expect(yarnsOf(text, 'US')).toEqual([
      [
        ['green', 'dusty rose', 'red'],
        ['green: DK cotton, green', 'dusty rose: DK cotton, dusty rose', 'red: DK cotton, red'],
      ],
    ])
  })
})

describe('letters of colors', () => {
  const roles = (head: string) =>
    only(facts(head), 'yarn').map(({ role, yarn }) => [role, yarn.name, yarn.ballGrams, yarn.ballMetres])
  it.each([
    ['Yarn: Cotton in Moss (M), Blush (B)', ['M', 'B'], ['Moss', 'Blush']],
    ['Yarn: Cotton in Deep Teal (T), Old Yellow (Y)', ['T', 'Y'], ['Deep Teal', 'Old Yellow']],
    ['Yarn: worsted cotton, Color A Slate and Color B Chalk', ['A', 'B'], ['Slate', 'Chalk']],
  ])('%s', (head, letters, names) => {
    expect(roles(head).map(([role]) => role)).toEqual(letters)
    expect(roles(head).map(([, name]) => name)).toEqual(names)
  })

  it('are none of a size or weight in brackets', () => {
    expect(roles('Yarn: DK cotton in size medium (S), 50 g').map(([role]) => role)).toEqual([null])
  })

  it('share what a ball weighs', () => {
    expect(roles('Yarn: Worsted cotton, 85 g / 125 m, Color A Slate and Color B Chalk')).toEqual([
      ['A', 'Slate', 85, 125],
      ['B', 'Chalk', 85, 125],
    ])
  })
})

describe('sizes of two measures', () => {
  const OVAL = `Ch 8.
Rnd 1: Sc in 2nd ch from hook and in each of next 5 ch, 3 sc in last ch; working on other side of foundation ch, sc in next 5 ch, 2 sc in last ch; join with sl st to first sc.`
  const measured = (size: string, rounds: string) => {
    const motif = projectOfPage(`Coaster\nFinished size: ${size}\n${rounds}`, 'US', undefined)!.motifs![0]!
    return motif.kind === 'rounds' ? [motif.measured, motif.instructions] : []
  }
  it.each([
    ['14 x 10 cm', { length: 140, width: 100 }],
    ['10 x 14 cm', { length: 140, width: 100 }],
    ['10 cm wide x 14 cm long', { length: 140, width: 100 }],
    ['14 cm wide x 10 cm long', { length: 100, width: 140 }],
  ])('are length and width of an oval: %s', (size, sizes) => {
    expect(measured(size, OVAL)).toEqual([sizes, undefined])
  })

  it('stay in words for what is as long as wide', () => {
    const round = 'Rnd 1: In magic ring, ch 1, 8 sc, sl st in first sc.'
    expect(measured('14 x 10 cm', round)).toEqual([undefined, 'Finished size: 14 x 10 cm'])
    expect(measured('10 x 10 cm', round)[0]).not.toBeUndefined()
  })
})

it('a designer is named before a year, too', () => {
  for (const line of ['Design: Ada Birch © 2026', 'Design: Ada Birch, 2026', '© 2026 Ada Birch'])
    expect(only(facts(`Meadow Coaster\n${line}`), 'designer').map(({ designer }) => designer)).toEqual([
      'Ada Birch',
    ])
})

it('a size told in passing is that of the motif, whatever the hook', () => {
  const told = (line: string) =>
    only(facts(`Buttercup\n\nHello all! ${line}`), 'size').map(({ size }) => size)
  expect(told('It is about 8 cm / 3" across with my 4 mm hook and DK cotton.')).toEqual([
    { of: 'motif', sizes: [['across', 80]], blocked: null },
  ])
  expect(told('I made these with my 4 mm hook.')).toEqual([])
})

describe('the letter of the first colorway', () => {
  const codeOf = (text: string) => projectOfPage(text, 'US', undefined)!.colourways?.map(({ code }) => code)

  it('is none that the pattern calls a color by', () => {
    const text = `Coaster

Materials
DK cotton
A: cream
B: Sunflower yellow

Rnd 1: With color A, ch 4, 11 dc in 4th ch from hook, join with sl st in top of beg ch. (12 dc)
Rnd 2: With color B, ch 3, dc in same st, 2 dc in each st around, join with sl st in top of beg ch-3. (24 dc)`
    expect(codeOf(text)).toEqual(['C'])
  })

  it('is A where no color is called by a letter', () => {
    const text = `Coaster

Yarn: DK cotton in cream (50 g / 125 m)

Rnd 1: Ch 4, 11 dc in 4th ch from hook, join with sl st in top of beg ch. (12 dc)`
    expect(codeOf(text)).toEqual(['A'])
  })
})
