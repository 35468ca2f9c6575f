/** A rule for a pair of motifs that never meet is told: it changes nothing. */
import { describe, expect, it } from 'vitest'
import type { Joining, MeasuredMotif, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'

const square = (id: string, name: string): MeasuredMotif =>
  ({ id, name, kind: 'measured', outline: 'square', sideToSide: 60 }) as MeasuredMotif

/** Rows of large, small, large, small …: small ones meet small ones beside each other, and the large ones above. */
const project = (pairs: NonNullable<Joining['pairs']>, motifs: Record<string, string> = {}): Project => ({
  ...{ format: 'petalyard-project', version: 1 },
  motifs: [square('a', 'Rose'), square('b', 'Leaf'), square('c', 'Bud')],
  joining: { rule: 'edges', pairs },
  layout: {
    ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'a', columns: 4, rows: 4 },
    alternate: { motifs: ['a', 'b'], by: 'row' },
    cells: { motifs },
  },
})
const told = (...args: Parameters<typeof project>) =>
  planProject(project(...args)).findings.filter(({ code }) => code.startsWith('joins/pair-'))

describe('a joining rule for two motifs', () => {
  it('is silent where they meet, also those of one motif', () => {
    expect(told([{ motifs: ['a', 'b'], rule: 'bridge', bridgeChains: 2 }])).toEqual([])
    expect(told([{ motifs: ['a'], rule: 'bridge', bridgeChains: 2 }])).toEqual([])
  })

  it('is told where both are placed and never lie side by side', () => {
    // One bud in the upper left corner: it meets two of Rose and Leaf, and no other bud.
    const [found, ...others] = told([{ motifs: ['c', 'c'], rule: 'bridge', bridgeChains: 2 }], { '1,1': 'c' })
    expect(others).toEqual([])
    expect(found).toMatchObject({
      code: 'joins/pair-apart',
      severity: 'note',
      where: 'joining.pairs[0].motifs',
    })
    expect(found!.message).toContain('how Bud and Bud are joined, but no two of them meet')
    expect(told([{ motifs: ['a', 'c'], rule: 'bridge', bridgeChains: 2 }], { '1,1': 'c' })).toEqual([])
  })

  it('is not told of motifs that it keeps apart, or that are placed nowhere', () => {
    expect(told([{ motifs: ['c', 'c'], rule: 'apart', gap: 3 }], { '1,1': 'c' })).toEqual([])
    expect(told([{ motifs: ['a', 'c'], rule: 'edges' }]).map(({ code }) => code)).toEqual([
      'joins/pair-absent',
    ])
  })
})
