/**
 * Rounds in our own wording, in the many styles that are in print (`tests/fixtures/rounds-own.jsonl`), and broken
 * ones (`rounds-broken.jsonl`). Accounts were counted by hand.
 */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import type { After } from '../../../src-core/notation/read'

function load<Line>(name: string): Line[] {
  return readFileSync(new URL(`../../fixtures/${name}.jsonl`, import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as Line)
}

interface Sound {
  readonly id: string
  readonly text: string
  readonly terms: 'US' | 'UK'
  readonly previous: After
  readonly expect: {
    readonly made: number
    readonly consumed: { readonly stitches: number; readonly spaces: number }
    readonly spaces: Record<string, number>
    readonly groups?: number
    readonly picots?: number
    readonly corners?: number
    readonly consumedGaps?: number
    readonly consumedChains?: number
    readonly rounds?: number
  }
}

interface Broken {
  readonly id: string
  readonly text: string
  readonly terms: 'US' | 'UK'
  readonly previous: After
  readonly error: {
    readonly code: string
    readonly severity: string
    readonly where: string
    readonly says: string
    readonly round?: number
  }
}

const sound = load<Sound>('rounds-own')
const broken = load<Broken>('rounds-broken')

describe('rounds in varied published style', () => {
  it('are at least sixty', () => expect(sound.length).toBeGreaterThanOrEqual(60))

  it.each(sound.map((line) => [line.id, line] as const))('%s is accounted for (M5, M6)', (_, line) => {
    const { rounds, findings } = readRounds(line.text, { terms: line.terms, after: line.previous })
    const wanted = line.expect
    expect(findings).toEqual([])
    expect(rounds).toHaveLength(wanted.rounds ?? 1)
    for (const { made, consumed, spaces } of rounds) {
      const { made: wantedMade, consumed: wantedConsumed, spaces: wantedSpaces } = wanted
      expect({ made, consumed, spaces }).toEqual({
        made: wantedMade,
        consumed: wantedConsumed,
        spaces: wantedSpaces,
      })
    }
    const round = rounds[0]!
    if (wanted.groups !== undefined) expect(round.groups).toBe(wanted.groups)
    if (wanted.picots !== undefined) expect(round.picots).toBe(wanted.picots)
    if (wanted.corners !== undefined) expect(round.corners).toBe(wanted.corners)
    if (wanted.consumedGaps !== undefined) expect(round.gaps).toBe(wanted.consumedGaps)
    if (wanted.consumedChains !== undefined) expect(round.chains).toBe(wanted.consumedChains)
  })
})

describe('broken rounds', () => {
  it('are at least forty', () => expect(broken.length).toBeGreaterThanOrEqual(40))

  it.each(broken.map((line) => [line.id, line] as const))(
    '%s is marked at its round and column, and nothing else is',
    (_, line) => {
      const { findings } = readRounds(line.text, { terms: line.terms, after: line.previous })
      expect(findings.map((found) => found.code)).toEqual([`rounds/${line.error.code}`])
      const found = findings[0]!
      expect(found.severity).toBe(line.error.severity)
      expect(found.message).toContain(line.error.says)
      expect(found.where).toContain(line.error.where)
      const { round, column } = found.target!
      if (line.error.round !== undefined) expect(round).toBe(line.error.round)
      if (line.error.where.startsWith('round')) return
      const text = line.text.split('\n').find((each) => each.includes(` ${round}:`))!
      expect(text.slice(column! - 1).startsWith(line.error.where)).toBe(true)
    },
  )
})
