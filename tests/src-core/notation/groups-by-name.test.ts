/** Groups that a text names, counts and begins in words of its own. Common practice, no source; counts by hand. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { made, told } from './telling'

const both = (text: string, terms: 'US' | 'UK' = 'US') => [told(text, terms), made(text, terms)]

describe('a group that the text explains', () => {
  const square = (count: string) => `A "group" in this pattern means 3 trebles worked into the same place.
Round 1: 5ch, ss to form a ring. 3 ch, 2 tr into ring, 3 ch. *Work a group into the ring, make 3 chain; repeat from * two more times. Join with a slip stitch to the top of the 3 chain.
Round 2: Slip stitch along to the first corner space. Into this corner space work 3 chain (your first treble), 2 trebles, 3 chain, 1 group. *Into the next corner space work 1 group, 3 chain, 1 group; repeat from * two more times. Join as before. You have ${count}.
Round 3: Slip stitch along to the first corner space. Into it work 3 chain (your first treble), 2 trebles, 3 chain, 1 group. *Work a group into the gap between the two groups on the side; then into the next corner space work 1 group, 3 chain, 1 group; repeat from * two more times, and work a last group into the last gap. Join as before.`

  it('is counted with the one that its chains begin', () => {
    expect(both(square('eight groups'), 'UK')).toEqual([[], [12, 24, 36]])
  })

  it('is held against a wrong number of them', () => {
    expect(told(square('nine groups'), 'UK').map((line) => line.split(' ')[0])).toEqual([
      'rounds/wrong-end-count',
    ])
  })

  it('is a group of plain stitches where nothing draws them together, though it is called a cluster', () => {
    const text = (how: string) => `Special stitch: cluster = ${how}
Rnd 1: Ch 4, slip to make a ring. Ch 3 + 2 dc (first cluster), ch 2, [cluster, ch 2] x 3 into ring. Slip to top of ch 3.`
    expect(both(text('3 dc in one space, nothing fancy'))).toEqual([[], [12]])
    expect(
      made(text('3 dc in one space, leaving the last loop of each on the hook, draw through all')),
    ).toEqual([6])
  })
})

describe('the end of a round', () => {
  const ring = 'R1: Magic ring, 3ch, 15tr into the ring, ss to the top of the 3ch. 16 trebles.\n'

  it.each([
    "repeat from * until you've been all the way round",
    'repeat from * until you have gone around',
    'repeat from * until you are back at the beginning',
  ])('is meant by "%s"', (words) => {
    const text = `${ring}R2: 4ch (a treble and a 1ch space), *1tr in the next tr, 1ch; ${words}, ss to the 3rd of those 4ch. 16 trebles with 16 little windows.`
    expect(both(text, 'UK')).toEqual([[], [16, 16]])
  })

  it('may lie in the stitch of the joining, which nothing else was worked in', () => {
    const heart = (last: string) => `R1. Magic ring, 1ch, 12dc in the ring, ss in first dc.
R2. 3ch (doesn't count as a st), 3dtr in next dc, 3tr in next dc, 2tr in next dc, 1htr in each of next 2dc, (1tr, 1dtr, 1tr) in next dc, 1htr in each of next 2dc, 2tr in next dc, 3tr in next dc, 3dtr in last dc, 3ch, ${last}.`
    expect(both(heart('ss in same dc as the joining ss of R1'), 'UK')).toEqual([[], [12, 23]])
    expect(told(heart('ss in same dc as last dtr'), 'UK')).toHaveLength(1)
  })
})

describe('over how many stitches a pattern goes', () => {
  const rows =
    'Row 1 (RS): Sc in 2nd ch from hook and in each ch across; turn. (37 sc)\nRow 2: Ch 1, sc in each sc across, turn. (37 sc)'

  it.each([
    'Chain a multiple of 3 plus 2; the sample is given here.\n\nPicot: Ch 3, sl st in top of last sc made.\n\nCh 38.',
    'Make a chain of any multiple of 6 sts plus 2 (for the sample, 38 ch).',
    'Ch a multiple of 6 + 2 (sample: 38).',
    'Chain 38 (multiple of 6 plus 2).',
  ])('makes no chain but that of the sample: "%s"', (words) => {
    expect(both(`${words}\n${rows}`)).toEqual([[], [37, 37]])
  })

  it.each([
    'Rows 1-2 form the pattern.',
    'The last 2 rows set the patt.',
    'Row 2 forms the pattern and is repeated.',
  ])('is told behind the rows, which adds none: "%s"', (words) => {
    const repeated = `Ch 38.\n${rows}\nRow 3: Rep Row 2.\n${words} Fasten off.`
    expect(both(repeated)).toEqual([[], [37, 37, 37]])
  })
})

describe('a motif joined to the first', () => {
  const first = `FIRST MOTIF
Ch 8. Join with sl st to form ring.
1st rnd: 16 s c in ring. Sl st in first s c.
2nd rnd: * Ch 8, s c in each of next 2 s c; repeat from * around. Sl st in first s c.
3rd rnd: In each loop around make s c, 3 d c, ch 3, 3 d c and s c. Sl st in first s c. Break off.

SECOND MOTIF
Work as for First Motif until 2nd rnd is completed.
3rd rnd: In first loop make s c and 3 d c, ch 1, sl st in a ch-3 loop of First Motif, ch 1, 3 d c and s c in same loop on Second Motif, then `

  it.each(['complete rnd as for First Motif with no more joinings', 'finish rnd as for First Motif'])(
    'has all stitches of its round where the rest is worked like it: "%s"',
    (words) => {
      expect(made(`${first}${words}.`).at(-1)).toBe(8 * 8)
    },
  )
})

describe('V-stitches in rows', () => {
  const rows = (space: string) => `V-stitch (V-st): (Dc, ch 1, dc) in indicated st or sp.
Ch 22.
Row 1: V-st in 5th ch from hook (4 skipped chs count as dc and 1 skipped ch), *sk next 2 chs, V-st in next ch; rep from * to last 2 chs, sk next ch, dc in last ch; turn. (6 V-sts, 2 dc)
Row 2: Ch 3 (counts as dc throughout), V-st in ch-1 sp of each V-st across, dc in top of turning ch; turn. (6 V-sts, 2 dc)
Row 3: Ch 3, 3 dc in ${space} of each V-st across, dc in top of turning ch; turn. (20 dc)`

  it('leave of a chain what stands behind the repeat, however far away the last one is', () => {
    expect(both(rows('ch-1 sp'))).toEqual([[], [14, 14, 20]])
  })

  it('have the space that they have', () => {
    expect(told(rows('ch-2 sp'))).toEqual([
      'rounds/no-such-space there are ch-1 sps, no ch-2 sps, in the round before.',
    ])
  })
})

describe('what a page says of its rounds besides', () => {
  it('is that the piece grows on, which adds nothing to its last round', () => {
    const text = (words: string) => `R1: MR, ch1, (sc, ch2) x4 in ring, sl st to first sc.
R2: sl st into first ch-2 sp, ch1, *(sc, ch2, sc) in ch-2 sp, ch1; rep from * 3 more times, sl st to first sc. (8 sc)
${words}`
    for (const words of [
      "Keep going like R2, one more (sc, ch1) per side each round, until it's as big as your coaster.",
      'Continue like Rnd 2, with one more sc on each side, until it is as big as you like.',
      'To make it bigger, keep repeating R2, adding one (sc, ch 1) to each side.',
    ])
      expect(both(text(words)), words).toEqual([[], [4, 8]])
  })

  it('is no such thing where it is a round of its own', () => {
    const text = (stop: string) => `Rnd 1: Magic ring, 6 sc. (6 sc)
Rnd 2: 2 sc in each sc around. (12 sc)
Rnd 3: *Sc in next sc, 2 sc in next sc; rep from * around. (18 sc)
Rnd 4${stop} Continue as before, having 1 more sc between increases each round.`
    expect(made(text(':'))).toEqual([6, 12, 18, 24])
    expect(made(text('.'))).toEqual([6, 12, 18, 24])
  })

  it('is that stitches are left at the end of the rows', () => {
    const text = (words: string) => `${words}
Make 15 ch.
1st row: 1 d.c. into 2nd ch. from hook, 1 d.c. into each of next 12 ch., 3 d.c. into last ch., then working along other side of commencing ch., 1 d.c. into each of next 11 ch., turn.
2nd row: 1 ch., 1 d.c. into each of first 12 d.c., 3 d.c. into next d.c., 1 d.c. into each of next 11 d.c., turn.`
    const open = text('The stitches left unworked at the end of the rows form the points of the leaf.')
    expect(both(open, 'UK')).toEqual([[], [27, 26]])
    expect(told(text('A leaf for a brooch.'), 'UK')).toHaveLength(2)
  })

  it('is of how many legs a cluster is, which the one of the beginning has with its chains', () => {
    const text = `cl – cluster made thus: tr3tog into sp indicated.
Make 6 ch, ss into first ch to form a ring.
1st round: 3 ch, tr2tog into ring, 3 ch, * cl into ring, 3 ch; rep from * 4 times more, ss into top of first cl.`
    expect(both(text, 'UK')).toEqual([[], [6]])
  })
})

describe('the first of a row', () => {
  it('is one of the row before, where the row in hand has none such', () => {
    const text = `Shell: In same sp make 3 d c, ch 2 and 3 d c.
1st row: Ch 8. Join with sl st to form ring. Ch 3 (counts as 1 d c), in ring make 2 d c, ch 2, 3 d c, ch 3, 3 d c, ch 2 and 3 d c. Turn.
2nd row: Sl st in next 2 d c and in ch-2 sp, ch 3, in same sp make 2 d c, ch 2 and 3 d c, ch 1, 8 tr in ch-3 sp, ch 1, shell in next ch-2 sp. Turn.
3rd row: Sl st in next 2 d c and in ch-2 sp, ch 3, in same sp make 2 d c, ch 2 and 3 d c, ch 3, s c in 1st tr, * ch 3, s c in next tr. Repeat from * 6 more times, ch 3, shell in next ch-2 sp. Turn.`
    expect(both(text)).toEqual([[], [12, 20, 20]])
  })

  it('is no stitch to close a picot on: "sl st in tip of 1st cluster" ends the round', () => {
    const text = `CLUSTER: Holding back on hook the last loop of each tr, make 3 tr in same place, thread over and draw through all loops on hook.
1st rnd: Ch 6. Join with sl st to form ring. Ch 1, 12 s c in ring. Sl st in 1st s c.
2nd rnd: Ch 4, holding back on hook the last loop of each tr, make 2 tr in same place as sl st, thread over and draw through all loops on hook (1st cluster made), * ch 5, skip 1 s c, cluster in next s c. Repeat from * 4 more times, ch 5, skip last s c, sl st in tip of 1st cluster (6 clusters, 6 ch-5 sps).`
    expect(both(text)).toEqual([[], [12, 6]])
  })

  it('is told of a filet row, and chains of the turning chain are passed', () => {
    const text = `Ch 20.
1st row: D c in 8th ch from hook (1 sp), * ch 2, skip 2 ch, d c in next ch. Repeat from * across (5 sps). Turn.
2nd row: Ch 5 (to count as d c and ch 2), d c in next d c, * 2 d c in next sp, d c in next d c. Repeat from * 2 more times, ch 2, skip 2 ch of turning ch, d c in next ch. Turn.`
    expect(both(text)).toEqual([[], [6, 12]])
  })
})

describe('loops alone, and petals of one size', () => {
  it.each([
    'sc in BLO around',
    'sc in BLO all around',
    'sc in back loops around',
    'sc in the back loops only around',
  ])('are those of each stitch: "%s"', (words) => {
    expect(both(`R1: 6 sc in MR (6)\nR2: 2 sc in each st around (12)\nR3: ${words} (12)`)).toEqual([
      [],
      [6, 12, 12],
    ])
  })

  it('are fewer than all of them', () => {
    const text = `Round 1: MR, ch 1, [sc, ch 3] x3, [sc, ch 5] x2 all in the ring, sl st to first sc.
Round 2: Ch 1, (sc, 6 dc, sc) in each of the 3 ch-3 sps, (sl st, ch 3, 9 tr, ch 3, sl st) in each of the 2 ch-5 sps, sl st to first sc. (3 small petals, 2 big petals)`
    expect(told(text)).toEqual([])
  })
})

describe('what stands in brackets and behind dashes', () => {
  it('is the chain that a round begins with', () => {
    const text = (chains: string) =>
      `Rnd 1: 16 dc in a magic ring (ch ${chains} counts as first dc). Join with sl st in top of ch-3. (16 dc)`
    expect(both(text('3'))).toEqual([[], [16]])
    expect(told(text('4'))).toHaveLength(1)
  })

  it.each([
    'Special stitch: Popcorn (pc) — 4 dc in same st, drop loop from hook, insert hook in first dc, pull loop through.',
    'Popcorn (pc) - 4 dc in same st, drop loop from hook, insert hook in first dc, pull loop through.',
    'pc - 4 dc in same st, drop loop from hook, insert hook in first dc, pull loop through.',
  ])('explains a stitch: "%s"', (words) => {
    const { findings } = readRounds(
      `${words}\nRnd 1: Magic ring, 8 sc. Join.\nRnd 2: Ch 1, pc in each sc around. Join. (8 pc)`,
      { terms: 'US' },
    )
    expect(findings).toEqual([])
  })
})

describe('a round behind another one', () => {
  it('begins with a loop to the second stitch and comes back to the first', () => {
    const text = `Rnd 1: Magic ring, ch 1, 12 sc, join. (12 sc)
Rnd 2: Ch 1, *sc in next sc, ch 3, sk 1 sc; rep from * around, join. (6 sc)
Rnd 3: (Sc, hdc, 3 dc, hdc, sc) in each ch-3 sp around, join.
Rnd 4: Working behind petals, *ch 5, sl st around post of next sc of Rnd 2; rep from * around. (6 ch-5 sps)`
    const { worked, findings } = readRounds(text, { terms: 'US' })
    expect(findings).toEqual([])
    const slips = worked.at(-1)!.elements.filter(({ role }) => role === 'slip')
    const posts = slips.map(({ into }) => into[0]!.index)
    const stitches = [...new Set(posts)].sort((a, b) => a - b)
    expect(posts).toEqual([...stitches.slice(1), stitches[0]])
  })
})

describe('a bracket that goes into a ring several times', () => {
  it('begins with the first of its spaces', () => {
    for (const words of [
      '[ch 1, 2 dc] 5 times in ring',
      '(ch 1, 2 dc in ring) 5 times',
      '[2 dc, ch 1] 5 times in ring',
    ]) {
      const { rounds } = readRounds(`Rnd 1: Magic ring, ${words}, join.`, { terms: 'US' })
      expect(rounds[0], words).toMatchObject({ made: 10, spaces: { 'ch-1': 5 } })
    }
  })
})
