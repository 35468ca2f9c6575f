/** The words of a round that bridges the dips of an edge with chains: how many of them between which tips. */
import type { EdgingLoop, EdgingRound, Plan } from '../../shared-types/plan'
import { gapsToNext, spansOf } from '../../src-core/edging/bridge-spans'
import type { BridgeSpan } from '../../src-core/edging/bridge-spans'
import { capital, counted, listed, ordinal } from '../../src-core/figures/words'
import type { Terms } from '../../shared-types/project'
import { chainsMade } from '../../src-core/stitches/terms'
import { formatNumber } from '../../src-core/units/format'

/** Rounds have no tips: their places lie evenly round them. */
const tipsOf = ({ motif }: Pick<Plan, 'motif'>): string => (motif?.shape === 'round' ? 'places' : 'tips')
/** What one of its places is called. */
export const tipOf = (plan: Pick<Plan, 'motif'>): string => tipsOf(plan).slice(0, -1)

/** "in every free tip". */
export const inEveryTip = (plan: Pick<Plan, 'motif'>, straight: readonly number[] = []): string =>
  `in every free ${tipOf(plan)}${plan.motif?.shape === 'round' ? ', 12 to a whole circle' : ''}${
    hasStraight(straight) ? ' and at both ends of the straight side of each half motif' : ''
  }`

const hasStraight = (straight: readonly number[]): boolean => straight.some((count) => count > 0)

/** "; along the straight side of each of 6 half motifs 15 more sc, evenly between those at its ends". */
function straightWords(straight: readonly number[], stitch: string): string {
  const sides = straight.filter((count) => count > 0)
  if (sides.length === 0) return ''
  const counts = [...new Set(sides)].sort((a, b) => a - b)
  const each = counts.map((count, i) => {
    const many = sides.filter((own) => own === count).length
    const motifs = i === 0 ? counted(many, 'half motif') : formatNumber(many)
    const which = many > 1 ? `each of ${motifs}` : i === 0 ? 'one half motif' : 'one'
    return `${i === 0 ? 'along the straight side of' : 'of'} ${which} ${formatNumber(count)} more ${stitch}`
  })
  return `; ${listed(each)}, evenly between those at its ends`
}

/** "ch 7", "ch 8 in 12 gaps and ch 9 in 3". */
function chainWords(spans: readonly BridgeSpan[], tips: string, isEven: boolean, terms: Terms): string {
  const made = (chains: number): string => chainsMade(formatNumber(chains), terms)
  const [first] = spans
  if (spans.length === 1) return made(first!.chains)
  const each = listed(
    spans.map(
      ({ chains, gaps }, i) => `${made(chains)} in ${i === 0 ? counted(gaps, 'gap') : formatNumber(gaps)}`,
    ),
  )
  const isNear = spans.at(-1)!.chains - first!.chains === 1
  return `${each}, ${isEven && isNear ? 'spread out evenly' : `more where the ${tips} stand farther apart`}`
}

/** "ch 7 between two tips of one motif; from one motif to the next ch 16". */
function spanWords(
  spans: readonly BridgeSpan[],
  plan: Pick<Plan, 'motif'>,
  isEven: boolean,
  terms: Terms,
): string {
  const tips = tipsOf(plan)
  if (spans.every(({ chains }) => chains === spans[0]!.chains))
    return `${chainsMade(formatNumber(spans[0]!.chains), terms)} between`
  const within = spans.filter(({ from }) => from === 'one')
  const next = spans.filter(({ from }) => from === 'next')
  if (within.length === 0 || next.length === 0)
    return `between them ${chainWords(spans, tips, isEven, terms)}`
  return `between two ${tips} of one motif ${chainWords(within, tips, isEven, terms)}; from one motif to the next ${chainWords(next, tips, isEven, terms)}`
}

/** "; between two tips of one motif ch 7, from one motif to the next ch 16": of a round that plain rounds work into. */
export function gapWords(
  { gaps, straight = [] }: EdgingRound,
  plan: Plan,
  stitch: string,
  terms: Terms,
): string | null {
  if (!gaps) return null
  const lines = plan.edgingLines.flatMap((line, i) => (line.length > 1 ? [i] : []))
  const toNext = lines.flatMap((line) => gapsToNext(plan, line))
  const all = gaps.flat()
  const along = straight.flat()
  return toNext.length === all.length
    ? `${spanWords(spansOf(all, toNext, along), plan, false, terms)}${straightWords(along, stitch)}`
    : null
}

/** Where a stretch is: "along the top", "from corner 1 to 2"; '' where there is but one. */
type PlaceWords = (stretch: number) => string

/**
 * " One sc goes into every free tip: along the top 14 sc, …": of a round that written rounds work into, from mark to mark,
 * so that its chains and stitches are those of the stretch. Null where nothing is known of its gaps.
 */
export function bridgedWords(
  loop: EdgingLoop,
  plan: Plan,
  stitch: string,
  place: PlaceWords,
  hasCorners: boolean,
  terms: Terms,
): string | null {
  const { bridged } = loop
  const toNext = gapsToNext(plan, loop.line)
  if (!bridged || bridged.gaps.length !== toNext.length) return null
  const tips = bridged.gaps.length
  const all = bridged.straight ?? []
  const spread = (indices: readonly number[]): string => {
    const along = indices.map((i) => all[i] ?? 0)
    const spans = spansOf(
      indices.map((i) => bridged.gaps[i]!),
      indices.map((i) => toNext[i]!),
      along,
    )
    const chains = spans.length > 0 ? [spanWords(spans, plan, true, terms)] : []
    return [...chains, straightWords(along, stitch).replace(/^; /, '')].filter(Boolean).join('; ')
  }
  const ends = hasStraight(all) ? ' and both ends of the straight side of each half motif' : ''
  const opening = ` One ${stitch} goes into every free ${tipOf(plan)}${ends} with chains between`
  const sum = (indices: readonly number[]): number =>
    indices.reduce((total, i) => total + 1 + (all[i] ?? 0), 0)
  if (!hasCorners) {
    const indices = bridged.gaps.map((_, i) => i)
    return `${opening}: ${formatNumber(sum(indices))} ${stitch}, ${spread(indices)}.`
  }
  const { marks } = bridged
  const told = marks.map(({ tip, chain }, i) => {
    const next = marks[(i + 1) % marks.length]!
    // A gap that a corner lies in is told with the corner.
    const from = chain > 0 ? tip + 1 : tip
    const steps = (next.tip - from + tips) % tips || (marks.length === 1 ? tips : 0)
    const indices = Array.from({ length: steps }, (_, k) => (from + k) % tips)
    const stitches = sum(indices) + (next.chain > 0 ? 1 : 0)
    return `${formatNumber(stitches)} ${stitch}, ${spread(indices)}`
  })
  const alike = [...new Set(told)]
  const placesOf = (each: string): string =>
    listed(told.flatMap((one, i) => (one === each ? [place(i)] : [])))
  const sides =
    alike.length === 1
      ? ` From each corner to the next: ${told[0]!}.`
      : ` ${alike.map((each) => `${capital(placesOf(each))}: ${each}.`).join(' ')}`
  return `${opening}.${sides}${cornerWords(bridged, stitch, tipOf(plan))}`
}

/** What the corner stitch is. */
function cornerWords(
  { gaps, marks }: NonNullable<EdgingLoop['bridged']>,
  stitch: string,
  tip: string,
): string {
  const between = marks.filter(({ chain }) => chain > 0)
  if (between.length === 0)
    return ` At each corner the ${stitch} in the outermost ${tip} is the corner stitch: it stands there alone.`
  const words = (at: (typeof marks)[number]): string =>
    at.chain === 0
      ? `the ${stitch} in the outermost ${tip}`
      : `the ${ordinal(at.chain)} of ${counted(gaps[at.tip]!, 'chain')} between the two outermost ${tip}s`
  const each = marks.map(words)
  if (each.every((one) => one === each[0]))
    return ` At each corner the corner stitch is ${each[0]!}: nothing else is worked there.`
  return ` The corner stitch is ${listed(each.map((one, i) => `${one} at the ${ordinal(i + 1)} corner`))}: nothing else is worked there.`
}
