/** What stands over the lines of a page that hold no rounds, in the words pages use. Common practice, no source. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { SECTIONS } from '../../../src-core/notation/sections'

const ROUNDS = `Ch 4, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st to top of ch-3. (12 dc)
Rnd 2: Ch 1, 2 sc in each dc around; join. (24 sc)`

const read = (text: string) => {
  const { rounds, findings } = readRounds(text, { terms: 'US' })
  return {
    told: findings.filter(({ severity }) => severity !== 'note').map(({ code, where }) => `${where} ${code}`),
    made: rounds.map(({ made }) => made),
  }
}
const RIGHT = { told: [], made: [12, 24] }

/** What a stitch is explained by is read; all other sections may say whatever they like. */
const PLAIN = [...SECTIONS].flatMap(([label, kind]) =>
  kind === 'explained' || kind === 'opening' ? [] : [label],
)

describe('sections of a page', () => {
  it.each(PLAIN)('"%s" before the rounds takes nothing from them', (label) => {
    const heading = label[0]!.toUpperCase() + label.slice(1)
    expect(
      read(`Hill farm coaster\n${heading}: chain, slip stitch, 3 things and 10 cm of patience\n\n${ROUNDS}`),
    ).toEqual(RIGHT)
    expect(read(`${heading.toUpperCase()}\nSay 2 or 3, as you like.\n\n${ROUNDS}`)).toEqual(RIGHT)
  })

  it.each([...SECTIONS].flatMap(([label, kind]) => (kind === 'opening' ? [label] : [])))(
    '"%s" stands over the rounds themselves',
    (label) => {
      const heading = label[0]!.toUpperCase() + label.slice(1)
      expect(read(`Hill farm coaster\n\n${heading}\n${ROUNDS}`)).toEqual(RIGHT)
      expect(read(`Hill farm coaster\n\n${heading}:\n\n${ROUNDS}`)).toEqual(RIGHT)
    },
  )

  it.each(['Care', 'Blocking', 'Copyright', 'Finishing touches', 'Variations', 'Notes for testers'])(
    '"%s" behind the rounds takes nothing from them',
    (heading) => {
      expect(read(`${ROUNDS}\n\n${heading}: pin to 10 cm and leave it for 2 days.`)).toEqual(RIGHT)
    },
  )
})

describe('signs around the name of a part', () => {
  const two = (flower: string, leaf: string) => `${flower}

Rnd 1: Ch 1, 10 sc in a magic ring; join with sl st to first sc. (10 sc)
Rnd 2: Ch 1, *2 sc in next sc* 10 times; join. (20 sc)

${leaf}

Ch 9.
Row 1: Sc in 2nd ch from hook, sc in next 7 ch. (8 sc)`

  it.each([
    ['* FLOWER *', '* LEAF * (make 2)'],
    ['**FLOWER**', '**LEAF** (make 2)'],
    ['~ Flower ~', '~ Leaf (make 2) ~'],
    ['--- Flower ---', '--- Leaf ---'],
    ['=== Flower ===', '=== Leaf === (cut 2)'],
    ['_Flower_', '_Leaf_'],
    ['• Flower •', '• Leaf • (work both)'],
  ])('say nothing: %s, %s', (flower, leaf) => {
    expect(read(two(flower, leaf))).toEqual({ told: [], made: [10, 20, 8] })
  })

  it('and stars round work are told apart', () => {
    const text = `Rnd 1: Ch 1, 10 sc in a magic ring; join with sl st to first sc. (10 sc)
Rnd 2:
*2 sc in next sc* 10 times; join. (20 sc)`
    expect(read(text).made).toEqual([10, 20])
  })
})
