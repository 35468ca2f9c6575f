/** What a tech editor would say of the rounds' shape: rings, loops, petals, and how it lies (M5, M9, M12, M17). */
import type { Finding } from '../../../shared-types/finding'
import type { Lie } from '../../../shared-types/plan'
import type { RoundsMotif, Terms } from '../../../shared-types/project'
import type { FindingCode } from '../../findings/catalogue'
import { findingOf, said } from '../../findings/finding'
import type { Told } from '../../findings/finding'
import { fineLengthValue } from '../../findings/quantities'
import type { ResolvedGauge } from '../../stitches/gauge'
import { relativeHeight } from '../../stitches/table'
import { stitchAbbreviation } from '../../stitches/terms'
import { formatNumber } from '../../units/format'
import { CROWDED, FLATNESS, FLATNESS_FROM_ROUND, LOOP_HOLDS, RING_HOLDS } from './constants'
import { isUpright } from './ground'
import type { LocatedRound } from './ground'
import type { ReadMotif } from './read-motif'

/** Findings on the shape of located rounds. */
export function checkRounds(
  motif: RoundsMotif,
  read: ReadMotif,
  located: readonly LocatedRound[],
  gauge: ResolvedGauge,
  terms: Terms,
): Finding[] {
  const findings: Finding[] = []
  const say: Say = (code, entry, ...values) => {
    const round = entry.round.number
    const own = read.entries[read.worked.indexOf(entry.round)]
    const target = { motif: motif.id, round, ...(own !== undefined && { entry: own }) }
    findings.push(findingOf(said(code, ...values), `motif ${motif.id}, round ${round}`, target))
  }
  checkBunches(located, terms, say)
  const first = located[0]
  if (first && read.ringChains > 1) checkRing(first, read.ringChains, say)
  // Rows do not close: what lies flat as a half would ruffle as a whole.
  if (isInRows(located)) {
    say('motif/in-rows', located[1]!)
    return findings
  }
  for (const entry of located) {
    if (entry.tight > 0.5 * gauge.width)
      say('motif/tight-loop', entry, { short: fineLengthValue(entry.tight) })
    checkPetals(entry, gauge, say)
    checkFlatness(entry, say)
  }
  if (!motif.shape) checkPulled(located, say)
  return findings
}

/** Rows that go back and forth: each turned, none joined. */
const isInRows = (located: readonly LocatedRound[]): boolean =>
  located.length > 1 && located.every(({ round }, at) => !round.joined && (at === 0 || round.turned))

type Say = <Code extends FindingCode>(code: Code, entry: LocatedRound, ...values: Told<Code>) => void

/** Bunches of a size that is only usual; each kind is noted once, where it is first worked. */
function checkBunches(located: readonly LocatedRound[], terms: Terms, say: Say): void {
  const noted = new Set<string>()
  for (const entry of located)
    for (const { form, stitch, legs, assumed } of entry.round.elements) {
      if (!assumed || noted.has(`${form} ${stitch}`)) continue
      noted.add(`${form} ${stitch}`)
      say('motif/legs-assumed', entry, { what: form, legs, stitch: stitchAbbreviation(stitch, terms) })
    }
}

function checkRing(first: LocatedRound, chains: number, say: Say): void {
  const upright = first.round.elements.filter((element) => element.role === 'stitch' || element.standing)
  const tall = upright.some((element) => element.stitch !== 'sc' && element.stitch !== 'hdc')
  const holds = tall ? RING_HOLDS.dc : RING_HOLDS.sc
  if (upright.length > holds * chains)
    say('motif/ring-over-full', first, { stitches: upright.length, chains, holds: holds * chains })
}

/** A last edge of stitches alone, as even in the dips as on the tips: whether it straightens petals, tension decides. */
function checkPulled(located: readonly LocatedRound[], say: Say): void {
  const last = located.findLast(({ corners }) => corners > 0)
  const petalled = last && located.find(({ round }) => round.index === last.round.onto)
  if (!last || !petalled || petalled.petals.length !== last.corners) return
  const filled = last.round.elements.some(({ role }) => role === 'space')
  const heights = last.round.elements
    .filter((each) => isUpright(each) && each.standing)
    .map(({ countsAs, stitch }) => relativeHeight(countsAs ?? stitch))
  if (!filled && Math.max(...heights) === Math.min(...heights))
    say('motif/petals-pulled', last, { corners: last.corners })
}

function checkPetals(entry: LocatedRound, gauge: ResolvedGauge, say: Say): void {
  let worst = 0
  for (const { stitches, edge, chains } of entry.petals) {
    if (chains >= 3 && stitches <= LOOP_HOLDS * chains) continue
    // Where a slip of the text puts petals on top of each other, there is no edge to speak of.
    if (edge > gauge.width / 10) worst = Math.max(worst, (stitches * gauge.width) / edge)
  }
  const values = { crowding: formatNumber(worst, 2) }
  if (worst >= CROWDED.warning) say('motif/petal-too-full', entry, { ...values, limit: CROWDED.warning })
  else if (worst >= CROWDED.note) say('motif/petal-full', entry, { ...values, limit: CROWDED.note })
}

/** M17: F = N·w / (P·r), P = 2π or 2m·tan(π/m) with r the apothem; 0 where there is no radius. */
export function flatnessOf(entry: LocatedRound): number {
  const radius = entry.radius - entry.extra
  return radius > 0 ? entry.length / (entry.around * radius) : 0
}

/** Whether as many stitches, and nothing else, stand in each stitch of the round before. */
function isEachAlike({ round }: LocatedRound): boolean {
  const counts = new Map<number, number>()
  for (const { standing, into } of round.elements) {
    const [place] = into
    if (!standing) continue
    if (place?.kind !== 'stitch') return false
    counts.set(place.index, (counts.get(place.index) ?? 0) + 1)
  }
  const [from, to] = [Math.min(...counts.keys()), Math.max(...counts.keys())]
  return counts.size > 2 && counts.size === to - from + 1 && new Set(counts.values()).size === 1
}

/** M17: how a round lies; null for those that are not judged: the first two, petals, open loops. */
export function lieOf(entry: LocatedRound): Lie | null {
  if (entry.radius <= 0) return null
  // "3 dc in each dc" is no round of petals, but one with too many stitches.
  if (entry.petals.length > 0)
    return isEachAlike(entry) && flatnessOf(entry) > FLATNESS.ruffles ? 'ruffles' : null
  if (entry.round.elements.some((element) => element.role === 'space' && element.count > 2)) return null
  const f = flatnessOf(entry)
  if (entry.round.number < FLATNESS_FROM_ROUND)
    // On a small middle little can be said, but for what fits nowhere.
    return entry.round.number > 1 && f > FLATNESS.ruffles ? 'ruffles' : null
  if (f < FLATNESS.cups) return 'cups'
  if (f < FLATNESS.mayCup) return 'may-cup'
  if (f > FLATNESS.ruffles) return 'ruffles'
  return f > FLATNESS.mayRuffle ? 'may-ruffle' : 'flat'
}

function checkFlatness(entry: LocatedRound, say: Say): void {
  const lie = lieOf(entry)
  if (lie === null || lie === 'flat') return
  say(`motif/${lie}`, entry, { flatness: formatNumber(100 * flatnessOf(entry)) })
}
