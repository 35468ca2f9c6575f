/** What reading a text comes to, for tests of wordings. */
import { readRounds } from '../../../src-core/notation/read'

/** Errors and warnings, each with its words; notes are left out. */
export const told = (text: string, terms: 'US' | 'UK' = 'US'): string[] =>
  readRounds(text, { terms })
    .findings.filter(({ severity }) => severity !== 'note')
    .map(({ code, message }) => `${code} ${message}`)

/** The stitches that each round makes. */
export const made = (text: string, terms: 'US' | 'UK' = 'US') =>
  readRounds(text, { terms }).rounds.map((round) => round.made)
