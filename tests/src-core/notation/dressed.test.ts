/** Pages as they are dressed and worded: bold marks, bars, letters for stitches, rings of yarn, labels that work nothing. */
import { describe, expect, it } from 'vitest'
import { withoutDress } from '../../../src-core/notation/dress'
import { made, told } from './telling'

describe('Marks that dress a page', () => {
  it.each([
    ['**Rnd 1** 12 sc in a magic ring. (12 sc)\n**Rnd 2** 2 sc in each **sc** around. (24 sc)'],
    ['Rnd 1 | 12 sc in a magic ring | 12 sc\nRnd 2 | 2 sc in each sc around. | 24 sc'],
    ['R1 ▸ 12 sc in a magic ring (12)\nR2 ▸ 2 sc in each sc around (24)'],
  ])('are put out of the way: %j', (text) => {
    expect([made(text), told(text)]).toEqual([[12, 24], []])
    expect(withoutDress(text)).toHaveLength(text.length)
  })

  it('are none where they belong to a repeat', () => {
    const text = '**2 dc in next sp, ch 2** 5 times, rep from ** to **'
    expect(withoutDress(text)).toBe(text)
  })
})

describe('Letters for stitches', () => {
  it('are those that the text gives', () => {
    const text =
      'X = sc, V = inc (2 sc in 1 st), A = dec (2 sc together)\nR1: 6X in MR (6)\nR2: 6V (12)\nR3: (X, V) x 6 (18)\nR4: (X, A) x 6 (12)'
    expect([made(text), told(text)]).toEqual([[6, 12, 18, 12], []])
  })

  it('are short for a standing stitch', () => {
    const text =
      'Rnd 1: 6 sc in a magic ring. (6 sc)\nRnd 2: St-dc in sp between any 2 sc, dc in same sp, *2 dc in sp between next 2 sc; rep from * 4 more times. (12 dc)'
    expect([made(text), told(text)]).toEqual([[6, 12], []])
  })
})

describe('A ring', () => {
  it.each(['Make a ring; 12 sc in ring.', 'Ring of thread, 12 sc in ring.', '12 sc into the loop.'])(
    'of yarn is one however it is called: %s',
    (ring) => {
      const text = `Rnd 1: ${ring} (12 sc)`
      expect([made(text), told(text)]).toEqual([[12], []])
    },
  )
})

describe('A label that works nothing', () => {
  it.each([
    'Spiral: never join, never turn. Repeat the last rnd until big enough if you like.',
    'Shell in shell: work shell in ch-2 sp of next shell.',
  ])('is no part of the pattern: %s', (label) => {
    const text = `${label}\nRnd 1: 6 sc in a magic ring. (6 sc)\nRnd 2: 2 sc in each sc around. (12 sc)`
    expect([made(text), told(text)]).toEqual([[6, 12], []])
  })
})

describe('A label over the whole page', () => {
  it('is no part of the pattern either', () => {
    const text = `This month's freebie: a dish scrubber!
Oddment of scrubby yarn, 4mm hook. (UK stitches: dc = double crochet, ss = slip stitch.) The 1ch does not count.

Round 1: 8dc into a magic ring, ss to first dc. (8dc)
Round 2: 1ch, 2dc in each dc, ss to first dc. (16dc)`
    expect([made(text, 'UK'), told(text, 'UK')]).toEqual([[8, 16], []])
  })
})

describe('Words of other languages in English', () => {
  it.each([
    'Attach between 2 tr, 3 ch (= 1st tr), 1 tr in the same space, * 2 tr in the next space between 2 tr *, repeat from * to * 10 more times.',
  ])('attach the yarn without a word for it: %s', (round) => {
    const text = `Rnd 1: Magic ring, 3 ch (worth 1 tr), 11 tr in the ring. (12 tr)\nRnd 2: ${round} (24 tr)`
    expect([made(text, 'UK'), told(text, 'UK')]).toEqual([[12, 24], []])
  })

  it('raise chains, walk, and skip the sc', () => {
    const text = `Rnd 1: Magic ring, raise 3 ch (worth 1 dc), 1 dc in the ring, 2 ch, *2 dc in the ring, 2 ch*, repeat from * to * 4 times more. (12 dc)
Rnd 2: Walk with sl st to the space of 2 ch, raise 3 ch (worth 1 dc), 6 dc in the same space, 1 sc in next dc, *7 dc in the next space of 2 ch, skip next dc, 1 sc in next dc*, repeat from * to * 4 times more. (42 dc and 6 sc)
Rnd 3: 1 ch, *1 sc in each of the next 7 dc, skip the sc*, repeat from * to * 5 times more. (42 sc)`
    expect(made(text)).toEqual([12, 48, 42])
    expect(told(text).filter((each) => !/passed over/.test(each))).toEqual([])
  })
})

describe('Counts', () => {
  const shells =
    'Shell: (2 dc, ch 2, 2 dc) in place indicated.\n\nRnd 1: 16 sc in a magic ring. (16 sc)\nRnd 2: Ch 1, *Shell in next sc, sk 1 sc, (dc, ch 5, dc) in next sc, sk 1 sc; rep from * 3 more times. '
  it('of shells and of what stands between them are apart', () => {
    expect(told(`${shells}(4 Shells, 8 dc)`)).toEqual([])
    expect(told(`${shells}(4 Shells, 10 dc)`)).toHaveLength(1)
    expect(told(`${shells}(5 Shells, 8 dc)`)).not.toEqual([])
  })

  const vees =
    'V-stitch (V-st): (dc, ch 1, dc) in indicated st.\n\nRnd 1: 12 sc in a magic ring. (12 sc)\nRnd 2: Ch 1, *V-st in next sc, ch 1; rep from * around. '
  it('of spaces between V-stitches leave out those within', () => {
    expect(told(`${vees}(12 V-sts, 12 ch-1 sps between V-sts)`)).toEqual([])
    expect(told(`${vees}(12 V-sts, 11 ch-1 sps between V-sts)`)).toHaveLength(1)
  })
})

describe('Ends of repeats', () => {
  it('come early where the last one ends with what stands within it', () => {
    const text = `Rnd 1: 12 sc in a magic ring. (12 sc)
Rnd 2: Ch 1, *sc in next sc, ch 3, sk 1 sc; rep from * around; join with sl st in first sc. (6 sc)
Rnd 3: Ch 1, sc in first sc, *7 dc in next ch-3 sp, sc in next sc; rep from * around, ending last rep with 7 dc in last ch-3 sp; join with sl st in first sc. (42 dc, 6 sc)`
    expect([made(text), told(text)]).toEqual([[12, 6, 48], []])
  })

  it('span what is left with a chain as long as another one', () => {
    const text = `Rnd 1: 33 sc in a magic ring; join with sl st in first sc. (33 sc)
Rnd 2: Sl st in next 2 sc, ch 1, sc in same sc, ch 5, skip next 5 sc, sc in next sc, ch 5, *skip next 4 sc, sc in next sc, ch 5, skip next 5 sc, sc in next sc, ch 5; rep from * 1 more time; join with sl st in first sc. (6 sc)`
    expect([made(text), told(text)]).toEqual([[33, 6], []])
  })
})
