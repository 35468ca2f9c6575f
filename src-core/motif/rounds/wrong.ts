/** Rounds whose stitches do not work out: nobody knows where these lie, and nothing is said of what would follow. */
import type { Finding } from '../../../shared-types/finding'
import type { MeasuredRound } from '../../../shared-types/plan'
import { boundsAgainst } from '../against-rounds'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { StitchKey } from '../../stitches/table'

/** Findings of rounds of which every stitch is counted all the same. */
const COUNTED =
  /^rounds\/(?:stitches-left|spaces-left|chains-left|chain-worked-twice|loop-already-used|join-|wrong-end-count|wrong-terms|no-such-colour|too-long)/

/** Numbers of the rounds that do not work out. */
export const wrongRounds = (findings: readonly Finding[]): ReadonlySet<number> =>
  new Set(
    findings.flatMap(({ severity, code, target }) =>
      severity === 'error' && code.startsWith('rounds/') && !COUNTED.test(code) ? (target?.round ?? []) : [],
    ),
  )

/** The first round that does not work out; null where all do. */
export function firstWrong(findings: readonly Finding[]): number | null {
  const wrong = wrongRounds(findings)
  return wrong.size > 0 ? Math.min(...wrong) : null
}

/** Findings without what is said of the shape of that round and of those on it. */
export const saidBefore = (findings: readonly Finding[], first: number | null): readonly Finding[] =>
  first === null ? findings : findings.filter(({ target }) => (target?.round ?? 0) < first)

/** Rounds with nothing said of the size and the lie of that one and of those on it. */
export const sizedBefore = (
  rounds: readonly MeasuredRound[],
  first: number | null,
): readonly MeasuredRound[] =>
  first === null
    ? rounds
    : rounds.map((round) => (round.number < first ? round : { ...round, outerRadius: 0, lies: null }))

/**
 * By which factor a measured motif is larger than its rounds, for those that work out: where one does not, a factor
 * that no hand and no blocking explains comes from there, and the others stay as the gauge has them.
 */
export function ratioBefore(
  ratio: number | null,
  first: number | null,
  gauge: ResolvedGauge,
  tallest: StitchKey,
): number | null {
  if (ratio === null || first === null) return ratio
  const { least, most } = boundsAgainst(gauge, tallest)
  return ratio >= least && ratio <= most ? ratio : 1
}
