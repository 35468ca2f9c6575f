/** What patterns by fresh hands say that no page before them did. Common practice, no source; counts by hand. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { made, told } from './telling'

const RING = 'Rnd 1: Magic ring, ch 3 (counts as dc), 11 dc in ring, sl st in top of ch-3. (12 dc)\n'
const both = (text: string, terms: 'US' | 'UK' = 'US') => [told(text, terms), made(text, terms)]

describe('a list of abbreviations', () => {
  it.each([
    'You will need to know: ch, ss, dc, htr, tr, dtr.',
    "You'll need to know:\nch – chain\ndc – double crochet\ntr – treble",
    'Stitches you will need: chain, slip stitch, double crochet, treble.',
    "STITCHES YOU'LL NEED: ch, ss, tr",
    'Stitches to know: ch, ss, tr',
    'Stitches needed - ch, ss, tr',
    'You should know: ch, ss, dc, tr.',
    'Abbreviations you need: ch, ss, tr',
  ])('is no round: "%s"', (list) => {
    const text = `${list}\n\nRound 1: Magic ring, 3ch (counts as 1tr), 11tr into ring, ss to top of 3ch. 12tr.`
    expect(both(text, 'UK')).toEqual([[], [12]])
  })

  it.each(['Stitches you may not know', 'Unusual stitches:', 'Less common stitches'])(
    'explains stitches: "%s"',
    (heading) => {
      const text = `${heading}\n- 3-dc cluster (3dc-cl): dc3tog in same sp.\n- Knot (kn): (sc, ch 4, sc) in same st.\n\n${RING}Rnd 2: Ch 1, *kn in next dc, ch 1, sk next dc; rep from * around, join. (12 sc)`
      expect(both(text)).toEqual([[], [12, 12]])
    },
  )
})

describe('a popped kettle', () => {
  it.each([
    'Fasten off, and pop the kettle on.',
    'Fasten off and pop your ends away.',
    'Cut yarn, pop it under a heavy book.',
  ])('is no popcorn: "%s"', (words) => {
    expect(both(`${RING}Rnd 2: Ch 1, 2 sc in each dc around, join. (24 sc)\n\n${words}`)).toEqual([
      [],
      [12, 24],
    ])
  })

  it('is one where it is worked', () => {
    expect(both(`${RING}Rnd 2: Ch 1, *sc in next dc, pop in next dc; rep from * around, join.`)).toEqual([
      [],
      [12, 12],
    ])
  })
})

describe('a hyphened stitch', () => {
  it.each(['3dc-cl', '3-dc-cl', '4tr-cluster', '3hdc-puff', '5-dc-popcorn', 'dc-cl'])(
    'is one thing: "%s"',
    (name) => {
      expect(both(`${RING}Rnd 2: Ch 1, *${name} in next dc, ch 3; rep from * around, join.`)).toEqual([
        [],
        [12, 12],
      ])
    },
  )
})

describe('a group told by its size', () => {
  const GROUPS = `Rnd 1: Magic ring, ch 1, 12 sc in ring, sl st in first sc. (12 sc)
Rnd 2: Ch 5 (counts as dc and ch 2), (dc in next sc, ch 2) 11 times, sl st in 3rd ch of ch-5.
Rnd 3: Sl st in first ch-2 sp, ch 1, *(sc, ch 5, sc) in ch-2 sp, 3 sc in next ch-2 sp; rep from * 5 more times, sl st in first sc.
Rnd 4: Sl st in first ch-5 sp, ch 1, *(sc, ch 3, sc, ch 5, sc, ch 3, sc) in ch-5 sp, ch 2, `
  it.each([
    'sc in center sc of next 3-sc group',
    'sc in middle sc of next group of 3 sc',
    'sc in 2nd sc of next 3-sc group',
    'sc in center of next 3 sc group',
    'sc in second of next 3-sc group',
  ])('is not another one: "%s"', (words) => {
    for (const often of ['5 more times', 'around'])
      expect(both(`${GROUPS}${words}, ch 2; rep from * ${often}, sl st in first sc. (30 sc)`)).toEqual([
        [],
        [12, 12, 30, 30],
      ])
  })
})

describe('from petal to petal', () => {
  const PETALS = `Ch 10. Join with sl st.
Rnd 1: Ch 1, 24 sc in ring. Join. (24 sc)
Rnd 2: Ch 1, sc in same place as joining, *ch 5, skip 2 sc, sc in next sc; rep from * around, ending with ch 5, skip 2 sc, sl st in first sc. (8 loops)
Rnd 3: (Sc, hdc, dc, 3 tr, dc, hdc, sc) in each loop around. Join. (72 sts)
`
  it.each([
    'Sl st to center tr of first petal, ch 1, sc in same tr, *ch 9, sc in center tr of next petal; rep from * around, ending with ch 9, sl st in first sc.',
    'Sl st to center of first petal, ch 1, sc in same tr, *ch 9, sc in 5th st of next petal; rep from * around, ch 9, join with sl st in first sc.',
    'Join yarn in center tr of any petal, ch 1, sc in same tr, *ch 9, sc in center tr of next petal; rep from * around, ending last rep with sl st in first sc.',
    'Join yarn in center tr of any petal, ch 1, *sc in center tr of next petal, ch 9; rep from * around, sl st in first sc.',
  ])('goes a loop around: "%s"', (words) => {
    expect(both(`${PETALS}Rnd 4: ${words} (8 loops)`)).toEqual([[], [24, 8, 72, 8]])
  })
})

describe('shells in rows', () => {
  const ROWS = `Make 26ch.
Row 1: 1dc in 2nd ch from hook, *miss 2ch, 5tr in next ch, miss 2ch, 1dc in next ch; rep from * to end, turn. [4 shells, 5dc]
Row 2: 3ch (counts as 1tr), 2tr in first dc, *miss 2tr, 1dc in next tr, miss 2tr, 5tr in next dc; rep from * twice more, miss 2tr, 1dc in next tr, miss 2tr, 3tr in last dc, turn. [25 sts]
Row 3: `
  it.each([
    '1ch, 1dc in first tr, *miss 2tr, 5tr in next dc, miss 2tr, 1dc in next tr; rep from * to end, working last dc in top of 3ch, turn.',
    '1ch, 1dc in first tr, *miss 2tr, 5tr in next dc, miss 2tr, 1dc in next st; rep from * across, with the last dc worked in top of turning ch.',
    '1ch, 1dc in first tr, *miss 2tr, 5tr in next dc, miss 2tr, 1dc in next tr; rep from * to end, working last dc into 3rd of 3ch.',
    '1ch, 1dc in first tr, *miss 2tr, 5tr in next dc, miss 2tr, 1dc in next tr; rep from * twice more, miss 2tr, 5tr in next dc, miss 2tr, 1dc in top of 3ch.',
  ])('end in the top of the turning chain: "%s"', (words) => {
    expect(both(`${ROWS}${words} [25 sts]`, 'UK')).toEqual([[], [25, 25, 25]])
  })

  const PLAIN = 'Row 1: Ch 14, dc in 4th ch from hook and in each ch across. (12 dc)\nRow 2: '
  it.each([
    'Turn with ch 3 (counts as dc), dc in next 11 dc. (12 dc)',
    'turn with 3 ch, dc in next 11 dc. (12 dc)',
    'Turn with 3 ch. (they replace the first dc), dc in next 11 dc. (12 dc)',
  ])('turn with chains that are worked: "%s"', (words) => {
    expect(both(`${PLAIN}${words}`)).toEqual([[], [12, 12]])
  })
})

describe('a beginning cluster over several stitches', () => {
  it.each([
    'Cluster: Keeping last lp of each dc on hook, dc in each of next 3 dc, yo and through all 4 lps on hook.\nBeg cluster: Ch 2, keeping last lp of each dc on hook, dc in each of next 2 dc, yo and through all 3 lps on hook.',
    'Cluster (cl): Holding back last loop of each, dc in next 3 sts, yo and draw through all 4 loops.\nBeginning cluster (beg cl): Ch 3, holding back last loop of each, dc in next 2 sts, yo and draw through all loops.',
    'Cluster: dc3tog over next 3 dc.\nBeg cluster: Ch 2, dc2tog over next 2 dc.',
  ])('stands with its chains in the first: "%s"', (explained) => {
    const text = `${explained}\n\n${RING}Rnd 2: Beg cluster, ch 4, *cluster, ch 4; rep from * around, sl st in top of beg cluster. (4 clusters, 4 ch-4 sps)`
    expect(both(text)).toEqual([[], [12, 4]])
  })
})

describe('a shade by its number', () => {
  it.each([
    ['shade 1', 'Join shade 3 in any dc'],
    ['thread 1', 'Join thread 3 in any dc'],
    ['shade A', 'Join shade C with sl st in any dc'],
    ['cotton 1', 'Attach cotton 2 to any dc'],
  ])('is joined: %s, %s', (first, join) => {
    const text = `With ${first}, ch 5, sl st to form ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring, sl st in top of ch-3. Fasten off ${first}.\nRnd 2: ${join}, ch 3 (counts as dc), (dc, ch 2, 2 dc) in same st, *dc in next 2 dc, (2 dc, ch 2, 2 dc) in next dc; rep from * twice more, dc in last 2 dc, sl st in top of ch-3. (24 dc)`
    expect(both(text)).toEqual([[], [12, 24]])
  })
})

describe('the last repeat', () => {
  const HEXAGON = `Rnd 1: Make a magic ring, ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc, ch 2) 5 times in ring, sl st in top of ch-3. (18 dc, 6 ch-2 sps)
Rnd 2: Ch 3 (counts as dc), dc in next 2 dc, *(2 dc, ch 2, 2 dc) in ch-2 sp, dc in next 3 dc; rep from * 4 more times, (2 dc, ch 2, 2 dc) in ch-2 sp, sl st in top of ch-3. (42 dc)
Rnd 3: Ch 3 (counts as dc), dc in next 4 dc, *(2 dc, ch 2, 2 dc) in ch-2 sp, dc in next 7 dc; rep from * `
  it.each([
    'around, ending with dc in last 2 dc',
    'around, ending dc in next 2 dc',
    'around, ending last rep with dc in last 2 dc',
    'around, end with 1 dc in each of last 2 dc',
    '5 more times, ending with dc in last 2 dc',
    '5 more times (ending with dc in last 2 dc)',
  ])('ends with fewer of the same: "rep from * %s"', (words) => {
    expect(both(`${HEXAGON}${words}, sl st in top of ch-3. (66 dc)`)).toEqual([[], [18, 42, 66]])
  })

  it.each(['around, ending with dc in last 3 dc', '5 more times, ending with dc in last 4 dc'])(
    'is marked where it ends with too many: "rep from * %s"',
    (words) => {
      expect(told(`${HEXAGON}${words}, sl st in top of ch-3. (66 dc)`)).not.toEqual([])
    },
  )

  it('has its ending besides where that fits', () => {
    expect(
      both(
        `${RING}Rnd 2: Ch 3 (counts as dc), *2 dc in next dc, dc in next 2 dc; rep from * 2 more times, ending with dc in next 2 dc, sl st in top of ch-3. (15 dc)`,
      ),
    ).toEqual([[], [12, 15]])
  })
})

describe('translated pages', () => {
  const GROUPS = `Ch 8, join.
Rnd 1: Ch 5 (counts as dc and ch 2), (dc, ch 2) 7 times in ring, sl st in 3rd ch.
Rnd 2: Sl st in sp, ch 3 (counts as dc), 2 dc in same sp, *ch 3, 3 dc in next sp; rep from * 6 more times, ch 3, sl st in top of ch-3.
Rnd 3: Sl st in next dc, sc in same dc, *`
  it.each([
    'in the arch 2 dc, 3 ch, 2 dc, then 1 sc in the middle dc of the following group *, repeat from * to * all around, the last sc being replaced by 1 sl st in the first sc.',
    'in next sp work 2 dc, ch 3, 2 dc, sc in center dc of next group; rep from * around, ending last rep with sl st in first sc.',
    'in next ch-3 sp: 2 dc, ch 3, 2 dc, sc in 2nd dc of next group; rep from * 6 more times, (2 dc, ch 3, 2 dc) in next sp, sl st in first sc.',
  ])('go on behind what stands in one place: "%s"', (words) => {
    expect(told(GROUPS + words)).toEqual([])
    expect(made(GROUPS + words)).toEqual([8, 24, 40])
  })

  it.each([
    'Make a chain of 8 and close it in a round with 1 slip stitch.',
    'Chain 8 and join into a round with a sl st.',
  ])('close a ring "in a round": "%s"', (words) => {
    expect(both(`${words}\nRnd 1: Ch 3 (counts as dc), 19 dc in the round, close in the 3rd ch.`)).toEqual([
      [],
      [20],
    ])
  })
})

describe('what a stitch explains of its own chains', () => {
  const popcorns = (
    beginning: string,
  ) => `Popcorn (pc): 5 dc in same place, drop loop, pull it through first dc.
Beginning popcorn (beg pc): ${beginning}, 4 dc in same place, drop loop, pull it through top of ch-3.

Ch 4; join with sl st to form ring.
Rnd 1: Beg pc in ring, ch 3, [pc in ring, ch 3] 3 times; join with sl st in top of beg pc. (4 pc, 4 ch-3 sps)
Rnd 2: Sl st in next ch-3 sp, ch 3, (2 dc, ch 3, 3 dc) in same sp, *ch 1, (3 dc, ch 3, 3 dc) in next ch-3 sp; rep from * 2 more times, ch 1; join in top of ch-3. (24 dc, 4 ch-3 sps, 4 ch-1 sps)`

  it.each(['Ch 3 (counts as first dc)', 'Ch 3 [counts as a dc]', 'Ch 3 (is the first dc)'])(
    'ends with its bracket: "%s"',
    (beginning) => {
      expect(both(popcorns(beginning))).toEqual([[], [4, 24]])
    },
  )
})

describe('chains that are gone round', () => {
  it.each(['round the first 3ch', 'around first 3ch', 'round the same 3ch'])(
    'are one place: "%s"',
    (place) => {
      const text = `Round 1: Magic ring, 1ch, *1dc into ring, 3ch; rep from * 3 times more, ss to first dc. (4dc)
Round 2: Ss into next 3ch-sp, 1ch, 4dc ${place}, *1dc in next dc, 4dc in next 3ch-sp; rep from * twice more, 1dc in last dc, ss to first dc.`
      expect(made(text, 'UK')).toEqual([4, 20])
    },
  )

  it('are no places of a round with that number', () => {
    const text = `Round 1: Magic ring, 1ch, 6dc into ring, ss to first dc. (6dc)
Round 2: 1ch, 2dc in each dc round, 3ch, ss to first dc.`
    expect(made(text, 'UK')).toEqual([6, 12])
  })
})

describe('a lobe on what the first one left', () => {
  it.each([
    'Skip the next (center) sc',
    'Skip the next [center] sc',
    'Skip next (unworked) sc',
    'Sk next sc',
  ])('begins where the yarn is joined behind a skip: "%s"', (skip) => {
    const text = `Ch 12.
Row 1: Sc in 2nd ch from hook and in each ch across. (11)

FIRST LOBE
Row 2: Ch 1, turn, sc in first 5 sc, leave remaining sts unworked. (5)
Fasten off.

SECOND LOBE
Row 2: ${skip} of Row 1, join yarn in next sc, ch 1, sc in same st and in last 4 sc. (5)`
    expect(both(text)).toEqual([[], [11, 5, 5]])
  })
})

describe('a long stitch round one within a group', () => {
  it.each([
    'FPtr around center tr of 3-tr group of Rnd 1',
    'FPtr around middle tr of next group of Rnd 1',
    'FPtr around center tr of group on Rnd 1',
  ])('covers the stitch in front of it: "%s"', (long) => {
    const text = `Rnd 1: Magic ring, ch 4 (counts as tr), 2 tr in ring, ch 3, [3 tr in ring, ch 3] 3 times, sl st in top of ch-4. (12 tr, 4 ch-3 sps)
Rnd 2: Ch 1, sc in same st and in next 2 tr, *5 sc in ch-3 sp, sc in next 3 tr; rep from * 2 more times, 5 sc in last ch-3 sp, sl st in first sc. (32 sc)
Rnd 3: Ch 1, *sc in next sc, ${long}, sc in next 3 sc, (sc, ch 2, sc) in next sc, sc in next 2 sc; rep from * 3 more times, sl st in first sc. (32 sc, 4 FPtr, 4 ch-2 sps)`
    expect(both(text)).toEqual([[], [12, 32, 36]])
  })
})

describe('a foundation chain that is too long', () => {
  const row = (chains: number, stated: string) => `Make ${chains}ch.
Row 1 (RS): 1tr in 4th ch from hook (missed 3ch count as 1tr), 1tr in each of next 18ch, turn. (${stated})`
  const chainsLeft = (text: string) =>
    readRounds(text, { terms: 'UK' })
      .findings.filter(({ code }) => code === 'rounds/chains-left')
      .map(({ target }) => [target?.line, target?.round])

  it('is told at the chain where the count of the row is right', () => {
    expect(chainsLeft(row(22, '20tr'))).toEqual([])
    expect(chainsLeft(row(24, '20tr'))).toEqual([[1, 1]])
  })

  it('is told along the chain where the count is wrong too', () => {
    expect(chainsLeft(row(24, '22tr'))).toEqual([[2, 1]])
  })
})

describe('a popcorn or bobble', () => {
  const notes = (special: string, stitch: string) =>
    readRounds(
      `${special}Rnd 1: Magic ring, ch 1, 8 sc in ring; join.\nRnd 2: Ch 1, *sc in next sc, ${stitch} in next sc; rep from * 3 more times; join.`,
    )
      .findings.filter(({ code }) => code === 'rounds/special-not-explained')
      .map(({ message, severity }) => [severity, message])

  it.each([
    ['', 'pc', '5 dc'],
    ['', 'bobble', '5 dc'],
    ['Popcorn (pc): drop loop from hook, pull it through the first.\n\n', 'pc', '5 dc'],
  ])('is noted once where nothing tells of how many stitches it is: "%s%s"', (special, stitch, taken) => {
    const found = notes(special, stitch)
    expect(found).toHaveLength(1)
    expect(found[0]![0]).toBe('note')
    expect(found[0]![1]).toContain(taken)
  })

  it('is not noted in later rounds alone, which may be explained where they come from', () => {
    const text = 'Rnd 3: *Popcorn in next st, ch 2, sk next st; rep from * 7 more times; join. (8 pc)'
    const { findings } = readRounds(text, { after: { stitches: 16 } })
    expect(findings.map(({ code }) => code)).not.toContain('rounds/special-not-explained')
  })

  it.each([
    ['Popcorn (pc): 4 dc in same place, drop loop.\n\n', 'pc'],
    ['', '5-dc popcorn'],
    ['', '4-dc bobble'],
  ])('is not noted where that is told: "%s%s"', (special, stitch) => {
    expect(notes(special, stitch)).toEqual([])
  })
})
