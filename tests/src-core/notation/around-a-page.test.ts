/** Words of a page around its rounds: sums behind a sign, last greetings, names of colours, notes of what chains are. (Common practice, no source.) */
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'

describe('a sum behind a sign', () => {
  const begin = 'Rd 1: In a magic ring 8 sc. = 8 sc\nRd 2: [1 sc in next st, 2 sc in next st] 4 times. '

  it.each(['Fasten off.', 'Cut yarn and fasten.', 'Weave in the ends.'])(
    'is no more to work before “%s”',
    (last) => {
      expect(made(`${begin}= 12 sc\n${last}`)).toEqual([8, 12])
      expect(made(`${begin}= 12 sc. ${last}`)).toEqual([8, 12])
      expect(told(`${begin}= 12 sc\n${last}`)).toEqual([])
    },
  )

  it('is held against the round', () => {
    expect(told(`${begin}= 14 sc\nFasten off.`)).toEqual([expect.stringContaining('rounds/wrong-end-count')])
  })
})

describe('a paragraph behind the last round', () => {
  const rounds =
    'Rnd 1: Ch 4, join with sl st to form ring, ch 1, 8 sc in ring, join.\nRnd 2: Ch 1, 2 sc in each sc around, join, fasten off and hide the ends. (16 sc)\n\n'

  it.each([
    'Pop a candle on it and enjoy the evening!',
    'Cluster a few on the sill, they look lovely.',
    'Block lightly. Pop them in a frame.',
  ])('works nothing: “%s”', (words) => {
    expect(made(rounds + words)).toEqual([8, 16])
    expect(told(rounds + words)).toEqual([])
  })

  it('works what has a number or a place', () => {
    expect(made(`${rounds}Popcorn in next sc, sc in each sc around.`)).not.toEqual([8, 16])
  })
})

describe('a name before the first sentence of a round', () => {
  it.each(['Marmalade', 'Quince', 'Pistachio'])('is a colour: %s', (name) => {
    const text = (head: string) =>
      `${head} 4ch, ss to first ch to make a ring, 3ch, 11tr into the ring, ss into top of 3ch. (12tr)`
    for (const head of [`Round 1 – ${name}.`, `Round 1. ${name}.`, `Round 1 – ${name}:`]) {
      expect(made(text(head), 'UK')).toEqual([12])
      expect(told(text(head), 'UK').filter((line) => !line.startsWith('rounds/words-passed'))).toEqual([])
    }
  })

  it('hides no stitch that is spelled wrong', () => {
    const text =
      'Rnd 1: Ch 4, join to form ring, ch 1, 8 sc in ring, join.\nRnd 2: Dcc in each sc around. Join.'
    expect(told(text).join()).toContain('rounds/unknown-abbreviation')
  })
})

describe('what chains are, told once for all rounds', () => {
  const rounds =
    'Rnd 1: Ch 4, join with sl st to form ring, ch 3, 11 dc in ring, join with sl st in top of ch 3. (12 dc)\nRnd 2: Ch 3, bobble in next dc, *dc in next dc, bobble in next dc; rep from * 4 more times, join with sl st in top of ch 3. (6 dc, 6 bobbles)'

  it.each([
    'Ch 3 at beg of rnd is first dc.',
    'The ch 3 at the beginning of a round is your first dc.',
    'Ch 3 at beg of each rnd is always counted as a dc.',
  ])('counts: “%s”', (note) => {
    expect(made(`${note}\n${rounds}`)).toEqual([12, 12])
    expect(told(`${note}\n${rounds}`)).toEqual([])
  })

  it('says nothing where it names no stitch', () => {
    expect(made(`The ch 3 at the beginning is the tightest part.\n${rounds}`)).toEqual(made(rounds))
  })
})

describe('older print', () => {
  it.each(['w.o.h.', 'w.r.h.', 'y.o.h.', 'y.r.h.'])('has %s for yarn over hook', (over) => {
    const text = `1st round: 8 ch., join into a ring with a s.s., 1 ch., 16 d.c. into ring, s.s. to first d.c.
2nd round: 3 ch., leaving last loop of each on hook work 1 tr. into each of next 3 d.c., ${over} and draw through all loops on hook, * 7 ch., leaving last loop of each on hook work 1 tr. into each of next 4 d.c., ${over} and draw through all loops on hook (a cluster made); repeat from * twice more, 7 ch., s.s. to top of first cluster. (4 clusters).`
    expect(made(text, 'UK')).toEqual([16, 4])
    expect(told(text, 'UK')).toEqual([])
  })
})

describe('a second motif', () => {
  const first =
    'First Motif—Starting at center, ch 8, join with sl st to form ring.\n1st rnd: Ch 3, 23 dc in ring. Join to top of ch-3 (24 dc).\n2nd rnd: Ch 1, sc in each st around. Join to first sc (24 sc).\n'
  const second =
    '\n2nd rnd: Ch 1, sc in each of next 12 sts, sl st in first motif, sc in each of next 12 sts. Join to first sc.'

  it.each([
    'Second Motif—Work as for First Motif to end of 1st rnd.',
    'Second Motif: Work same as First Motif through Rnd 1.',
    'Second Motif—Work as for First Motif until 1 rnd has been completed.',
    'Second Motif\nWork as for First Motif to within last rnd.',
  ])('goes on from “%s”', (words) => {
    expect(made(first + words + second)).toEqual([24, 24, 24])
    expect(told(first + words + second)).toEqual([])
  })
})
