/** How often, told before what is worked, and labels that say what is made. (Common practice, no source.) */
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'

const start = 'Rnd 1: 6 sc in magic ring. (6)\n'

describe('How often, told first', () => {
  it.each([
    'Rnd 2: 6 x (2 sc in next sc). (12)\nRnd 3: 6 x (sc in next sc, 2 sc in next sc). (18)',
    'Rnd 2 = 6 x inc. (12)\nRnd 3 = 6 × (sc, inc). (18)',
    'Rnd 2: work 6 x inc (12)\nRnd 3: 6 x [1 sc, 1 inc] (18)',
    'Rnd 2: 6 times: (2 sc in next sc), join. (12)\nRnd 3: work the following 6 times: sc in next sc, 2 sc in next sc. (18)',
    'Rnd 2: 6 inc - 12 sc\nRnd 3: do this 6 times: sc in next sc, 2 sc in next sc - 18 sc',
    'Rnd 2: 2 sc in each sc. (12)\nRnd 3: *sc in next sc, 2 sc in next sc; rep *...* around. (18)',
    'Rnd 2: 2 sc in each sc. (12)\nRnd 3: *sc in next sc, 2 sc in next sc; rep *…* 5 more times. (18)',
  ])('is how often: %s', (words) => {
    expect(told(start + words)).toEqual([])
    expect(made(start + words)).toEqual([6, 12, 18])
    expect(told((start + words).replace('18', '19'))).not.toEqual([])
  })
})

describe('A label or a place says what is made', () => {
  it.each(['Foundation chain: 14.', 'Chain: 14', 'Starting chain = 14 ch.', 'Base ch: 14'])('%s', (label) => {
    const rows = `${label}\nRow 1: Sc in 2nd ch from hook and in each ch across; turn. (13 sc)\nRow 2: Ch 1, sc in each sc across. (13 sc)`
    expect(told(rows)).toEqual([])
    expect(told(rows.replaceAll('13', '14'))).not.toEqual([])
  })

  it.each(['24 dc in ring of ch 8', 'work 24 dc in a ring of 8 ch', 'in a ring of 8 chains work 24 dc'])(
    '%s',
    (words) => {
      expect(told(`Rnd 1: ${words}, join with sl st in first dc. (24 dc)`)).toEqual([])
      expect(told(`Rnd 1: ${words.replace('8', '4')}, join with sl st in first dc. (24 dc)`)).not.toEqual([])
    },
  )
})

it('“Dc across to corner” goes over all of them, also repeated without a mark', () => {
  const square = `Rnd 1: Ch 4, join to form ring. Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times; join in top of ch-3. (12 dc, 4 ch-2 sps)
Rnd 2: Ch 3 (counts as dc), dc across to corner, (2 dc, ch 2, 2 dc) in corner, repeat all the way around; join in top of ch-3. (28 dc, 4 ch-2 sps)`
  expect(told(square)).toEqual([])
  expect(made(square)).toEqual([12, 28])
})

it('the stop of an abbreviation ends no place: “in next 3 ch. sp. 3tr, 3 ch, 3tr.”', () => {
  const granny = `Round 1: 4 ch, ss to form a ring. 3 ch (counts as 1 tr), 2 tr in ring, 3 ch, (3 tr in ring, 3 ch) 3 times, ss in 3rd ch. (12 tr)
Round 2: ss to corner sp. 3 ch, 2 tr, 3 ch, 3 tr in same sp, 1 ch. *in next 3 ch. sp. 3tr, 3 ch, 3tr. 1 ch. Rep from * twice more. ss to 3rd ch. (24 tr)`
  expect(told(granny, 'UK')).toEqual([])
  expect(made(granny, 'UK')).toEqual([12, 24])
})
