/** Printing back: word for word, in other terms, in one style, written out; what is printed reads the same. */
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { afterAll, describe, expect, it } from 'vitest'
import { abbreviationsUsed, specialStitches } from '../../../src-core/notation/abbreviations'
import { printRounds } from '../../../src-core/notation/print'
import { readRounds } from '../../../src-core/notation/read'
import type { After, ReadOptions, ReadRounds } from '../../../src-core/notation/read'
import { runs } from '../../runs'

interface Line {
  readonly id: string
  readonly text: string
  readonly terms: 'US' | 'UK'
  readonly previous: After
  readonly error?: { readonly code: string }
  readonly expect?: { readonly error?: { readonly code: string } }
}

const lines = ['rounds', 'rounds-own', 'rounds-broken'].flatMap((name) =>
  readFileSync(new URL(`../../fixtures/${name}.jsonl`, import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as Line),
)
const sound = lines.filter((line) => !line.error && !line.expect?.error)
const inTerms = lines.filter((line) => (line.error ?? line.expect?.error)?.code !== 'wrong-terms')
const STYLES = ['consistent', 'expanded'] as const

const known = new Map<string, ReadRounds>()

/** What several tests read, read once. */
function readOnce(text: string, options: ReadOptions): ReadRounds {
  const key = JSON.stringify([text, options])
  const read = known.get(key) ?? readRounds(text, options)
  known.set(key, read)
  return read
}

afterAll(() => known.clear())

const other = (terms: 'US' | 'UK') => (terms === 'US' ? 'UK' : 'US')

/** What the rounds come to, without where the words stand. */
const account = ({ rounds }: ReadRounds) =>
  rounds.map(({ made, consumed, spaces, groups, picots, stitches }) => ({
    made,
    consumed,
    spaces,
    groups,
    picots,
    stitches,
  }))

const stitch = fc.constantFrom('sc', 'hdc', 'dc', 'tr', 'dtr', 'trtr')
const few = fc.integer({ min: 1, max: 5 })
const leaf = fc.oneof(
  fc.tuple(stitch, few).map(([name, count]) => `${name} in next ${count > 1 ? `${count} sts` : 'st'}`),
  fc.tuple(few, stitch).map(([count, name]) => `${count} ${name} in next st`),
  few.map((count) => `ch ${count + 1}`),
  few.map((count) => `sk next ${count > 1 ? `${count} sts` : 'st'}`),
  few.map((count) => `skip ${count + 1} sts`),
  fc.tuple(stitch, stitch, few).map(([a, b, count]) => `(${a}, ch ${count}, ${b}) in next st`),
  fc.tuple(stitch, stitch).map(([a, b]) => `(${a}, 3 ${b}, ${a}) in next st`),
  stitch.map((name) => `${name}2tog`),
  stitch.map((name) => `FP${name} around next st`),
  fc.tuple(stitch, few).map(([name, count]) => `${name} ${count}`),
  stitch.map((name) => `(${name}, ch 3, sl st in 3rd ch from hook, ${name}) in next st`),
)
const phrases = fc.array(leaf, { minLength: 1, maxLength: 4 }).map((list) => list.join(', '))
const repeated = fc.oneof(
  fc.tuple(phrases, few).map(([body, count]) => `*${body}; rep from * ${count} more times`),
  phrases.map((body) => `*${body}; rep from * around`),
  fc.tuple(phrases, few).map(([body, count]) => `[${body}] ${count + 1} times`),
  fc.tuple(phrases, few).map(([body, count]) => `(${body}) x ${count + 1}`),
  phrases,
)
const round = fc
  .tuple(
    fc.integer({ min: 1, max: 12 }),
    fc.constantFrom('', 'Ch 1, ', 'Ch 3 (counts as dc), ', 'With MC, ', 'Working in BLO, '),
    fc.array(repeated, { minLength: 1, maxLength: 3 }),
    fc.constantFrom('', '; join', ', sl st in first st', '; join with sl st in first sc'),
  )
  .map(([number, start, parts, end]) => {
    const body = start + parts.join(', ') + end
    return `Rnd ${number}: ${body[0]!.toUpperCase()}${body.slice(1)}.`
  })

describe('printing as written', () => {
  it.each(lines.map((line) => [line.id, line] as const))('%s comes back word for word', (_, line) => {
    const { tree } = readOnce(line.text, { terms: line.terms, after: line.previous })
    expect(printRounds(tree)).toBe(line.text)
    expect(printRounds(tree, { terms: line.terms })).toBe(line.text)
  })

  it('comes back word for word, whatever it is', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(printRounds(readRounds(text).tree)).toBe(text)
      }),
    )
  })
})

describe('other terms', () => {
  it.each(inTerms.filter((line) => line.terms === 'US').map((line) => [line.id, line] as const))(
    '%s: US → UK → US is the identity',
    (_, line) => {
      const uk = printRounds(readOnce(line.text, { terms: 'US' }).tree, { terms: 'UK' })
      expect(printRounds(readRounds(uk, { terms: 'UK' }).tree, { terms: 'US' })).toBe(line.text)
    },
  )

  it('US → UK → US is the identity for any round', () => {
    fc.assert(
      fc.property(fc.array(round, { maxLength: 3 }), (rounds) => {
        const text = rounds.join('\n')
        const uk = printRounds(readRounds(text, { terms: 'US' }).tree, { terms: 'UK' })
        expect(uk).not.toMatch(/\b(sc|hdc|sk|sl st)\b/)
        expect(printRounds(readRounds(uk, { terms: 'UK' }).tree, { terms: 'US' })).toBe(text)
      }),
      { numRuns: runs(500), seed: 20261124 },
    )
  })

  it.each(inTerms.map((line) => [line.id, line] as const))(
    '%s has the same account in the other terms',
    (_, line) => {
      const read = readOnce(line.text, { terms: line.terms, after: line.previous })
      const terms = other(line.terms)
      const again = readRounds(printRounds(read.tree, { terms }), { terms, after: line.previous })
      expect(account(again)).toEqual(account(read))
      expect(again.findings.map((found) => found.code)).toEqual(read.findings.map((found) => found.code))
    },
  )

  it('tells the triple treble of one side from that of the other', () => {
    const us =
      'Rnd 2: Ch 6 (counts as trtr), trtr in next st, trtr2tog, FPtrtr around next trtr, dtr in next st, sc in next st.'
    const uk =
      'Rnd 2: Ch 6 (counts as qtr), qtr in next st, qtr2tog, FPqtr around next qtr, trtr in next st, dc in next st.'
    expect(printRounds(readRounds(us, { terms: 'US' }).tree, { terms: 'UK' })).toBe(uk)
    expect(printRounds(readRounds(uk, { terms: 'UK' }).tree, { terms: 'US' })).toBe(us)
    expect(printRounds(readRounds('Quad tr in next st.', { terms: 'UK' }).tree, { terms: 'US' })).toBe(
      'Trtr in next st.',
    )
    const { worked } = readRounds(us, { terms: 'US', after: { stitches: 7 } })
    expect(worked[0]!.elements.map((element) => element.countsAs ?? element.stitch).slice(0, 3)).toEqual([
      'trtr',
      'trtr',
      'trtr',
    ])
  })

  it('names stitches, skips and spaces the way the other readers do', () => {
    const { tree } = readRounds(
      'Rnd 3: Sl st in next ch-3 sp, skip 2 sts, sk next st, half double crochet in next st, Dc2tog, FPtr around next dc.',
      { terms: 'US' },
    )
    expect(printRounds(tree, { terms: 'UK' })).toBe(
      'Rnd 3: Ss in next 3-ch sp, miss out 2 sts, miss next st, half treble crochet in next st, Tr2tog, FPdtr around next tr.',
    )
  })
})

describe('one style', () => {
  for (const style of STYLES) {
    it.each(lines.map((line) => [line.id, line] as const))(
      `%s: print → read → print is stable (${style})`,
      (_, line) => {
        const options = { terms: line.terms, after: line.previous }
        const printed = printRounds(readOnce(line.text, options).tree, { style })
        expect(printRounds(readOnce(printed, options).tree, { style })).toBe(printed)
      },
    )

    it.each(sound.map((line) => [line.id, line] as const))(
      `%s reads the same when printed (${style})`,
      (_, line) => {
        const options = { terms: line.terms, after: line.previous }
        const read = readOnce(line.text, options)
        const again = readOnce(printRounds(read.tree, { style }), options)
        expect(account(again)).toEqual(account(read))
        expect(again.findings).toEqual([])
      },
    )

    it(`is stable for any round, and reads the same (${style})`, () => {
      fc.assert(
        fc.property(round, fc.nat(60), (text, stitches) => {
          const options = { terms: 'US' as const, after: { stitches } }
          const read = readOnce(text, options)
          const printed = printRounds(read.tree, { style })
          const again = readRounds(printed, options)
          expect(printRounds(again.tree, { style })).toBe(printed)
          const certain = read.worked.every((worked) => worked.certain)
          if (certain) expect(account(again)).toEqual(account(read))
        }),
        { numRuns: runs(1000), seed: 20261124 },
      )
    })
  }

  it('puts counts, repeats and joins where readers look for them', () => {
    const text =
      '3rd round. ch 1, 2 single crochet in next stitch, *sc 1, inc*, repeat from * to * 2 times more, join. = 14 sc'
    const { tree } = readRounds(text, { terms: 'US', after: { stitches: 7 } })
    expect(printRounds(tree, { style: 'consistent' })).toBe(
      'Rnd 3: Ch 1, 2 sc in next st, *sc in next st, inc; rep from * 2 more times; join. (14 sc)',
    )
    expect(printRounds(tree, { style: 'expanded' })).toBe(
      'Rnd 3: Ch 1, 2 sc in next st, sc in next st, inc, sc in next st, inc, sc in next st, inc; join. (14 sc)',
    )
  })
})

describe('a stem that is gone round', () => {
  it.each([
    ['US', '1 sc round the stem of next sc of Round 1'],
    ['US', 'BPsc round the post of next sc'],
    ['UK', '1 dc round the stem of next dc of Round 1'],
    ['UK', '1 dc round stem of next dc'],
  ] as const)('is no round, and reads the same when it is printed (%s: %s)', (terms, step) => {
    const sc = terms === 'US' ? 'sc' : 'dc'
    const text = `Round 1: Make a magic ring, ch 1, 6 ${sc} in ring, join. (6 ${sc})
Round 2: Ch 1, *${step}, ch 3; rep from * 5 more times, join.`
    const read = readRounds(text, { terms })
    expect(read.rounds[1]!.made).toBe(6)
    for (const style of STYLES) {
      const printed = printRounds(read.tree, { style })
      expect(printed).toMatch(/round (?:the )?(?:stem|post)/)
      expect(account(readRounds(printed, { terms }))).toEqual(account(read))
    }
  })
})

describe('abbreviations', () => {
  it('lists what the text uses, in the terms asked for', () => {
    const text =
      'Rnd 2: Ch 3, FPdc around next st, sk 1 st, dc3tog in next ch-3 sp; rep from * around, sl st in beg ch.'
    const { tree } = readRounds(text, { terms: 'US' })
    const us = abbreviationsUsed(tree)
    expect(us).toContainEqual({ abbreviation: 'dc3tog', meaning: 'double crochet 3 together' })
    expect(us).toContainEqual({ abbreviation: 'FPdc', meaning: 'front post double crochet' })
    expect(us).toContainEqual({ abbreviation: 'sl st', meaning: 'slip stitch' })
    expect(us).toContainEqual({ abbreviation: 'sk', meaning: 'skip' })
    const uk = abbreviationsUsed(tree, 'UK')
    expect(uk).toContainEqual({ abbreviation: 'tr3tog', meaning: 'treble crochet 3 together' })
    expect(uk).toContainEqual({ abbreviation: 'ss', meaning: 'slip stitch' })
    expect(uk.map((entry) => entry.abbreviation)).not.toContain('sk')
  })

  it('gives the stitches that the text explains', () => {
    const text =
      'Special stitches\nPicot: Ch 4, sl st in 4th ch from hook.\n\nRnd 1: *Sc in next st, picot; rep from * around.'
    const read = readRounds(text, { terms: 'US', after: { stitches: 6 } })
    expect(specialStitches(read.tree, 'UK')).toEqual([
      { abbreviation: 'picot', meaning: 'Ch 4, ss in 4th ch from hook.' },
    ])
    expect(read.worked[0]!.elements.find((element) => element.role === 'picot')!.count).toBe(4)
  })
})
