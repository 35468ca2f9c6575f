/**
 * §rounds-corpus: rounds in the style of published patterns (`tests/fixtures/rounds.jsonl`), worded by us, each with the account of the round or the
 * error that a tech editor would mark. Common practice, no source; the accounts were counted by hand.
 */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../src-core/notation/read'
import type { After } from '../../src-core/notation/read'

interface Line {
  readonly id: string
  readonly text: string
  readonly terms: 'US' | 'UK'
  readonly previous: After
  readonly expect: {
    readonly made: number | null
    readonly consumed: { readonly stitches: number; readonly spaces: number } | null
    readonly spaces: Record<string, number>
    readonly passed?: { readonly stitches: number; readonly spaces: number }
    readonly groups?: number
    readonly picots?: number
    readonly corners?: number
    readonly consumedGaps?: number
    readonly consumedChains?: number
    readonly rounds?: number
    readonly error?: {
      readonly code: string
      readonly severity: string
      readonly where: string
      readonly says: string
    }
  }
}

const lines = readFileSync(new URL('../fixtures/rounds.jsonl', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '')
  .map((line) => JSON.parse(line) as Line)

describe('published formulations', () => {
  it('holds all 47 of them', () => expect(lines).toHaveLength(47))

  it.each(lines.map((line) => [line.id, line] as const))('%s is accounted for (M5, M6)', (_, line) => {
    const { rounds, findings } = readRounds(line.text, { terms: line.terms, after: line.previous })
    const wanted = line.expect
    expect(rounds).toHaveLength(wanted.rounds ?? 1)
    for (const { made, consumed, spaces } of rounds) {
      expect({ made, consumed, spaces }).toEqual({
        made: wanted.made,
        consumed: wanted.consumed,
        spaces: wanted.spaces,
      })
    }
    const round = rounds[0]!
    if (wanted.passed) expect(round.passed).toEqual(wanted.passed)
    if (wanted.groups !== undefined) expect(round.groups).toBe(wanted.groups)
    if (wanted.picots !== undefined) expect(round.picots).toBe(wanted.picots)
    if (wanted.corners !== undefined) expect(round.corners).toBe(wanted.corners)
    if (wanted.consumedGaps !== undefined) expect(round.gaps).toBe(wanted.consumedGaps)
    if (wanted.consumedChains !== undefined) expect(round.chains).toBe(wanted.consumedChains)
    if (!wanted.error) return expect(findings).toEqual([])
    expect(findings).toHaveLength(1)
    const found = findings[0]!
    expect(found.code).toBe(`rounds/${wanted.error.code}`)
    expect(found.severity).toBe(wanted.error.severity)
    expect(found.where).toContain(wanted.error.where)
    expect(found.message).toContain(wanted.error.says)
    if (wanted.error.where === 'round') return
    const column = found.target!.column!
    expect(line.text.slice(column - 1)).toMatch(
      new RegExp(`^${wanted.error.where.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}`),
    )
  })
})
