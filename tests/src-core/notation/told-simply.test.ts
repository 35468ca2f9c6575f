/** Endings of repeats, chains told of together, counts of several rounds, and what lesson sheets say (common practice, no source). */
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'

const LOOPS = (ending: string) => `Ch 8, join with sl st to form ring.
Rnd 1: Ch 1, 24 sc in ring, join in first sc.
Rnd 2: Ch 1, sc in first sc, *ch 4, sk next sc, sc in next sc, rep from * around${ending}, join in first sc. (12 ch-4 sps)`

describe('The last chain of a round', () => {
  it.each([
    ', end ch 4',
    '; finish ch 4',
    ', to end ch 4',
    '. End rnd ch 4',
    '. End the round with ch 4',
    ', end last rep ch 4',
    ', ending last rep with ch 4',
    ', end with a ch 4',
  ])('closes the last loop: %s', (ending) => {
    expect(told(LOOPS(ending))).toEqual([])
    expect(told(LOOPS(ending).replace('12 ch-4', '13 ch-4'))).toHaveLength(1)
  })
})

describe('The last chain behind a repeat that names no asterisk', () => {
  const text = (words: string) => LOOPS('').replace('rep from * around', words)
  it.each(['rep to end, ending ch 4', 'repeat around, ending with ch 4', 'rep around, end last rep ch 4'])(
    'closes the last loop: %s',
    (words) => {
      expect(told(text(words))).toEqual([])
      expect(told(text(words).replace('12 ch-4', '11 ch-4'))).toHaveLength(1)
    },
  )
})

describe('Chains of which a note tells together', () => {
  const text = (note: string, second: string) => `NOTES
- ${note}
Ch 4, sl st in first ch to form a ring.
Rnd 1: Ch 3, 1 dc in ring, ch 1, [2 dc in ring, ch 1] 5 times; sl st in top of beg ch 3.
Rnd 2: Ch 2, ${second}, 2 hdc in next dc, sc in next ch-1 sp, [2 hdc in each of next 2 dc, sc in next ch-1 sp] 5 times; sl st in top of beg ch 2. (24 hdc)`
  it.each([
    'Beginning ch 3 counts as a dc and beginning ch 2 as an hdc throughout.',
    'Throughout, ch 3 at beg of rnd counts as dc and ch 2 as hdc.',
    'Ch 2 at the start of a round counts as hdc, ch 3 as dc.',
    'The ch 3 and ch 2 at the beginning of rounds count as a dc and an hdc respectively.',
    'Turning chains count as stitches: ch 2 as hdc, ch 3 as dc.',
    'Beginning chains count as a stitch throughout (ch 3 = dc, ch 2 = hdc).',
    'The starting ch counts as a st: ch 2 for hdc, ch 3 for dc.',
  ])('stand for a stitch each: %s', (note) => {
    expect(told(text(note, 'hdc in same st'))).toEqual([])
    expect(made(text(note, 'hdc in same st'))).toEqual([12, 30])
    expect(told(text(note, '2 hdc in same st')).join()).toContain('wrong-end-count')
  })
})

const GRANNY = (words: string) => `4 ch, ss in first ch to make a ring.
Round 1: 3 ch (counts as 1 tr), 2 tr in ring, [2 ch, 3 tr in ring] 3 times, 2 ch, ss in top of 3 ch. 12 tr.
Rounds 2–4: 3 ch, then 1 tr in each tr and (2 tr, 2 ch, 2 tr) in each 2-ch space all the way round, ss in top of 3 ch. ${words}`

describe('Counts of rounds that are worked alike', () => {
  it.each([
    '28, 44, 60 tr.',
    '28, 44 and 60 tr.',
    '28/44/60 tr.',
    '(28 → 44 → 60)',
    '28 tr, then 44, then 60.',
    '28 tr after round 2, 44 after round 3, 60 after round 4.',
    '(28 tr in the second round, 44 in the third, 60 in the fourth)',
  ])('are of one each: %s', (words) => {
    expect(told(GRANNY(words), 'UK')).toEqual([])
    expect(made(GRANNY(words), 'UK')).toEqual([12, 28, 44, 60])
    expect(told(GRANNY(words.replace('60', '62')), 'UK')).toHaveLength(1)
    expect(told(GRANNY(words.replace('44', '45')), 'UK')).toHaveLength(1)
  })
})

const DISK = (words: string, from = 'Chain 2.\nRound 1: 6 sc in 2nd ch from hook.') => `${from}
Round 2: 2 sc in each st. (12)
Round 3: ${words} (18)`

describe('A repeat in a sentence of its own', () => {
  it.each([
    'Make 1 single crochet in the first stitch and 2 single crochets in the next stitch. Do this six times.',
    '1 sc in next st, then 2 sc in next st. Do this all the way around.',
    '1 sc in next st, then 2 sc in next st. Keep doing this until you get back to the start.',
    '1 sc in next st, 2 sc in next st. Work this sequence six times.',
    '1 sc in next st, 2 sc in next st. You will do these two steps 6 times.',
    '1 sc in next st, 2 sc in next st. Do it again five times.',
    '1 sc in next st, 2 sc in next st, six times.',
  ])('goes for what stands before it: %s', (words) => {
    expect(told(DISK(words))).toEqual([])
    expect(made(DISK(words))).toEqual([6, 12, 18])
    if (/six|6|five/.test(words))
      expect(told(DISK(words.replace(/six|6/, 'five').replace('five times.', 'four times.')))).not.toEqual([])
  })
})

describe('The first chain made', () => {
  it.each(['in the first chain you made', 'into the first chain', 'in the very first ch'])(
    'takes all of a round: %s',
    (words) => {
      const first = (from: string) => DISK('(sc, inc) 6 times.', from)
      expect(told(first(`Chain 2.\nRound 1: 6 sc ${words}.`))).toEqual([])
      expect(told(first(`Round 1: Ch 2, 6 sc ${words}.`))).toEqual([])
    },
  )

  it('is the next one where a row is worked along', () => {
    expect(told('Ch 9.\nRow 1: Sc in 2nd ch from hook, 2 sc in next ch. (3 sc)').join()).toContain(
      'chains-left',
    )
  })
})

describe('A count that the maker is asked for', () => {
  it.each([
    'Count them: 6 stitches.',
    'Count your stitches: 6.',
    'Now count: 6?',
    'Count again - you have 6.',
  ])('is held to: %s', (words) => {
    const text = `Chain 2.\nRound 1: Make 6 sc in the 2nd ch from the hook. ${words}`
    expect(told(text)).toEqual([])
    expect(made(text)).toEqual([6])
    expect(told(text.replace(/6(?= stitches|[.?]$)/, '7'))).toHaveLength(1)
  })
})

describe('Slip stitches under a heading of their own', () => {
  it.each(['Finish\n', 'Ending off\n', 'Last step\n', 'To finish: ', 'Fastening off:\n'])(
    'are no round: %j',
    (heading) => {
      const text = `${DISK('(sc, inc) 6 times.')}\n\n${heading}Slip stitch in the next stitch. Cut the yarn.`
      expect(told(text)).toEqual([])
      expect(made(text)).toEqual([6, 12, 18])
    },
  )
})

describe('Stitches that chains lead over without a word', () => {
  const SHELLS = `Rnd 1: Ch 4, join to form ring. Ch 1, 8 sc in ring, join. (8 sc)
Rnd 2: Ch 1, sc in first sc, *7 dc in next sc, sc in next sc, rep from * 2 more times, 7 dc in last sc, join. (28 dc, 4 sc)
Rnd 3: Sl st in each of next 4 dc, ch 1, sc in same dc as last sl st, *ch 4, GROUP in next sc, ch 4, sk next 3 dc, sc in next dc, rep from * 2 more times, ch 4, GROUP in next sc, ch 4, join in first sc.`
  it.each(['dc', '(dc, ch 2, dc)', '3 dc'])(
    'are of another kind than the next one that is named: %s',
    (group) => {
      const text = SHELLS.replaceAll('GROUP', group)
      expect(told(text)).toEqual([])
      // One lap too few leaves a shell behind, and what is left is of both kinds.
      expect(
        told(text.replace('sc in next dc, rep from * 2 more', 'sc in next dc, rep from * once more')).join(),
      ).toContain('stitches-left')
    },
  )

  const RAYS = (first: string, between: string) => `Ch 9, join with sl st to form ring.
Rnd 1: Ch 3, 4 dc in ring, ch 2, *5 dc in ring, ch 2; rep from * 4 more times, join in top of ch-3.
Rnd 2: ${first}dc in next 2 dc, *ch 3, sc in next ch-2 sp, ch 3, ${between}dc in next 3 dc; rep from * 4 more times, ch 3, sc in next ch-2 sp, ch 3, join.`
  it('are as many as are skipped in words on the other side, or passed where the round begins', () => {
    expect(told(RAYS('Sl st in next dc, ch 3, ', 'sk 1 dc, '))).toEqual([])
    expect(told(RAYS('Ch 3, ', '')).join()).toContain('stitches-passed')
  })
})

describe('"Every other" beside the place in hand', () => {
  const text = (words: string) => `Rnd 1: Ch 1, 12 sc in magic ring, join. (12 sc)
Rnd 2: Ch 1, sc in first sc, *ch 3, sk next sc, sc in next sc; rep from * 4 more times, ch 3, join. (6 ch-3 sps)
Rnd 3: Sl st in first ch-3 sp, ch 1, ${words}, join. (30 sts)`
  it.each([
    'in this space and in every other space work (sc, 3 dc, sc)',
    'in the same sp and into every other sp work (sc, 3 dc, sc)',
    '(sc, 3 dc, sc) in same sp and in every other sp around',
  ])('means all of them: %s', (words) => {
    expect(told(text(words))).toEqual([])
    expect(told(text(words).replace('30 sts', '25 sts'))).toHaveLength(1)
  })
  it('means every second one elsewhere', () => {
    expect(
      made('Rnd 1: Ch 1, 12 sc in magic ring, join.\nRnd 2: Ch 4, dc in every other st around, join.')?.at(
        -1,
      ),
    ).not.toBe(13)
  })
})
