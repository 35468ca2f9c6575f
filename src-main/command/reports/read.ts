/** `petalyard read` for people: the rounds in a table, then everything worked by stitch. */
import { counted, plural } from '../../../src-core/figures/words'
import type { Terms } from '../../../shared-types/project'
import type { LikelySlip } from '../../../src-core/notation/slips'
import type { RoundAccount } from '../../../src-core/notation/read'
import type { Proposal } from '../../../src-core/page/proposals'
import { isStitchKey } from '../../../src-core/stitches/table'
import { stitchAbbreviation } from '../../../src-core/stitches/terms'
import { formatNumber } from '../../../src-core/units/format'
import { listing, table } from '../text'

/** "12 sts, 4 sps", "–" for nothing. */
function amounts(stitches: number, spaces: number): string {
  const words = [
    ...(stitches > 0 ? [`${formatNumber(stitches)} ${plural(stitches, 'st')}`] : []),
    ...(spaces > 0 ? [`${formatNumber(spaces)} ${plural(spaces, 'sp')}`] : []),
  ]
  return words.join(', ') || '–'
}

/** "8 ch-3, 4 ch-1" in US terms, "8 3-ch, 4 1-ch" in UK terms. */
function spaceWords(spaces: RoundAccount['spaces'], terms: Terms): string {
  const words = Object.entries(spaces).map(([key, count]) => {
    const name = terms === 'UK' ? key.replace(/^ch-(\d+)$/, '$1-ch') : key
    return `${formatNumber(count)} ${name}`
  })
  return words.join(', ') || '–'
}

function usedWords(round: RoundAccount): string {
  if (!round.consumed) return 'not known'
  const words = [amounts(round.consumed.stitches, round.consumed.spaces)]
  if (round.gaps > 0) words.push(`${formatNumber(round.gaps)} between sts`)
  if (round.chains > 0) words.push(counted(round.chains, 'ch'))
  return words.filter((word, index) => word !== '–' || words.length === 1 || index > 0).join(', ')
}

function totals(rounds: readonly RoundAccount[], terms: Terms): [string, string][] {
  const sums = new Map<string, number>()
  for (const round of rounds)
    for (const [stitch, count] of Object.entries(round.stitches))
      sums.set(stitch, (sums.get(stitch) ?? 0) + count)
  return [...sums].map(([stitch, count]) => [
    isStitchKey(stitch) ? stitchAbbreviation(stitch, terms) : stitch,
    formatNumber(count),
  ])
}

/** The stitches that a text explains itself. */
export function specialReport(
  special: readonly { readonly name: string; readonly explanation: string }[],
  width: number,
): string[] {
  if (special.length === 0) return []
  return [
    'Special stitches',
    ...listing(
      special.map(({ name, explanation }) => [name, explanation]),
      width,
    ),
    '',
  ]
}

/** What the page says besides its rounds, each with its line. */
export function pageReport(proposals: readonly Proposal[], width: number): string[] {
  if (proposals.length === 0) return []
  return [
    'From the page',
    ...listing(
      proposals.map(({ label, value, at }) => [
        `${label} (line ${at.line})`,
        value.replace(/\s*\n\s*/g, ' / '),
      ]),
      width,
    ),
    '',
  ]
}

/** Numbers that would let a round work out, each with the words it would read in. */
export function suggestionReport(suggestions: readonly LikelySlip[], width: number): string[] {
  if (suggestions.length === 0) return []
  return [
    '',
    'It would work out with',
    ...listing(
      suggestions.map(({ round, line, column, was, now, words }) => [
        `Round ${round}: ${now} in place of ${was}`,
        `"${words}" (line ${line}, column ${column})`,
      ]),
      width,
    ),
  ]
}

export function readReport(rounds: readonly RoundAccount[], terms: Terms, width: number): string[] {
  if (rounds.length === 0) return []
  const rows = rounds.map((round) => [
    round.label ? `${round.number} ${round.label}` : String(round.number),
    round.made === null ? 'not known' : formatNumber(round.made),
    usedWords(round),
    round.made === null ? 'not known' : spaceWords(round.spaces, terms),
    amounts(round.passed.stitches, round.passed.spaces),
  ])
  const columns = [
    { head: 'Round', align: 'left' },
    { head: 'Makes', align: 'right' },
    { head: 'Uses', align: 'left' },
    { head: 'Spaces left', align: 'left' },
    { head: 'Passed over', align: 'left' },
  ] as const
  return [
    ...table(columns, rows, width),
    '',
    `Worked in the rounds, without the ring or chain they begin on, in ${terms} terms`,
    ...listing(totals(rounds, terms), width),
  ]
}
