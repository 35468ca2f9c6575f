/** What a text tells of its own stitches, chains, loops and rows. Common practice, no source; counts by hand. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { made, told } from './telling'

const both = (text: string, terms: 'US' | 'UK' = 'US') => [told(text, terms), made(text, terms)]

describe('a stitch that the text explains', () => {
  const hexagon = (
    spike: string,
    words: string,
  ) => `${spike}Rnd 1: Magic ring, ch 3 (counts as dc), dc in ring, ch 1, *2 dc in ring, ch 1; rep from * 4 more times, sl st in top of ch-3. (12 dc, 6 ch-1 sps)
Rnd 2: Sl st in ch-1 sp, ch 3, (dc, ch 2, 2 dc) in same sp, (2 dc, ch 2, 2 dc) in each ch-1 sp around, sl st in top of ch-3. (24 dc, 6 ch-2 sps)
Rnd 3: Sl st in next dc and in ch-2 sp, ch 3, 6 dc in same sp, 7 dc in each ch-2 sp around, sl st in top of ch-3. (42 dc)
Rnd 4: Ch 1, *sc in each of next 7 dc, ${words}; rep from * 5 more times, sl st in first sc. (48 sc)`

  it.each([
    'Spike sc: insert hook between the two groups of Rnd 2 below, pull up a long loop, yo, pull through both loops.\n',
    'Spike sc: sc worked in the space between the groups of Rnd 2.\n',
  ])('takes no stitch of the round before where it goes between two groups: %s', (spike) => {
    expect(both(hexagon(spike, 'spike sc'))).toEqual([[], [12, 24, 42, 48]])
  })

  it('covers the stitch in front of which it goes down', () => {
    const text = `Spike sc: sc worked in next st 2 rnds below.
Rnd 1: Magic ring, 12 sc in ring. (12 sc)
Rnds 2-3: Sc in each sc around. (12 sc)
Rnd 4: *Sc in next sc, spike sc; rep from * around. (12 sc)`
    expect(both(text)).toEqual([[], [12, 12, 12, 12]])
  })

  it('may be explained behind another sentence', () => {
    const text = (name: string) => `Pentagon
Ch 3 at beg of rnd = 1 dc. ${name} (dc, ch 2, dc) in next ch-2 sp. Join all rnds with sl st.
Rnd 1: Magic ring, ch 3, dc in ring, ch 2, (2 dc in ring, ch 2) 4 times, join in top of ch-3.
Rnd 2: Ch 3, dc in next dc, Cnr, (dc in next 2 dc, Cnr) 4 times, join.`
    expect(both(text('Cnr:'))).toEqual([[], [10, 20]])
    expect(both(text('Cnr ='))).toEqual([[], [10, 20]])
  })
})

describe('a long stitch in a stitch that was skipped', () => {
  it('does not send the whole round back', () => {
    const text = `Rnd 1: Magic ring, 16 dc in ring. (16 dc)
Rnd 2: *Dc in next 3 dc, ch 1, sk next dc; rep from * 3 more times. (12 dc, 4 ch-1 sps)
Rnd 3: *Sc in next 3 dc, long dc in next skipped dc of Rnd 1; rep from * 3 more times. (16 sts)`
    expect(both(text)).toEqual([[], [16, 12, 16]])
  })
})

describe('stitches named by what they stand on', () => {
  it.each([
    'in dc over cl',
    'in dc above the next cluster',
    'in dc worked into cl',
    'in dc on top of the cl',
  ])('%s', (words) => {
    const text = `Rnd 1: Magic ring, 1ch, 12dc into ring, ss in first dc. (12 dc)
Rnd 2: 3ch, tr2tog in same st (counts as first cl), 4ch, *miss 1dc, tr3tog in next dc (cl made), 4ch; rep from * 4 more times, miss last dc, ss in top of first cl. (6 cl, 6 4ch-sps)
Rnd 3: 1ch, *1dc in top of cl, (2dc, 3ch, 2dc) in next 4ch-sp; rep from * 5 more times, ss in first dc. (30 dc, 6 3ch-sps)
Rnd 4: 1ch, *1dc ${words}, 2ch, miss 2dc, (2tr, 5ch, 2tr) in next 3ch-sp, 2ch, miss 2dc; rep from * 5 more times, ss in first dc.`
    expect(both(text, 'UK')).toEqual([[], [12, 6, 30, 30]])
  })

  it('are no popcorns where clusters were made', () => {
    const text = (named: string) => `Rnd 1: Magic ring, ch 1, 8 sc in ring, join. (8 sc)
Rnd 2: *Cluster of 3 dc in next sc, ch 3; rep from * 7 more times, join. (8 clusters)
Rnd 3: *Sc in next ${named}, 3 sc in next ch-3 sp; rep from * around, join.`
    expect(told(text('cluster'))).toEqual([])
    expect(told(text('popcorn')).join()).toContain('no-such-stitch')
  })
})

describe('rows', () => {
  const shells = (end: string) => `For the swatch make 26ch.
Row 1: 1dc into 2nd ch from hook, *miss 2ch, 5tr into next ch, miss 2ch, 1dc into next ch; rep from * to end, turn.
Row 2: 3ch (counts as 1tr), 2tr into first dc, *miss 2tr, 1dc into next tr, miss 2tr, 5tr into next dc; rep from * to end, ${end}, turn.
Row 3: 1ch, 1dc into first tr, *miss 2tr, 5tr into next dc, miss 2tr, 1dc into next tr; rep from * to end, working last dc into top of 3ch, turn.`

  it.each([
    'ending last rep with 3tr into last dc',
    'working 3tr instead of 5tr into last dc',
    'ending with 3tr instead of 5tr in last dc',
  ])('end otherwise than they repeat, and turn behind that: %s', (end) => {
    expect(both(shells(end), 'UK')).toEqual([[], [25, 25, 25]])
  })

  it.each([
    '(multiple of 6 + 2; my little sample starts with ch 32)',
    'The one pictured has a chain of 32.',
    'Sample worked over 32 ch.',
  ])('begin on the chain that only the talk before them tells: %s', (talk) => {
    expect(
      both(`Edging\n${talk}\nRow 1: Sc in 2nd ch from hook and in each ch across; turn. (31 sc)`),
    ).toEqual([[], [31]])
  })

  it('have no chain where none is told', () => {
    const text =
      'Edging\nShown in 32 colors.\nRow 1: Sc in 2nd ch from hook and in each ch across; turn. (31 sc)'
    expect(told(text).join()).toContain('no-chain')
  })

  it('leave at the end what the ones before left, where their count agrees', () => {
    const leaf = (count: number) => `The turning ch does not count as a stitch. Make 11ch.
Row 1: 1dc in 2nd ch from hook, 1dc in each of next 8ch, 3dc in last ch, then along the other side of the chain 1dc in each of next 7ch, leave the rest unworked, turn. (19dc)
Row 2: 1ch, 1dc in each of next 8dc, 3dc in next dc, 1dc in each of next 8dc, leave last 2dc, turn. (19dc)
Row 3: 1ch, 1dc in each of next 8dc, 3dc in next dc, 1dc in each of next ${count}dc. Fasten off. (19dc)`
    expect(told(leaf(8), 'UK')).toEqual([])
    expect(told(leaf(7), 'UK').join()).toContain('wrong-end-count')
  })
})

describe('loops', () => {
  it('stay free where the yarn is joined in the other one, and what follows goes there', () => {
    const text = `Rnd 1: Magic ring, 1ch, 10dc into ring, ss in first dc. Fasten off. (10dc)
Rnd 2: Join pink with ss in front loop of any dc, *3ch, 2tr in same loop, 2tr in front loop of next dc, 3ch, ss in same loop, ss in front loop of next dc; rep from * 4 more times, working the last ss in the first front loop. Fasten off.
Rnd 3: Join plum with ss in back loop of any dc of Round 1, *4ch, miss 1dc, ss in back loop of next dc; rep from * 4 more times.`
    expect(told(text, 'UK')).toEqual([])
    expect(readRounds(text, { terms: 'UK' }).rounds[2]!.spaces).toEqual({ 'ch-4': 5 })
  })

  it('of an earlier round carry the chains that begin on them', () => {
    const text = `Rnd 1: Magic ring, 1ch, 24dc in ring, ss in first dc. (24dc)
Rnd 2: *2dc in front loop of next dc, ss in front loop of next dc; rep from * 11 more times.
Rnd 3: In back loops of Rnd 1: 3ch (counts as 1tr), 1tr in same st, 1tr in each of next 2 sts, *2tr in next st, 1tr in each of next 2 sts; rep from * 6 more times, ss in top of 3ch. (32tr)`
    expect(both(text, 'UK')).toEqual([[], [24, 24, 32]])
  })
})

describe('small words', () => {
  it('name the yarn by its letter before a dash', () => {
    const text = `Rnd 1: A – Magic ring, 16 dc in ring. (16)
Rnd 2: B – 2 sc in each dc around. (32)`
    expect(both(text)).toEqual([[], [16, 32]])
  })

  it('say how a stitch is made', () => {
    const text = `Rnd 1: Magic ring, 12 sc in ring. (12 sc)
Rnd 2: *1 sc worked in next st, 2 sc worked in next st; rep from * around. (18 sc)`
    expect(both(text)).toEqual([[], [12, 18]])
  })

  it('tell in a bracket where a skipped stitch lies', () => {
    const text = `Rnd 1: Magic ring, ch 3 (counts as dc), 11 dc in ring, join. (12 dc)
Rnd 2: Ch 1, 2 sc in back loop of each dc around, join. (24 sc)
Rnd 3: Ch 1, *sc in next sc, FPtr around next dc of Rnd 1, sk next sc (behind FPtr); rep from * 11 more times, join. (12 sc, 12 FPtr)`
    expect(both(text)).toEqual([[], [12, 24, 24]])
  })

  it('count the spaces of several groups', () => {
    const text = `Rnd 1: Magic ring, 12 dc in ring. (12 dc)
Rnd 2: *V-st in next dc; rep from * around. (12 V-sts)
Rnd 3: *(4 dc, ch 2, 4 dc) in ch-1 sp of next V-st, V-st in ch-1 sp of next 2 V-sts; rep from * 3 more times, join.`
    expect(made(text)).toEqual([12, 24, 48])
  })

  it('go round the chains that began an earlier round', () => {
    const text = `1st round: 6ch, join with ss. 5ch (to count as 1tr and 2ch), [1tr into ring, 2ch] 5 times, ss to 3rd of 5ch. 6 spaces.
2nd round: 1ch, [1dc, 1htr, 3tr, 1htr, 1dc] into each 2ch space, ss to 1st dc. 6 petals.
3rd round: 1ch, 1dc round stem of 3ch at beg of 1st round, [4ch, 1dc round stem of next tr of 1st round] 5 times, 4ch, ss to 1st dc. 6 loops.`
    expect(both(text, 'UK')).toEqual([[], [6, 42, 6]])
  })

  it('join the yarn in a corner of what is there, before a border', () => {
    const text = `BORDER
With RS of block facing, join navy with sl st in any corner.
Rnd 1: Ch 1, *(sc, ch 2, sc) in corner, 15 sc evenly spaced across side to next corner; rep from * 3 more times, join. (68 sc, 4 ch-2 sps)`
    expect(both(text)).toEqual([[], [68]])
  })

  it('take two circles that are joined for two', () => {
    const text = `FIRST CIRCLE
Rnd 1: Magic ring, 12 sc in ring, join. (12 sc)
Rnd 2: Ch 1, *sc in next sc, ch 5; rep from * around, join. (12 ch-5 sps)
SECOND CIRCLE
Rnd 1: Same as First Circle.
Rnd 2 (joining rnd): Ch 1, *sc in next sc, ch 2, sl st in corresponding ch-5 sp of First Circle, ch 2; rep from * once, *sc in next sc of current circle, ch 5; rep from * 9 more times, join.`
    expect(told(text)).toEqual([])
  })

  it('hold a ring of five chains full with 24 dc, and too full with 29', () => {
    const ring = (count: number) =>
      `Rnd 1: Ch 5, join to form ring, ch 3 (counts as dc), ${count} dc in ring, join.`
    expect(told(ring(23))).toEqual([])
    expect(told(ring(29)).join()).toContain('ring-crowded')
  })

  it.each(['19 fhdc', 'Foundation hdc 19', '19 foundation hdc', 'Fhdc 19'])(
    'make a chain with the stitches of a first row: %s',
    (words) => {
      const text = `The ch 2 at the start of a row never counts as a stitch.
Row 1: ${words}, turn. (19 hdc)
Row 2: Ch 2, hdc in first st, *FPdc around each of next 2 sts, hdc in next st; rep from * across, turn. (7 hdc, 12 FPdc)`
      expect(both(text)).toEqual([[], [19, 19]])
    },
  )

  it('mean loops of stitches where a round is worked in those', () => {
    const text = `Rnd 1: Magic ring, ch 1, 10 sc in ring, sl st in first sc. Fasten off. (10 sc)
Rnd 2: Working in front loops only, (sl st, ch 2, dc, ch 2, sl st) in each st around. Fasten off.
Rnd 3: Working in the free back loops of Rnd 1, join coral with a standing sc in any loop, sc in same loop, 2 sc in each loop around, sl st in first sc. (20 sc)`
    expect(both(text)).toEqual([[], [10, 10, 20]])
  })

  it('call a beginning chain by a name of the text', () => {
    const text = `stch = starting chain, counts as the first stitch
cnr = corner
R1: In a magic circle, ch 3 (stch), 15 dc, join with ss to 3rd ch of stch. {16 sts}
R2: Ch 1, *sc in next 3 sts, (sc, ch 2, sc) in next st; rep from * around. {20 sts}
R3: Ch 1, *sc in next 4 sts, (sc, ch 2, sc) in ch-2 cnr sp, sc in next st; rep from * around.`
    expect(both(text)).toEqual([[], [16, 20, 28]])
  })

  it('name the yarn by its shade, and leave the chain behind it alone', () => {
    const text = `With light color ch 5, join with sl st.
Rnd 1: Ch 3 (counts as dc), 11 dc in ring, join.`
    expect(both(text)).toEqual([[], [12]])
  })

  it('close a picot in the middle of a loop', () => {
    const text = `Rnd 1: Magic ring, ch 1, 12 sc in ring, join. (12 sc)
Rnd 2: Ch 1, *sc in next sc, ch 7, sc in 4th ch from hook (picot made), ch 3; rep from * around, join. (12 sc)`
    expect(both(text)).toEqual([[], [12, 12]])
  })

  it('take "over the 3ch" for a loop, and not for the chain in hand', () => {
    const text = `Round 1: Magic ring, 3ch (does not count as a st), 3dtr, 7tr, 3dtr, 3ch, ss in ring.
Round 2: 1ch, 3dc over the 3ch, 1dc in each of next 13 sts, 3dc over the 3ch, ss in ring. (19 dc)`
    expect(both(text, 'UK')).toEqual([[], [13, 19]])
  })
})

describe('a repeat around loops', () => {
  const loops = (count: string) => `Rnd 1: Magic ring, ch 1, 12 sc in ring, join. (12 sc)
Rnd 2: Ch 1, *sc in next sc, ch 5; rep from * around, join. (12 ch-5 sps)
Rnd 3: Sl st in first loop, ch 1, sc in same loop, *ch 5, sc in next loop; rep from * around, join.${count}`
  const spaces = (text: string) => readRounds(text, { terms: 'US' }).rounds[2]!.spaces

  it('leads back to the first stitch, and says where that is not told', () => {
    expect(spaces(loops(''))).toEqual({ 'ch-5': 12 })
    expect(told(loops('')).join()).toContain('last-repeat-not-said')
  })

  it('says nothing where the count tells it, either way', () => {
    expect(told(loops(' (12 loops)'))).toEqual([])
    expect(spaces(loops(' (12 loops)'))).toEqual({ 'ch-5': 12 })
    expect(spaces(loops(' (11 loops)'))).toEqual({ 'ch-5': 11 })
  })
})

describe('a side that is left out', () => {
  const hexagon = (
    times: number,
  ) => `Rnd 1: Ch 4, join; ch 3 (counts as dc throughout), dc in ring, ch 2, [2 dc in ring, ch 2] 5 times; join.
Rnd 2: Sl st in next dc and in ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 4 more times; join.
Rnd 3: Sl st in next 2 dc and in ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *3 dc in sp between next 2 groups, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 4 more times${times === 6 ? ', 3 dc in last sp between groups' : ''}; join.`

  it('is told at the repeat', () => {
    expect(told(hexagon(6))).toEqual([])
    expect(told(hexagon(5)).join()).toContain('spaces-left')
  })
})
