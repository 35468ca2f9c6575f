/** Whole patterns with their accounts by hand: what our reader makes of each. */
import { readFileSync } from 'node:fs'
import { readRounds } from '../../src-core/notation/read'
import type { ReadRounds } from '../../src-core/notation/read'

interface Expected {
  readonly number: number
  readonly made: number
  /** Spaces of the round; none given: not told. */
  readonly spaces: Readonly<Record<string, number>>
}

export interface WholePattern {
  readonly id: string
  readonly kind: 'correct' | 'mistake' | 'construct'
  readonly style: string
  readonly terms: 'US' | 'UK'
  readonly text: string
  readonly expected?: readonly Expected[]
  readonly error?: { readonly round: number; readonly words: readonly string[] }
}

export interface Verdict {
  readonly id: string
  readonly kind: WholePattern['kind']
  /** Right rounds of those expected. */
  readonly right: number
  readonly rounds: number
  readonly falseErrors: number
  /** Nothing is wrong with what our reader makes of it. */
  readonly clean: boolean
  readonly told: readonly string[]
}

export function loadPatterns(name: string): WholePattern[] {
  return readFileSync(new URL(`../fixtures/${name}.jsonl`, import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as WholePattern)
}

function sameSpaces(have: Readonly<Record<string, number>>, wanted: Readonly<Record<string, number>>) {
  const keys = Object.keys(wanted)
  if (keys.length === 0) return true
  return keys.length === Object.keys(have).length && keys.every((key) => have[key] === wanted[key])
}

/** Whether a finding points at one of the words: it stands on them, or says them. */
function caught(pattern: WholePattern, { findings }: ReadRounds): boolean {
  const { round, words } = pattern.error!
  const starts = pattern.text.split('\n').reduce<number[]>(
    (all, line) => {
      return [...all, (all[all.length - 1] ?? 0) + line.length + 1]
    },
    [0],
  )
  return findings.some((found) => {
    if (found.severity === 'note' || found.target?.round !== round) return false
    const said = `${found.where} ${found.message}`.toLowerCase()
    if (words.some((word) => said.includes(word.toLowerCase()))) return true
    const { line, column, length } = found.target
    if (line === undefined || column === undefined || length === undefined) return false
    const start = (starts[line - 1] ?? 0) + column - 1
    return words.some((word) => {
      for (let at = pattern.text.indexOf(word); at >= 0; at = pattern.text.indexOf(word, at + 1))
        if (at < start + length && start < at + word.length) return true
      return false
    })
  })
}

/** Reads a pattern and holds it against what was counted by hand. */
export function judge(pattern: WholePattern): Verdict {
  const read = readRounds(pattern.text, { terms: pattern.terms })
  const told = read.findings
    .filter(({ severity }) => severity !== 'note')
    .map(({ where, message }) => `${where}: ${message}`)
  const { id, kind } = pattern
  if (kind === 'mistake')
    return { id, kind, right: 0, rounds: 0, falseErrors: 0, clean: caught(pattern, read), told }
  const wanted = pattern.expected ?? []
  const alarms = wanted.length === 0 ? 0 : told.length
  const whole = kind === 'correct'
  const used = new Set<number>()
  let right = 0
  wanted.forEach((expected, at) => {
    const found = whole
      ? at
      : read.rounds.findIndex(({ number }, index) => number === expected.number && !used.has(index))
    used.add(found)
    const round = read.rounds[found]
    const fits =
      round?.number === expected.number &&
      round.made === expected.made &&
      sameSpaces(round.spaces, expected.spaces)
    if (fits) right++
    else {
      const got = round ? `${round.number}: ${round.made} ${JSON.stringify(round.spaces)}` : 'none'
      told.push(`Rnd ${expected.number}: ${expected.made} ${JSON.stringify(expected.spaces)} wanted, ${got}`)
    }
  })
  const complete = !whole || read.rounds.length === wanted.length
  if (!complete) told.push(`${read.rounds.length} rounds for ${wanted.length}`)
  // A text of which a rest cannot be read must be marked: nothing expected, something told.
  const marked = wanted.length > 0 || read.findings.some(({ code }) => code === 'rounds/not-read')
  const clean = right === wanted.length && complete && marked && alarms === 0
  return { id, kind, right, rounds: wanted.length, falseErrors: alarms, clean, told }
}

/** "clean 50 of 100, rounds 333 of 397, 91 false errors, mistakes 33 of 40". */
export function summary(verdicts: readonly Verdict[]): string {
  const sound = verdicts.filter(({ kind }) => kind !== 'mistake')
  const slips = verdicts.filter(({ kind }) => kind === 'mistake')
  const sum = (of: (verdict: Verdict) => number) => sound.reduce((all, verdict) => all + of(verdict), 0)
  const clean = sound.filter((verdict) => verdict.clean).length
  const found = slips.filter((verdict) => verdict.clean).length
  return [
    `clean ${clean} of ${sound.length}`,
    `rounds ${sum(({ right }) => right)} of ${sum(({ rounds }) => rounds)}`,
    `false errors ${sum(({ falseErrors }) => falseErrors)}`,
    `mistakes ${found} of ${slips.length}`,
  ].join(', ')
}
