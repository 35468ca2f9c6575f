/** Shells as older leaflets have them: made at the beginning of a round, told by their space, begun with its chains. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

const read = (text: string, terms: 'US' | 'UK' = 'US') => {
  const { rounds, findings } = readRounds(text, { terms })
  return {
    made: rounds.map(({ made }) => made),
    spaces: rounds.map(({ spaces }) => spaces),
    told: findings.filter(({ severity }) => severity !== 'note').map(({ code }) => code),
  }
}
const IN_RING = [
  'Ch 8. Join with sl st to form ring.',
  '1st rnd: Ch 3, d c, ch 2 and 2 d c in ring (shell made), (ch 3, 2 d c, ch 2 and 2 d c in ring) 5 times, ch 3. Join.',
]
const BEGIN = '2nd rnd: Sl st in next d c and in next sp, ch 3, d c, ch 2 and 2 d c in same sp'

describe('a shell', () => {
  it.each([
    '2 d c, ch 2 and 2 d c in sp of next shell',
    '2 d c, ch 2, 2 d c in next shell',
    '2 d c, ch 2 and 2 d c in next shell sp',
    'shell in sp of next shell',
    'shell in next shell',
    'in sp of next shell make shell',
    'shell of (2 d c, ch 2, 2 d c) in next shell',
    'work a shell of (2 d c, ch 2, 2 d c) in next ch-2 sp',
  ])('above shells that were made in one ring: %s', (shell) => {
    const text = [...IN_RING, `${BEGIN}, * ch 4, ${shell}; repeat from * around, ending with ch 4. Join.`]
    const { made, spaces, told } = read(text.join('\n'))
    expect(told).toEqual([])
    expect(made).toEqual([24, 24])
    expect(spaces[1]).toEqual({ 'ch-2': 6, 'ch-4': 6 })
  })

  it('is explained by the one that begins with the chains of its round', () => {
    const { made, told } = read(
      [
        'Ch 8. Join with sl st to form ring.',
        '1st rnd: Ch 3 (counts as dc), 15 dc in ring. Join.',
        '2nd rnd: Ch 3 (counts as dc), (dc, ch 2, 2 dc) in same st (shell made), * ch 1, sk 3 dc, shell in next dc. Repeat from * around, ending with ch 1. Join.',
      ].join('\n'),
    )
    expect(told).toEqual([])
    expect(made).toEqual([16, 16])
  })

  it('over two stitches has its space between them', () => {
    const { made, spaces, told } = read(
      [
        'Ch 10. Join with sl st to form ring.',
        '1st rnd: Ch 3, 29 d c in ring. Join to top of ch-3 (30 d c).',
        '2nd rnd: Ch 3, d c in same place as sl st, 2 d c in each d c around. Join (60 d c).',
        '3rd rnd: Ch 3, d c in same place as sl st, ch 2, 2 d c in next d c, * ch 4, skip next 4 d c, 2 d c in next d c, ch 2, 2 d c in next d c (shell made). Repeat from * around, ending with ch 4. Join.',
        '4th rnd: Sl st in next d c and in next sp, ch 3, in same sp make d c, ch 2 and 2 d c; * ch 2, d c in next loop, ch 2, in sp of next shell make shell. Repeat from * around, ending with ch 2, d c in last loop, ch 2. Join.',
      ].join('\n'),
    )
    expect(told).toEqual([])
    expect(made).toEqual([30, 60, 40, 50])
    expect(spaces[3]).toEqual({ 'ch-2': 30 })
  })

  it('leaves the spaces beside it to chains, and they are no loops', () => {
    const rows = [
      'Starting at top, ch 6. Join with sl st to form ring.',
      '1st row: Ch 3 (to count as 1 d c), d c, ch 2 and 2 d c in ring (shell made), ch 3, 2 d c, ch 2 and 2 d c in ring. Turn.',
      '2nd row: Sl st in next d c and in next sp, ch 3, d c, ch 2 and 2 d c in same sp, ch 2, 7 tr in next ch-3 sp, ch 2, 2 d c, ch 2 and 2 d c in sp of next shell. Turn.',
      '3rd row: Sl st in next d c and in next sp, ch 3, d c, ch 2 and 2 d c in same sp, ch 2, s c in next tr, (ch 3, s c in next tr) 6 times, ch 2, 2 d c, ch 2 and 2 d c in sp of next shell. Turn (6 loops).',
    ]
    expect(read(rows.join('\n'))).toMatchObject({ made: [8, 15, 15], told: [] })
    // One loop too many is told.
    const wrong = rows.join('\n').replace('(6 loops)', '(7 loops)')
    expect(read(wrong).told).toEqual(['rounds/wrong-end-count'])
  })
})

describe('parts of other days', () => {
  const rose = (where: string) =>
    [
      'Ch 8, join with sl st to form ring.',
      '1st rnd: Ch 6 (to count as d c and ch 3), * d c in ring, ch 3. Repeat from * 4 more times. Join with sl st to 3rd st of ch-6 (6 sps).',
      '2nd rnd: In each sp around make s c, half d c, 3 d c, half d c and s c. Join (6 petals).',
      `3rd rnd: * Ch 5, s c ${where}. Repeat from * around (6 loops).`,
    ].join('\n')
  it.each([
    'in back of work around next d c of 1st rnd, between petals',
    'in back of work around next d c of 1st rnd',
    'from the back around next d c of 1st rnd, between petals',
  ])('loops behind petals: %s', (where) => {
    const { made, spaces, told } = read(rose(where))
    expect(told).toEqual([])
    expect(made[2]).toBe(6)
    expect(spaces[2]).toEqual({ 'ch-5': 6 })
  })

  it('dbl. tr. with its stops', () => {
    const text = [
      'Commence with 8 ch., join with a s.s. to form a ring.',
      '1st Round: 4 ch. (to stand for 1 dbl. tr.), 23 dbl. tr. into ring, 1 s.s. into 4th of 4 ch. (24 dbl. tr.)',
      '2nd Round: 1 d.c. into same place as s.s., * 5 ch., miss 2 dbl. tr., 1 d.c. into next dbl. tr.; repeat from * 6 times more, 5 ch., miss 2 dbl. tr., 1 s.s. into 1st d.c. (8 loops)',
    ].join('\n')
    expect(read(text, 'UK')).toMatchObject({ made: [24, 8], told: [] })
  })

  it.each(['sl st in center ring at back', 'sl st in flower', 'sl st in center ring'])(
    'a stem that is fastened: %s',
    (end) => {
      const text = `Ch 16.\nRow 1: Sc in 2nd ch from hook and in each ch across, ${end}. Fasten off. (15 sc)`
      expect(read(text)).toMatchObject({ made: [15], told: [] })
    },
  )
})
