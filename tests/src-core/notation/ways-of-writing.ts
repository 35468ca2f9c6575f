/** A table of ways of writing, each held to what its rounds come to, without an error. */
import { expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

/** Stitches that a round ends with, and its spaces. */
export type Made = readonly [number, Readonly<Record<string, number>>?]

export type Way = readonly [what: string, terms: 'US' | 'UK', text: string, made: readonly Made[]]

export const RING = 'Rnd 1: Magic ring, 12 sc in ring, join.\n'

/** One test for each. */
export function readsWays(ways: readonly Way[]): void {
  it.each(ways)('%s', (_, terms, text, made) => {
    const { rounds, findings } = readRounds(text, { terms })
    expect(findings.filter(({ severity }) => severity === 'error').map(({ message }) => message)).toEqual([])
    expect(rounds.map((round) => [round.made, round.spaces])).toEqual(
      made.map(([count, spaces = {}]) => [count, spaces]),
    )
  })
}
