/** Spellings of older and casual print (common practice, no source): stops in abbreviations, "ea", "magic lp". */
import { describe, expect, it } from 'vitest'
import { finding } from '../../../src-core/findings/finding'
import { printRounds } from '../../../src-core/notation/print'
import { readRounds } from '../../../src-core/notation/read'

const account = (text: string) => {
  const { rounds, findings } = readRounds(text)
  return { rounds: rounds.map(({ made, spaces }) => ({ made, spaces })), codes: findings.map((f) => f.code) }
}
const codes = (text: string) => readRounds(text).findings.map((found) => found.code)

describe('abbreviations with full stops', () => {
  it.each([
    [
      'Rnd 1: Magic ring, 8 s.c. in ring; join. (8 s.c.)\nRnd 2: Ch 1, 2 s.c. in each sc around; join. (16 s.c.)',
      'Rnd 1: Magic ring, 8 sc in ring; join. (8 sc)\nRnd 2: Ch 1, 2 sc in each sc around; join. (16 sc)',
    ],
    [
      'Rnd 1. Ch. 4, join with sl. st. in 1st ch. to form a ring. Ch. 1, 8 sc. in ring. Join with sl. st. (8 sc.)\nRnd 2. Ch. 1, 2 sc. in each sc. around. Join. (16 sc.)',
      'Rnd 1. Ch 4, join with sl st in 1st ch to form a ring. Ch 1, 8 sc in ring. Join with sl st. (8 sc)\nRnd 2. Ch 1, 2 sc in each sc around. Join. (16 sc)',
    ],
    [
      'Rnd 1: Magic ring, ch. 3, 15 d. c. in ring, join. (16 d.c.)\nRnd 2: Ch. 1, s.c. in same st, *ch. 3, sk. 1 st., sc in next st.; rep. from * 6 more times, ch. 3, sk. 1 st., join. (8 ch.-3 sps.)',
      'Rnd 1: Magic ring, ch 3, 15 dc in ring, join. (16 dc)\nRnd 2: Ch 1, sc in same st, *ch 3, sk 1 st, sc in next st; rep from * 6 more times, ch 3, sk 1 st, join. (8 ch-3 sps)',
    ],
    ['Rnd 1: Magic ring, 12 h.d.c. in ring. (12 h.d.c.)', 'Rnd 1: Magic ring, 12 hdc in ring. (12 hdc)'],
  ])('reads %s as the stitches', (dotted, plain) => {
    expect(account(dotted)).toEqual(account(plain))
    expect(codes(dotted).filter((code) => code !== 'rounds/ch2-not-stated')).toEqual([])
    const { tree } = readRounds(dotted)
    expect(printRounds(tree)).toBe(dotted)
    const modern = printRounds(tree, { style: 'consistent' })
    expect(modern).not.toMatch(/c\.c|[sd]\. ?c\b|sl\.|ch\.|sk\./)
    expect(account(modern).rounds).toEqual(account(dotted).rounds)
  })

  it('marks the wrong count', () => {
    const { rounds, findings } = readRounds(
      'Rnd 1: Magic ring, 8 s.c. in ring.\nRnd 2: Ch 1, 2 s.c. in each sc around; join. (20 s.c.)',
    )
    expect(rounds[1]!.made).toBe(16)
    expect(findings.map((found) => found.code)).toEqual(['rounds/wrong-end-count'])
    expect(findings[0]!.message).not.toContain('..')
  })

  it('does not let an unknown stitch with stops pass', () => {
    expect(codes('Rnd 1: Magic ring, 8 z.c. in ring. (8 sc)')).toContain('rounds/unknown-abbreviation')
    expect(codes('Rnd 1: Magic ring, 8 sc in ring.\nRnd 2: 2 q.c. in each sc around.')).toContain(
      'rounds/unknown-abbreviation',
    )
  })

  it('leaves the stop at the end of a sentence alone', () => {
    expect(
      account('Rnd 1: Magic ring, 6 sc in ring.\nRnd 2: *Sc in next st, sc in next st. Rep from * around.'),
    ).toEqual(
      account('Rnd 1: Magic ring, 6 sc in ring.\nRnd 2: *Sc in next st, sc in next st; rep from * around.'),
    )
  })
})

describe('other spellings', () => {
  it('reads "ea" as each', () => {
    expect(account('Rnd 1: Magic ring, 6 sc in ring.\nRnd 2: 2 sc in ea st. (12 sc)')).toEqual({
      rounds: [
        { made: 6, spaces: {} },
        { made: 12, spaces: {} },
      ],
      codes: [],
    })
  })
})

describe('rings and ends', () => {
  it('keeps a magic loop a magic loop, and reads "magic lp"', () => {
    const { tree } = readRounds('Rnd 1: 6 sc into a magic loop.')
    const printed = printRounds(tree, { style: 'consistent' })
    expect(printed).toContain('magic loop')
    expect(codes(printed)).toEqual([])
    expect(codes('Rnd 1: 6 sc in magic lp.')).toEqual([])
  })

  it.each(['Join and fasten off. Weave in all ends.', 'Join; fasten off. Weave in ends.'])(
    'reads %s',
    (end) => {
      expect(codes(`Rnd 1: Magic ring, 6 sc in ring. ${end}`)).toEqual([])
    },
  )
})

describe('numbers of rounds', () => {
  const found = (text: string) =>
    readRounds(text).findings.map(({ code, severity, target }) => [
      code,
      severity,
      target?.round,
      target?.column,
    ])

  it('warns where a number is missing', () => {
    const text =
      'Rnd 1: Magic ring, 6 sc in ring.\nRnd 2: 2 sc in each st around.\nRnd 4: Sc in each st around.'
    expect(found(text)).toEqual([['rounds/number-missing', 'warning', 4, 1]])
    expect(found(text.replace('Rnd 4', 'Rnd 3'))).toEqual([])
    const told = (number: string) => readRounds(text.replace('Rnd 4', number)).findings[0]?.message
    expect(told('Rnd 4')).toContain('Rnd 3 is missing')
    expect(told('Rnd 6')).toContain('Rnds 3–5 are missing')
  })

  it('marks a round without instructions', () => {
    expect(found('Rnd 1:\nRnd 2: 2 sc in each st around.')[0]).toEqual(['rounds/empty-round', 'error', 1, 1])
  })

  it('says that earlier rounds are missing', () => {
    expect(found('Rnd 3: Sc in each st around.')[0]).toEqual(['rounds/earlier-missing', 'note', 3, 1])
    expect(readRounds('Rnd 3: Sc in each st around.', { after: { stitches: 6 } }).findings).toEqual([])
  })
})

describe('words of UK terms', () => {
  it.each(['ss in first dc', 'miss next dc'])('knows UK terms by "%s"', (words) => {
    const { terms, findings } = readRounds(
      `Rnd 1: Magic ring, 12 dc in ring.\nRnd 2: 1 ch, dc in next dc, ${words}.`,
    )
    expect(terms).toBe('UK')
    expect(findings.map((found) => found.code)).not.toContain('rounds/terms-unclear')
  })
})

describe('what is told of stitches in between', () => {
  it('is grammatical for one stitch', () => {
    expect(finding('rounds/stitches-passed', 'round 2', { passed: '1 st' }).message).toBe(
      'passed over without "sk": 1 st.',
    )
  })
})
