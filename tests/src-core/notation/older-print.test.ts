/**
 * Ways of writing that older print and many hands use: groups without brackets, repeats in a ring that is named
 * before them, loops that close half way. Common practice, no source; accounts were counted by hand.
 */
import { describe, expect, it } from 'vitest'
import { printRounds } from '../../../src-core/notation/print'
import { readRounds } from '../../../src-core/notation/read'

const RING_6 = 'Rnd 1: Magic ring, ch 1, 6 sc in ring; join with sl st in first sc. (6 sc)\n'
const RING_12 = 'Rnd 1: Magic ring, ch 1, 12 sc in ring; join with sl st in first sc. (12 sc)\n'
const SIX_SPACES = `${RING_6}Rnd 2: Ch 1, sc in first sc, *ch 4, sc in next sc; rep from * 4 more times, ch 4; join with sl st in first sc. (6 sc, 6 ch-4 sps)\n`
const HALF_LOOPS = `${RING_12}Rnd 2: Ch 1, sc in first sc, *ch 5, sk next sc, sc in next sc; rep from * around, ending with ch 2, dc in first sc. (6 lps)\n`

const last = (text: string) => {
  const { rounds, worked, findings } = readRounds(text)
  return { ...rounds.at(-1)!, worked: worked.at(-1)!, codes: findings.map(({ code }) => code), findings }
}
const account = (text: string) => {
  const { made, consumed, spaces, codes } = last(text)
  return { made, consumed, spaces, codes }
}

describe('a group without brackets (M5)', () => {
  const group = { made: 42, consumed: { stitches: 0, spaces: 6 }, spaces: {} }
  it.each([
    'Rnd 3: *Sc, hdc, 3 dc, hdc, sc in next ch-4 sp; rep from * around; join. (42 sts)',
    'Rnd 3: *Sc, hdc, 3 dc, hdc, sc in next ch-4 sp; rep from * 5 more times; join. (42 sts)',
    '3rd rnd: * Sc, hdc, 3 dc, hdc and sc in next loop. Repeat from * around. Join.',
    'Rnd 3: Sc, hdc, 3 dc, hdc, sc in each ch-4 sp around; join. (42 sts)',
  ])('goes into the space that is named behind it: %s', (round) => {
    const { codes, ...rest } = account(SIX_SPACES + round)
    expect(rest).toEqual(group)
    expect(codes).toEqual(['rounds/group-without-brackets'])
    expect(last(SIX_SPACES + round).groups).toBe(6)
  })

  it('is told where it begins and ends', () => {
    const { findings } = last(
      `${SIX_SPACES}Rnd 3: *Sc, hdc, 3 dc, hdc, sc in next ch-4 sp; rep from * around; join.`,
    )
    expect(findings[0]).toMatchObject({ severity: 'note', target: { round: 3, column: 9 } })
    expect(findings[0]!.where).toContain('"Sc, hdc, 3 dc, hdc, sc in next ch-4 sp"')
  })

  it('keeps the slip in the count at its end, and no other finding', () => {
    const { codes } = last(
      `${SIX_SPACES}Rnd 3: *Sc, hdc, 3 dc, hdc, sc in next ch-4 sp; rep from * around; join. (40 sts)`,
    )
    expect(codes).toEqual(['rounds/wrong-end-count', 'rounds/group-without-brackets'])
  })

  it('is not seen where the stitches before the space come out even one by one', () => {
    const shaped = `${RING_12}Rnd 2: Ch 1, sc in first 2 sc, *ch 2, sc in next 2 sc; rep from * 4 more times, ch 2; join. (12 sc, 6 ch-2 sps)\n`
    const round = 'Rnd 3: Ch 1, *sc, sc, sc in next ch-2 sp; rep from * around; join. (18 sc)'
    expect(account(shaped + round)).toEqual({
      made: 18,
      consumed: { stitches: 12, spaces: 6 },
      spaces: {},
      codes: [],
    })
  })

  it.each(['consistent', 'expanded'] as const)('reads the same when it is printed (%s)', (style) => {
    const text = `${SIX_SPACES}Rnd 3: *Sc, hdc, 3 dc, hdc, sc in next ch-4 sp; rep from * around; join. (42 sts)`
    const { tree } = readRounds(text)
    const printed = printRounds(tree, { style })
    expect(printed).toContain('(Sc, hdc, 3 dc, hdc, sc) in next ch-4 sp')
    expect(account(printed)).toEqual({ ...group, codes: [] })
  })
})

describe('a repeat in a place that is named before it (M5)', () => {
  it('stays in the ring', () => {
    const text = `Rnd 1: In magic ring, *sc, ch 2; rep from * 3 more times; join. (4 sc, 4 ch-2 sps)
Rnd 2: Ch 1, *sc in next sc, (sc, ch 2, sc) in next ch-2 sp; rep from * around; join. (12 sc)`
    expect(account(text)).toEqual({
      made: 12,
      consumed: { stitches: 4, spaces: 4 },
      spaces: { 'ch-2': 4 },
      codes: [],
    })
  })

  it('stays in each space', () => {
    const text = `${SIX_SPACES}Rnd 3: In each ch-4 sp, *dc, ch 1; rep from * 3 more times.`
    expect(account(text)).toMatchObject({
      made: 24,
      consumed: { stitches: 0, spaces: 6 },
      spaces: { 'ch-1': 24 },
    })
  })
})

describe('a round that is closed half way along its last loop (M5, M6)', () => {
  it.each([
    'Rnd 3: Ch 1, sc in same lp, *ch 5, sc in next lp; rep from * around, ending last rep with sl st in first sc. (6 ch-5 lps)',
    'Rnd 3: Ch 1, sc in same lp, *ch 5, sc in next lp; rep from * around, ch 5; join with sl st in first sc. (6 ch-5 lps)',
    'Rnd 3: Ch 1, sc in lp just made, *ch 5, sc in next lp; rep from * around, ch 5; join with sl st in first sc. (6 ch-5 lps)',
  ])('leaves the hook in that loop: %s', (round) => {
    expect(account(HALF_LOOPS + round)).toEqual({
      made: 6,
      consumed: { stitches: 0, spaces: 6 },
      spaces: { 'ch-5': 6 },
      codes: [],
    })
  })

  it('is printed in full only as far as the text says how it ends', () => {
    const { tree } = readRounds(HALF_LOOPS)
    const { rounds, findings } = readRounds(printRounds(tree, { style: 'expanded' }))
    expect(rounds.at(-1)).toMatchObject({ made: 6, spaces: { 'ch-5': 6 } })
    expect(findings).toEqual([])
  })

  it('may begin with a loop and end in the joining', () => {
    const text = `1st rnd: Ch 6, join to form ring. 12 sc in ring. Join.
2nd rnd: Ch 5, * skip next sc, sc in next sc, ch 4. Repeat from * around, ending with ch 2, dc in joining.`
    const { made, spaces, codes } = account(text)
    expect({ made, codes }).toEqual({ made: 5, codes: [] })
    expect(Object.values(spaces).reduce((sum, count) => sum + count, 0)).toBe(6)
  })

  it('may end in a few words without "with"', () => {
    const text = `Rnd 1: Magic ring, ch 1, (sc, ch 2) 4 times in ring; join with sl st in first sc. (4 sc, 4 ch-2 sps)
Rnd 2: Sl st in ch-2 sp, ch 1, (sc, ch 2, sc) in same sp, *ch 1, (sc, ch 2, sc) in next ch-2 sp; rep from * around, ending ch 1; join. (8 sc, 4 ch-1 sps, 4 ch-2 sps)
Rnd 3: Sl st in next ch-2 sp, ch 1, (sc, ch 2, sc) in same sp, *ch 1, sc in next ch-1 sp, ch 1, (sc, ch 2, sc) in next ch-2 sp; rep from * around, ending ch 1, sc in last ch-1 sp, ch 1; join. (12 sc, 8 ch-1 sps, 4 ch-2 sps)`
    const { made, spaces, codes } = account(text)
    expect({ made, spaces }).toEqual({ made: 12, spaces: { 'ch-1': 8, 'ch-2': 4 } })
    expect(codes).not.toContain('rounds/wrong-end-count')
  })

  it('is told in figures that add up where it does not come out even', () => {
    const { findings } = last(
      `${RING_12}Rnd 2: Ch 1, *sc in next sc, ch 3, sk next sc; rep from * around, ending last rep with sc in next 2 sc, ch 1, sc in next sc; join.`,
    )
    expect(findings[0]).toMatchObject({ code: 'rounds/last-repeat-does-not-fit' })
    expect(findings[0]!.message).toContain('one repeat takes 2 sts')
    expect(findings[0]!.message).toContain('12 sts do not come out even')
  })
})

describe('petals in a ring (M5)', () => {
  const petals = `Ch 5, join with sl st to form ring.
Rnd 1: *Ch 3, 2 dc in ring, ch 3, sl st in ring; rep from * 4 more times. (5 petals)\n`
  it.each([
    'sl st in sl st between petals',
    'sl st in next sl st between petals',
    'sc in next sl st between petals',
  ])('leave a slip stitch between each two: %s', (into) => {
    const round = `Rnd 2: *Ch 4, ${into}, working behind; rep from * around. (5 ch-4 sps)`
    expect(last(petals + round).spaces).toEqual({ 'ch-4': 5 })
    expect(last(petals + round).codes).not.toContain('rounds/wrong-end-count')
  })

  it('are counted as often as they are worked', () => {
    const text = (count: number) =>
      `Rnd 1: Magic ring, ch 1, 10 sc in ring; join with sl st in first sc. (10 sc)
Rnd 2: *Ch 3, dc in next st, ch 3, sl st in next st; rep from * 4 more times. (${count} petals)`
    expect(last(text(5)).codes).toEqual([])
    const [finding] = last(text(6)).findings
    expect(finding).toMatchObject({ code: 'rounds/wrong-end-count', target: { round: 2 } })
    expect(finding!.message).toContain('the round makes 5 petals')
  })
})

describe('stitches around a post from behind (M5)', () => {
  const below = `Rnd 1: Magic ring, ch 3 (counts as dc), 7 dc in ring; join with sl st in top of beg ch-3. (8 dc)
Rnd 2: Ch 1, sc in first st, *ch 1, sc in next st; rep from * around, ch 1; join. (8 sc)\n`
  it.each([
    'sc around the bar of next dc of Rnd 1, working from behind',
    'sc around post of next dc of Rnd 1, working behind',
    'sc around post of next dc of Rnd 1 from behind',
    'sc around the post of next dc of Rnd 1 from the back',
  ])('are back posts from the first one on: %s', (words) => {
    const { worked, codes, made } = last(
      `${below}Rnd 3: *Ch 5, ${words}; rep from * around; join. (8 ch-5 sps)`,
    )
    expect({ made, codes }).toEqual({ made: 8, codes: [] })
    const posts = worked.elements.filter(({ standing }) => standing).map(({ into }) => into[0]?.post)
    expect(new Set(posts)).toEqual(new Set(['back']))
  })
})
