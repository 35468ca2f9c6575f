/** The same stitches said in other words come to the same account and the same worked rounds. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import type { ReadRounds } from '../../../src-core/notation/read'

/** What is made and where it goes, without the words that it is told in. */
const stitches = ({ worked, findings }: ReadRounds) => ({
  findings: findings.map(({ code }) => code),
  rounds: worked.map(({ elements, places }) => ({
    places: places.map(({ kind, chains, corner }) => ({ kind, chains, corner })),
    elements: elements.map(({ role, form, stitch, count, legs, into, group, standing }) => ({
      ...{ role, form, stitch, count, legs, into, group, standing },
    })),
  })),
})

const account = ({ rounds }: ReadRounds) =>
  rounds.map(({ made, consumed, spaces, groups, corners }) => ({ made, consumed, spaces, groups, corners }))

function same(first: ReadRounds, others: readonly ReadRounds[]): void {
  expect(first.findings).toEqual([])
  for (const other of others) {
    expect(account(other)).toEqual(account(first))
    expect(stitches(other)).toEqual(stitches(first))
  }
}

describe('rewording', () => {
  it('of an increase round changes nothing (M5)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 2, max: 12 }), (between, times) => {
        const count = times * (between + 1)
        const next = between === 1 ? 'next st' : `next ${between} sts`
        const body = (sc: string) => `${sc} in ${next}, 2 ${sc} in next st`
        const ways = (sc: string): string[] => [
          `*${body(sc)}; rep from * around`,
          `*${body(sc)}; rep from * ${times - 1} more times`,
          `*${body(sc)}* ${times} times`,
          `[${body(sc)}] ${times} times`,
          `(${body(sc)}) around`,
          `(${between} ${sc}, inc) x ${times}`,
          `*${sc} in each of ${next}, 2 ${sc} in next st; repeat from * to end`,
          Array.from({ length: times }, () => body(sc)).join(', '),
          Array.from({ length: count }, (_, at) =>
            (at + 1) % (between + 1) === 0 ? `2 ${sc} in next st` : `${sc} in next st`,
          ).join(', '),
        ]
        const read = (words: string, terms: 'US' | 'UK') =>
          terms === 'US'
            ? readRounds(
                `Rnd 1: Magic ring, ch 1, ${count} sc in ring; join.\nRnd 2: Ch 1, ${words}; join.`,
                { terms },
              )
            : readRounds(
                `Round 1: Magic ring, 1ch, ${count}dc into ring; ss to join.\nRound 2: 1ch, ${words}; ss to join.`,
                {
                  terms,
                },
              )
        const [first, ...others] = [
          ...ways('sc').map((words) => read(words, 'US')),
          ...ways('dc').map((words) => read(words, 'UK')),
        ]
        same(first!, others)
      }),
      { numRuns: 12 },
    )
  })

  it('of a round with corners changes nothing, spelled out or in one sweep (M5)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 8 }), fc.integer({ min: 1, max: 4 }), (corners, side) => {
        const sp = (terms: 'US' | 'UK') => (terms === 'US' ? 'ch-2 sp' : '2ch-sp')
        const corner = (terms: 'US' | 'UK') => (terms === 'US' ? '(2 dc, ch 2, 2 dc)' : '(2tr, 2ch, 2tr)')
        const dc = (terms: 'US' | 'UK') => (terms === 'US' ? 'dc' : 'tr')
        const next = side === 1 ? '' : `${side} `
        const ways = (terms: 'US' | 'UK'): string[] => {
          const lap = `${dc(terms)} in next ${next}${dc(terms)}, ${corner(terms)} in next ${sp(terms)}`
          return [
            `*${lap}; rep from * around`,
            `[${lap}] ${corners} times`,
            Array.from({ length: corners }, () => lap).join(', '),
            `*${dc(terms)} in each ${dc(terms)} to next corner, ${corner(terms)} in corner sp; rep from * around`,
            `${dc(terms)} in each ${dc(terms)} around, working ${corner(terms)} in each ${sp(terms)}`,
          ]
        }
        const read = (words: string, terms: 'US' | 'UK') =>
          terms === 'US'
            ? readRounds(
                `Rnd 1: Magic ring, ch 1 (does not count as a st), (${side} dc in ring, ch 2) ${corners} times; join.\nRnd 2: Ch 1 (does not count as a st), ${words}; join.`,
                { terms },
              )
            : readRounds(
                `Round 1: Magic ring, 1ch (does not count as a st), (${side}tr into ring, 2ch) ${corners} times; ss to join.\nRound 2: 1ch (does not count as a st), ${words}; ss to join.`,
                { terms },
              )
        const [first, ...others] = (['US', 'UK'] as const).flatMap((terms) =>
          ways(terms).map((words) => read(words, terms)),
        )
        same(first!, others)
      }),
      { numRuns: 10 },
    )
  })
})
