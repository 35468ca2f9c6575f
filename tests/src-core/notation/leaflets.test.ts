/** Phrases of old leaflets and of chatty pages, each in many wordings. Common practice, no source; counts by hand. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

const read = (text: string, terms: 'US' | 'UK' = 'US') => {
  const { rounds, findings } = readRounds(text, { terms })
  const told = findings
    .filter(({ severity }) => severity !== 'note')
    .map(({ code, where }) => `${where} ${code}`)
  return { told, made: rounds.map(({ made }) => made) }
}

const SQUARE =
  'Rnd 1: Magic ring, ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times; join with sl st to top of ch-3'
const CORNERS = 'ch 1, *(2 dc, ch 2, 2 dc) in next ch-2 sp, ch 1; rep from * 2 more times; join. (16 dc)'

describe('slip stitches behind the joining', () => {
  it.each([
    [', sl st in next 2 dc and into ch-2 sp. (12 dc)', 'same sp'],
    ['. (12 dc) Sl st to next ch-2 sp.', 'same sp'],
    ['. (12 dc)\nSl st in next 2 dc and in corner sp.', 'the corner'],
    ['; sl st to ch-2 sp. (12 dc)', 'same ch-2 sp'],
    [', sl st across to next corner sp. (12 dc)', 'same corner sp'],
    [', slip stitch in each of next 2 dc and in next sp. (12 dc)', 'that sp'],
  ])('lead to where the next round begins: "%s"', (way, place) => {
    expect(read(`${SQUARE}${way}\nRnd 2: Ch 3, (dc, ch 2, 2 dc) in ${place}, ${CORNERS}`)).toEqual({
      told: [],
      made: [12, 16],
    })
  })

  it('lead into a loop', () => {
    const text = `Rnd 1: Ch 4, join. Ch 1, 12 sc in ring; join. (12 sc)
Rnd 2: Ch 1, sc in same st, *ch 5, sk 2 sc, sc in next sc; rep from * 2 more times, ch 5; join, sl st in next 2 chs. (4 lps)
Rnd 3: Ch 1, sc in same lp, *ch 6, sc in next lp; rep from * around, ch 6, join. (4 lps)`
    expect(read(text)).toEqual({ told: [], made: [12, 4, 4] })
  })

  it('and a loop for hanging are told apart', () => {
    const text = `Rnd 1: Magic ring, ch 1, 12 sc in ring; join. (12 sc)
Rnd 2: Ch 1, 2 sc in each sc around; join. Ch 10, sl st in same st. (24 sc)`
    expect(read(text)).toEqual({ told: [], made: [12, 24] })
  })
})

describe('clusters over several stitches', () => {
  const RING =
    'Make 14 ch., s.s. to first ch. to form a ring.\nRound 1: 40 d.c. into ring, s.s. to first d.c. (40 d.c.).\n'
  it.each([
    'cl., cluster, that is 1 tr. into each of next 3 d.c. leaving the last loop of each on the hook, yarn over and draw through all 4 loops',
    'cl. = 1 tr. into each of next 3 d.c. leaving the last loop of each on the hook, wool round hook and draw through all loops',
    'cl., cluster: 1 tr. into each of next 3 d.c. leaving the last loop of each on hook, yarn over and draw through all 4 loops',
  ])('are made where they are called for by name: %s', (explained) => {
    const text = `Abbrevs: ch., chain; d.c., double crochet; tr., treble; ${explained}.

${RING}Round 2: 3 ch., leaving the last loop of each on the hook work 1 tr. into each of next 2 d.c., yarn over and draw through all 3 loops (this makes first cl.), * 4 ch., miss 1 d.c., 1 cl., rep. from * 8 times more, 4 ch., miss last d.c., s.s. to top of first cl. (10 cl.).`
    expect(read(text, 'UK')).toEqual({ told: [], made: [40, 10] })
  })

  it.each([
    [
      'holding back on hook the last loop of each dc make dc in',
      'thread over and draw through all loops on hook',
    ],
    ['holding back the last loop of each dc on hook, dc in', 'thread over, draw through all loops on hook'],
    ['leaving last lp of each on hook, dc in', 'yarn over and pull through all loops'],
    [
      'retaining on hook the last loop of each dc make dc in',
      'cotton over and draw through all loops on hook',
    ],
  ])('are told in steps: "%s", "%s"', (hold, close) => {
    const text = `Starting at center, ch 10. Join with sl st to form ring. 1st rnd: Ch 3 (to count as dc), 23 dc in ring. Sl st in top of ch-3. 2nd rnd: Ch 3, ${hold} next 2 dc, ${close} (cluster made); * ch 5, ${hold} next 3 dc, ${close} (another cluster made). Repeat from * around, ending with ch 5, sl st in tip of first cluster (8 clusters). 3rd rnd: Sl st in next loop, ch 3, 6 dc in same loop, 7 dc in each loop around. Join (56 dc).`
    expect(read(text)).toEqual({ told: [], made: [24, 8, 56] })
  })
})

it.each([
  's c in 3rd d c of next petal',
  's c in third d c of following petal',
  's c in the 3rd d c of the next petal',
])('stitches behind the one that is picked in a petal are still there: %s', (pick) => {
  const text = `Ch 6, join with sl st to form ring. 1st rnd: Ch 1, (s c in ring, ch 7) 6 times. Join to first s c. 2nd rnd: In each loop make s c, 8 d c and s c. Join—6 petals. 3rd rnd: Sl st to 3rd d c of first petal, s c in same place, * ch 4, skip 2 d c, s c in next d c, ch 5, ${pick}. Repeat from * 4 more times, ch 4, skip 2 d c, s c in next d c, ch 5. Join to first s c—12 loops. Fasten off.`
  expect(read(text)).toEqual({ told: [], made: [6, 60, 12] })
})

describe('a place before a colon', () => {
  it.each([
    '*next corner: 3 dc, ch 3, 3 dc. ch 1* do * to * 2x.',
    '*corner: 3 dc, ch 3, 3 dc. ch 1* 2x.',
    '*next ch-3 sp: 3 dc, ch 3, 3 dc. ch 1* twice.',
    '*in next corner: 3 dc, ch 3, 3 dc. ch 1* work * to * 2x.',
  ])('is where what follows goes: %s', (rest) => {
    const text = `rnd 1: magic ring, ch 3, 2 dc, ch 3, (3 dc, ch 3) twice. sl st to join. (9 dc)
rnd 2: in the corner: ch 3, 2 dc, ch 3, 3 dc. ch 1. ${rest} sl st to join. (18 dc)`
    expect(read(text)).toEqual({ told: [], made: [9, 18] })
  })
})

describe('first stitches that are still free', () => {
  it.each(['1 tr. into top of first pop.', '1 tr. into first pop.', '1 tr. into the first pop.'])(
    'are worked in, and close nothing: %s',
    (last) => {
      const text = `Pop.: work 5 tr. into same place, slip loop from hook, insert hook into first of the 5 tr., pick up dropped loop and draw through.
Commence with 6 ch., join with a s.s. to form a ring.
1st round: 1 pop. into ring, 3 ch., * 1 pop. into ring, 3 ch.; rep. from * twice more, s.s. to top of first pop. (4 pop.).
2nd round: S.s. into first 3 ch. sp., 3 ch., (2 tr., 3 ch., 3 tr.) into same sp., * 1 tr. into top of next pop., (3 tr., 3 ch., 3 tr.) into next 3 ch. sp.; rep. from * twice more, ${last}, s.s. to 3rd of 3 ch. (28 tr.).`
      expect(read(text, 'UK')).toEqual({ told: [], made: [4, 28] })
    },
  )
})

describe('what becomes of the motifs', () => {
  it.each(['To make up', 'TO MAKE UP', 'Making up', 'To string up', 'To assemble', 'To hang', 'Assembly'])(
    'is no round: %s',
    (label) => {
      const text = `Rnd 1: Magic ring, ch 1, 12 sc in ring; join. (12 sc)
Rnd 2: Ch 1, 2 sc in each sc around; join. (24 sc) Fasten off.

${label}: ch 20, *dc along the top of a motif, ch 4, next motif, and so on.`
      expect(read(text)).toEqual({ told: [], made: [12, 24] })
    },
  )
})

it.each(['into this and each of the next 2 d.c.', 'into this d.c. and each of the next 2 d.c.'])(
  'what was led to is worked in: %s',
  (place) => {
    const text = `Begin with 6 ch.; join.
1st round: 1 ch., 15 d.c. into the ring; sl.st. to the first d.c.
2nd round: Sl.st. over 1 d.c., 1 d.c. ${place}, *3 ch., miss 2 d.c., 1 d.c. into each of the next 3 d.c. Repeat from * once more, 3 ch., miss 2 d.c.; sl.st. to the first d.c. (9 d.c.)`
    expect(read(text, 'UK')).toEqual({ told: [], made: [15, 9] })
  },
)

describe('what is said of the work', () => {
  const TWO = `Rnd 1: Magic ring, ch 1, 6 sc in ring; join. (6 sc)\n`
  it.each([
    'Ch 1, 2 sc in each sc around; join. (12 sc) A single crochet should fall in the center of each corner.',
    'Ch 1, 2 sc in each sc around (the first sc will look loose); join. (12 sc)',
    'Ch 1, 2 hdc (pull the first loop up tall) in each sc around; join. (12 hdc)',
    'Ch 1, 2 sc in each sc around; join. (6 groups of 2 sc each)',
  ])('makes no stitch: %s', (round) => {
    expect(read(`${TWO}Rnd 2: ${round}`)).toEqual({ told: [], made: [6, 12] })
  })
})

const LEAVES = `Rnd 1: Magic ring, ch 1, (sc in ring, ch 6) 3 times; join. (3 sc)
Rnd 2: In each ch-6 loop work (sc, 4 dc, sc, 4 dc, sc). Sl st to first sc. (33 sts)
Rnd 3: `

describe('what is told for each petal or leaf', () => {
  it.each([
    [
      'For each leaf: sc in the sc, 2 sc in each of next 4 dc, sc in the middle sc, 2 sc in each of next 4 dc, sc in the last sc. Sl st to first sc. (57 sc)',
      57,
    ],
    [
      'On each petal: sc in next sc, 2 sc in each of next 4 dc, sc in next sc, 2 sc in each of next 4 dc, sc in next sc; join. (57 sc)',
      57,
    ],
    [
      'Ch 1, over each leaf work: sc in sc, 2 sc in each of next 4 dc, sc in sc, 2 sc in each of next 4 dc, sc in sc; join. (57 sc)',
      57,
    ],
    ['Around each leaf: sc in next 11 sts, ch 2. Join. (33 sc)', 33],
    ['For each petal: sc in next 5 sts, (sc, ch 2, sc) in next sc, sc in next 5 sts. Join. (36 sc)', 36],
  ])('is worked as often as there are any: %s', (round, made) => {
    expect(read(LEAVES + round)).toEqual({ told: [], made: [3, 33, made] })
  })
})

describe('a chain closed in its first chain', () => {
  it.each([
    '4 ch, ss into first ch, 1 ch',
    'With A, 4 ch, ss into first ch. 1 ch',
    '4 ch, ss in 1st ch; 1 ch',
  ])('is the ring: %s', (ring) => {
    expect(read(`Rnd 1: ${ring}, 12 dc into ring, ss into first dc. 12 dc.`, 'UK')).toEqual({
      told: [],
      made: [12],
    })
  })
})

describe('the stitch in the middle of a corner', () => {
  it.each([
    'Ch 1, sc in each sc around, working 3 sc in center sc of each corner; join. (48 sc)',
    'Ch 1, sc in each sc around, placing 3 sc in center sc of each 3-sc corner; join. (48 sc)',
  ])('is told within the sweep: %s', (round) => {
    const text = `${SQUARE}. (12 dc)\nRnd 2: Ch 3, dc in next 2 dc, (2 dc, ch 2, 2 dc) in ch-2 sp, *dc in next 3 dc, (2 dc, ch 2, 2 dc) in ch-2 sp; rep from * 2 more times; join. (28 dc)
Rnd 3: Ch 1, sc in same st and in each dc around, working 3 sc in each corner; join. (40 sc)
Rnd 4: ${round}`
    expect(read(text)).toEqual({ told: [], made: [12, 28, 40, 48] })
  })
})
