/** §patterns-corpus: what whole pages have around and within their rounds; common practice, no source; counted by hand. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { made, told } from './telling'

/** Reads without a word of complaint to these counts. */
const reads = (text: string, counts: readonly (number | null)[], terms: 'US' | 'UK' = 'US') => {
  expect(told(text, terms)).toEqual([])
  expect(made(text, terms)).toEqual(counts)
}

describe('titles and labels', () => {
  it.each([
    'Block 3: Granny Square',
    'Sampler Block 7: Pebbles',
    'BLOCK TWO: POPCORN CIRCLE\nHalf double crochet throughout with a shell edge',
    'Daisy Chain\nDouble crochet circles for a garland\n\nAbbreviations as usual: ch, dc, sc\nGauge for one circle: 2 in\nEvery round: sl st in first st to close.',
  ])('"%s" is no round', (title) => {
    reads(
      `${title}\n\nCh 4, join with sl st to form ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring; join. (12 dc)`,
      [12],
    )
  })

  it('a sentence may begin right behind the number of a round', () => {
    const text = (two: string) =>
      `ROUND 1 Magic ring, 3ch (counts as 1 tr), 15 tr, ss to top of 3ch. [16 tr]\n\nROUND 2 ${two} 1ch, 1 dc in each tr round, ss to first dc. [16 dc]`
    reads(text('New colour, join to any tr.'), [16, 16], 'UK')
    reads(text('Fresh shade.'), [16, 16], 'UK')
  })

  it('an entry of a list of stitches may stand behind a bullet', () => {
    const text = `Sts used\n* Rim st: sc through both loops.\n* BLO sc: sc in back loop only.\n\nCh 6.\nRow 1: Sc in 2nd ch from hook and in each ch across; turn. (5 sc)\nRow 2: Ch 1, rim st, BLO sc in each of next 3 sts, rim st. (5 sc)`
    reads(text, [5, 5])
  })
})

describe('signs of other founts', () => {
  it.each(['★', '☆', '＊', '❋'])('%s begins what is repeated', (star) => {
    reads(
      `Rnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: ${star} Sc in next sc, 2 sc in next sc; rep from ${star} 2 times more. (9 sc)`,
      [6, 9],
    )
  })

  it('a size that is not there is told behind such a star', () => {
    const text = (chains: number) =>
      `Rnd 1: Ch 4, join to form ring. Ch 3 (counts as dc), 3 dc in ring, ch 3, (4 dc in ring, ch 3) 3 times; join. (16 dc)\nRnd 2: Ch 3, dc in next 3 dc, (2 dc, ch 3, 2 dc) in next ch-3 sp, ★ dc in next 4 dc, (2 dc, ch 3, 2 dc) in next ch-${chains} sp; repeat from ★ 2 times more; join. (32 dc)`
    expect(told(text(3))).toEqual([])
    expect(told(text(5)).join()).toContain('ch-5')
  })

  it('brackets hold a count, and no stitches', () => {
    reads(
      'Rnd 1: 12 dc in magic ring; join. 【12 dc】\nRnd 2: Ch 1, 2 sc in each dc around; join. ［24 sc］',
      [12, 24],
    )
  })
})

describe('spaces that nothing goes into', () => {
  const BLOCK = `Ch 12.
Row 1: Dc in 4th ch from hook (3 skipped ch count as dc), dc in each ch across, turn. (10 dc)
Row 2: Ch 3 (counts as dc), (ch 2, sk 2 dc, dc in next dc) 3 times, turn. (4 dc)`
  it('lie under chains as long, where others are filled', () => {
    reads(
      `${BLOCK}\nRow 3: Ch 3 (counts as dc), ch 2, dc in next dc, 2 dc in next ch-2 sp, dc in next dc, ch 2, dc in top of turning ch. (6 dc)`,
      [10, 4, 6],
    )
  })
  it('are told where shorter ones stand over them', () => {
    expect(
      told(
        `${BLOCK}\nRow 3: Ch 3 (counts as dc), ch 1, dc in next dc, 2 dc in next ch-2 sp, dc in next dc, ch 1, dc in top of turning ch. (6 dc)`,
      ).join(),
    ).toContain('ch-2')
  })
  it('a bare slip stitch closes where all of them are worked', () => {
    const text = `Rnd 1: 5 ch, ss to form a ring. 3 ch (counts as 1 tr), 2 tr in ring, 3 ch, (3 tr in ring, 3 ch) 3 times, ss. [12 tr]
Rnd 2: Ss in next 2 tr and in 3-ch sp, (3 ch, 2 tr, 3 ch, 3 tr) in same sp, 1 ch, *(3 tr, 3 ch, 3 tr) in next 3-ch sp, 1 ch; rep from * twice more, ss. [24 tr]`
    reads(text, [12, 24], 'UK')
  })
  it('so does one into the standing stitch', () => {
    const text = `Rnd 1: 5 ch, ss to form a ring. 3 ch (counts as 1 tr), 2 tr in ring, 3 ch, (3 tr in ring, 3 ch) 3 times, ss to top of 3 ch. [12 tr]
Rnd 2: With B, standing tr in any 3-ch sp, (2 tr, 3 ch, 3 tr) in same sp, 1 ch, *(3 tr, 3 ch, 3 tr) in next 3-ch sp, 1 ch; rep from * twice more, ss in standing tr. [24 tr]`
    reads(text, [12, 24], 'UK')
  })
})

describe('stitches of an earlier round', () => {
  const PETALS = `Rnd 1: [Sc, ch 3] x 6 in magic ring, sl st to first sc. (6 sc, 6 ch-3 sps)
Rnd 2: (Sc, 3 dc, sc) in each ch-3 sp, sl st to first sc. (30 sts)`
  it.each(['around R1 sc', 'around next sc (between petals) of Rnd 1', 'around next sc of R1'])(
    'are found %s',
    (where) => {
      reads(
        `${PETALS}\nRnd 3: Behind petals: [BPsc ${where}, ch 4] x 6, sl st to first BPsc. (6 sts, 6 ch-4 sps)`,
        [6, 30, 6],
      )
    },
  )
})

describe('chains told otherwise', () => {
  it.each([
    ['Foundation ring 4ch, join with ss.', 'UK'],
    ['Starting ring 4 ch, ss to join.', 'UK'],
    ['Base ring ch 4, join with sl st.', 'US'],
  ] as const)('%s', (ring, terms) => {
    reads(`${ring}\nRnd 1: 1 ch, 8 dc in ring. (8 dc)`, [8], terms)
    expect(readRounds(`${ring}\nRnd 1: 1 ch, 8 dc in ring. (8 dc)`, { terms }).findings).toEqual([])
  })

  it('both sides of "your chain"', () => {
    reads(
      'Ch 5.\nRnd 1: Sc in 2nd ch from hook, hdc in next 2 ch, 3 sc in last ch. Now work along the other side of your chain: hdc in next 2 ch, sc in last ch. Sl st to first sc. (9 sts)',
      [9],
    )
  })
  it('"+" stands between two places', () => {
    reads('Ch 8.\nRow 1: Sc in 2nd ch from hook + in each ch. (7)', [7])
  })
  it('the last step of a stitch is no place', () => {
    reads(
      'Ch 6.\nRow 1: Sc in 2nd ch from hook and in each ch across; change to B on last yo; turn. (5 sc)\nRow 2: Ch 1, sc in each st across. (5 sc)',
      [5, 5],
    )
  })
})

describe('what a heading, a note or a count says of a round', () => {
  const ROSE = `R1: MR, 6 dc, ss to first [6]
R2: 2 dc in each dc, ss to first [12]
R3 (FLO of R2): [(1htr, 2tr, 1htr) in next st, ss in next st] x 6 [24]`
  it.each(['BLO of R2', 'BLO of Round 2, behind the petals'])(
    '(%s) in a heading is where it is worked',
    (where) => {
      reads(
        `${ROSE}\nR4 (${where}): 1ch, [dc in next st, 2 dc in next st] x 6, ss to first [18]`,
        [6, 12, 24, 18],
        'UK',
      )
    },
  )

  it('counts of several rounds may stand in turn behind semicolons', () => {
    const text = (counts: string) =>
      `Rnd 1: 6 sc in magic ring. [6 sts]\nRnd 2: 2 sc in each sc around. [12 sts]\nRnd 3: (Sc in next sc, 2 sc in next sc) 6 times. [18 sts]\nRnds 4 and 5: Continue as established, working 1 more sc between increases in each rnd. [${counts}]`
    reads(text('24 sts; 30 sts'), [6, 12, 18, 24, 30])
    expect(told(text('24 sts; 31 sts')).join()).toContain('31')
  })

  it('a corner goes into each space, and stitches into the others', () => {
    const text = `Corner = (2 tr, 2 ch, 2 tr) in 2-ch sp.

Rnd 1: Magic ring. 3 ch (counts as tr), 2 tr in ring, 2 ch, (3 tr in ring, 2 ch) three times; join. 12 tr
Rnd 2: 3 ch (counts as tr), working 1 tr in each tr and a corner in each 2-ch sp; join. 28 tr`
    reads(text, [12, 28], 'UK')
    expect(readRounds(text, { terms: 'UK' }).rounds[1]!.spaces).toEqual({ 'ch-2': 4 })
  })

  it('chains are explained behind the group that begins with them', () => {
    const text = `R1: MR. Ch 3 (counts as dc), dc, ch 1, [2 dc, ch 1] x 3, join. (8 dc, 4 ch-1)
R2: Sl st in next dc and in sp. (Ch 4, dc) in same sp (ch 4 = dc + ch 1), [dc in next 2, (dc, ch 1, dc) in sp] x 3, dc in last 2. Sl st in 3rd ch. (16 dc, 4 ch-1)`
    reads(text, [8, 16])
    expect(readRounds(text).rounds[1]!.spaces).toEqual({ 'ch-1': 4 })
  })

  it('a chain is worked across', () => {
    reads('Ch 25, long tail.\nR1: sc in 2nd ch from hook, sc across, turn (24)', [24])
  })

  it.each(['UK terms', 'British terminology'])('"%s" alone has nothing under it', (terms) => {
    reads(
      `Hook: 4mm\n${terms}\n\nMake 6ch.\nRow 1: 1 dc in 2nd ch from hook and in each ch. (5 dc)`,
      [5],
      'UK',
    )
  })

  it.each(['FO. Make 9, string on a long ch.', 'Fasten off. Glue in a frame.'])(
    'behind "%s" nothing is worked',
    (off) => {
      reads(`Rnd 1: 6 sc in magic ring. (6 sc)\n${off}`, [6])
    },
  )

  it('the title of a part may stand right below a count', () => {
    const text = `With A, ch 2.
Rnd 1: 6 sc in 2nd ch from hook; join. — 6 sc
Petals
Rnd 2: Ch 1, 2 sc in each sc around; join with sl st in first sc, changing to B. — 12 sc
Leaf
Ch 5.
Rnd 1: Sc in 2nd ch from hook and in each ch. — 4 sc`
    reads(text, [6, 12, 4])
  })

  it('the last repeat may be worked with fewer', () => {
    const row = (last: string) => `14 ch.
Row 1: 1 dc in 2nd ch from hook, *miss 2 ch, 5 tr in next ch, miss 2 ch, 1 dc in next ch; rep from * to end, turn. (13 sts)
Row 2: 3 ch (counts as 1 tr), 2 tr in first dc, *miss 2 tr, 1 dc in next tr, miss 2 tr, 5 tr in next dc; rep from * to end, ${last}, turn. (13 sts)`
    reads(row('working only 3 tr in last dc'), [13, 13], 'UK')
  })
})

describe('slips are told where they stand', () => {
  it('too few repeats', () => {
    const text = `Rnd 1: Magic ring, ch 3 (counts as dc), 2 dc, ch 1, *3 dc, ch 1; rep from * 4 times more, join. (18 dc, 6 ch-1 sps)
Rnd 2: Sl st in next 2 dc and in ch-1 sp, (ch 3, 2 dc, ch 2, 3 dc) in same sp, *(3 dc, ch 2, 3 dc) in next ch-1 sp; rep from * 3 times more, join.`
    const found = readRounds(text).findings.find(({ code }) => code === 'rounds/spaces-left')
    expect(text.slice(text.lastIndexOf('3 times more')).startsWith('3 times more')).toBe(true)
    expect(found?.where).toContain('3 times more')
  })
  it('a stitch too few in a side', () => {
    const text = `Rnd 1: Magic ring, ch 3 (counts as dc), 3 dc, ch 2, *4 dc, ch 2; rep from * once more, join. (12 dc)
Rnd 2: Ch 3 (counts as dc), dc in next 3 dc, (2 dc, ch 2, 2 dc) in ch-2 sp, *dc in next 3 dc, (2 dc, ch 2, 2 dc) in ch-2 sp; rep from * once more, join.`
    const found = readRounds(text).findings.find(({ code }) => code === 'rounds/stitches-passed')
    expect(found?.where).toContain('dc in next 3 dc')
  })
})
