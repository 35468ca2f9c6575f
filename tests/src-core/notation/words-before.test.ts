/** What stands on a page before its rounds: sections in capitals, prose that names stitches, motifs to be made. (Common practice, no source.) */
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'

const clean = (text: string, counts: readonly number[], terms: 'US' | 'UK' = 'US') => {
  expect(told(text, terms)).toEqual([])
  expect(made(text, terms)).toEqual(counts)
}

describe('A section in capitals without a colon', () => {
  it('lists abbreviations and works none of them', () => {
    clean(
      `COTTAGE CUSHION

MEASUREMENTS Each square measures 8cm.
YOU WILL NEED DK cotton in three shades; 4mm hook.

ABBREVIATIONS (UK) ch, chain; dc, double crochet; sp, space; ss, slip stitch; tr, treble.

FIRST SQUARE
Foundation ring: 4ch, join with ss in first ch.
Round 1: 3ch (counts as 1tr), 2tr in ring, [2ch, 3tr in ring] 3 times, 2ch, ss in top of 3ch. 12tr.`,
      [12],
      'UK',
    )
  })

  it('tells what chains stand for, and explains stitches', () => {
    clean(
      `DOTS
NOTE The ch 3 at the beginning of a round counts as 1 dc.
SPECIAL STITCHES Cluster (cl): (yo, insert hook in st, yo and pull up a lp, yo, pull through 2 lps) 3 times, yo, pull through all lps.

Rnd 1: Magic ring, ch 3, 11 dc in ring, sl st in top of ch-3. (12 dc)
Rnd 2: Ch 3, dc in same st, 2 dc in each st around, sl st in top of ch-3. (24 dc)
FINISHING Weave in 2 ends and press.`,
      [12, 24],
    )
  })
})

describe('Prose before the rounds', () => {
  it.each([
    'Every square of the chart is either an open mesh (ch 2, dc) or a filled mesh (3 dc). Use size 10 thread.',
    'If you cannot read a chart, know that a corner is (3 dc, ch 2, 3 dc).',
    'A circle is just rounds of double crochet (dc) with increases (2 dc).',
  ])('works nothing: %s', (prose) => {
    clean(
      `FIRST STEPS
Lesson 3: The Diamond Square

${prose}

Ch 29.

Row 1: Dc in 8th ch from hook (the skipped chs count as a dc, a ch-2 mesh and 2 base chs), * ch 2, sk next 2 chs, dc in next ch; rep from * 6 times more. 8 open meshes.
Row 2: Ch 5 (counts as dc and ch 2), turn; dc in next dc, (2 dc in next sp, dc in next dc) 6 times, ch 2, sk next 2 chs, dc in next ch. 6 filled meshes.`,
      [9, 21],
    )
  })
})

describe('A motif with its number', () => {
  it.each(['BLOCK (Make 63): Starting at center with A, ch 6.', 'SQUARE (work 8): With A, ch 6.'])(
    'begins with the ring behind it: %s',
    (begins) => {
      clean(
        `${begins} Join with sl st to form ring.
1st rnd: Ch 3, make 15 dc in ring. Join with sl st to top of ch-3—16 dc.`,
        [16],
      )
    },
  )

  it('begins below the word "work" alone', () => {
    clean(
      'STITCH KEY (UK)\npicot – 3ch, ss in 3rd ch from hook\n\nWORK\nWith col 1 make a magic ring.\nRnd 1: 3ch, 11tr in ring; ss in top of 3ch. 12 sts',
      [12],
      'UK',
    )
  })
})

describe('A heading that remarks', () => {
  it.each(['A note on the join', 'Quick tip for beginners', 'Pattern hints'])(
    'works nothing: %s',
    (label) => {
      clean(
        `${label}: after the last stitch of each round (but the last), slip stitch to the top of the ch 3.

Ch 4 and join to form a ring.
Rnd 1. Ch 3, 11 dc in ring, join. There should be 12 dc.`,
        [12],
      )
    },
  )

  it('is none where the round itself says where it is worked', () => {
    clean('ROUND ONE\nIn a magic ring work: ch 3, 11 dc. Join to top of ch-3.\n→ 12 dc', [12])
  })
})
