/** The words of the motif's page. */
import type { MotifAccount, Provenance } from '../../shared-types/plan'
import type { Hand, Motif, Terms, UnitSystem } from '../../shared-types/project'
import type { Dimension } from '../../src-core/figures/motif-figure'
import { capital } from '../../src-core/figures/words'
import { formatLength, formatNumber } from '../../src-core/units/format'

const FROM: Readonly<Record<Provenance, string>> = {
  measured: 'Measured.',
  gauge: 'Worked out from the gauge.',
  'rule-of-thumb': 'A rule of thumb: there is no gauge.',
}

export const MOTIF_WORDS = {
  lifeSize: 'Drawn at its full size when printed at 100 %.',
  scaled: (scale: number): string => `Drawn at ${formatNumber(scale * 100)} % of its size.`,
  numbering: (hand: Hand, shape: MotifAccount['shape']): string => {
    const way = hand === 'left' ? 'clockwise' : 'counter-clockwise'
    const what = shape === 'straight' ? 'Corners' : 'Petals'
    if (shape === 'round' || shape === 'leaf') return `Worked ${way}, seen from the right side.`
    return `${what} are numbered in the way of working, ${way} seen from the right side; number 1 is where the round begins.`
  },
  range: (provenance: Provenance, low: string, high: string): string =>
    `${FROM[provenance]} The next one may come out ${low} to ${high}.`,
  rounds: (terms: Terms): string => `Rounds as written, in ${terms} terms`,
  round: (number: number): string => `Round ${number}`,
  afterBlocking: 'after blocking',
  beforeBlocking: 'before blocking',
} as const

/** The measure as it was typed, under the name that a dimension has in the file. */
function typed(source: Motif | undefined, words: string): number | undefined {
  if (!source) return undefined
  const measures = source.kind === 'measured' ? source : source.measured
  if (!measures) return undefined
  const names: Readonly<Record<string, number | undefined>> = {
    'tip to tip': measures.overTips,
    'between petals': measures.overValleys,
    across: measures.across,
    'side to side': measures.sideToSide,
    'point to point': measures.pointToPoint,
    width: measures.width,
  }
  return names[words]
}

/** Label, value in the chosen units, value in the others: one row for each measure, before and after blocking. */
export function measureRows(
  account: MotifAccount,
  source: Motif | undefined,
  dimensions: readonly Dimension[],
  units: UnitSystem,
): [string, string, string][] {
  const blocked = source?.kind === 'measured' ? source.blocked : source?.measured?.blocked
  const other = units === 'metric' ? 'imperial' : 'metric'
  const row = (label: string, mm: number): [string, string, string] => [
    label,
    formatLength(mm, units),
    formatLength(mm, other),
  ]
  const state = blocked === undefined ? '' : `, ${MOTIF_WORDS.afterBlocking}`
  const rows = [...dimensions].reverse().flatMap(({ words, length }) => {
    const before = blocked === false ? typed(source, words) : undefined
    const after = row(`${capital(words)}${state}`, length)
    if (before === undefined) return [after]
    return [row(`${capital(words)}, ${MOTIF_WORDS.beforeBlocking}`, before), after]
  })
  if (account.shape === 'leaf') {
    const length = account.outline.reduce((most, p) => Math.max(most, p.y), -Infinity)
    const top = account.outline.reduce((least, p) => Math.min(least, p.y), Infinity)
    rows.unshift(row(`Length${state}`, length - top))
  }
  return rows
}
