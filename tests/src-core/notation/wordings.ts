/** One round in many wordings, each with what stands before and behind it and what the rounds make in the end. */
import { expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

export interface Wordings {
  readonly name: string
  readonly terms?: 'US' | 'UK'
  readonly before: string
  readonly after: string
  readonly made: readonly number[]
  readonly wordings: readonly string[]
}

/** Findings beside notes, as sentences. */
export const toldOf = (text: string, terms: 'US' | 'UK' = 'US'): string[] =>
  readRounds(text, { terms })
    .findings.filter(({ severity }) => severity !== 'note')
    .map(({ where, message }) => `${where}: ${message}`)

/** Every wording is read without a finding, and makes the same. */
export const readAlike = ({ terms = 'US', before, after, made, wordings }: Wordings): void =>
  it.each(wordings)('%s', (words) => {
    const text = `${before}${words}${after}`
    expect(toldOf(text, terms)).toEqual([])
    expect(readRounds(text, { terms }).rounds.map((round) => round.made)).toEqual(made)
  })
