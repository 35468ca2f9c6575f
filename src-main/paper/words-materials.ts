/** The words of the materials page. */
import type { EdgingAccount, PlanSize, YarnNeed } from '../../shared-types/plan'
import type { Terms, UnitSystem, Yarn } from '../../shared-types/project'
import {
  cornerWords,
  hasHalfCorners,
  laterWords,
  levelWords,
  plainByLine,
  writtenOf,
} from '../../src-core/edging/words'
import { fillersByMotif, openingWords } from '../../src-core/figures/filler-list'
import { measureWords } from '../../src-core/figures/sentence'
import { counted, listed } from '../../src-core/figures/words'
import { HALF_SHARE } from '../../src-core/layout/constants'
import { leadingMeasure } from '../../src-core/motif/ruler'
import { saying } from '../../src-core/stitches/spelling'
import { termWord, translateStitch, chainsMade } from '../../src-core/stitches/terms'
import {
  formatMass,
  formatNumber,
  formatRough,
  formatSize,
  formatYarnLength,
} from '../../src-core/units/format'
import type { Job } from './page'
import { gapWords, inEveryTip } from './words-bridge'
import { edgingTitle } from './words-edging'

export const MATERIAL_WORDS = {
  yarn: 'Yarn',
  together: 'Together',
  /** The weight that is needed in the project's unit first, then in the other one. */
  columns: (balls: string, units: UnitSystem): string[] => {
    const other = units === 'metric' ? 'in oz' : 'in g'
    return [...['Yarn', 'needed', other, 'in m', 'in yd', balls], ...MATERIAL_WORDS.own]
  },
  /** Of these columns, those that are the matter of who makes it: no pattern that is sold has them. */
  own: ['on hand', 'to buy', 'cost'],
  /** The same of what lies in a kit. */
  inKit: (units: UnitSystem): string[] => [
    'Yarn',
    'in the kit',
    units === 'metric' ? 'in oz' : 'in g',
    'in m',
    'in yd',
  ],
  parts: (edging: string): { key: keyof YarnNeed['parts']; heading: string }[] => [
    { key: 'motifs', heading: 'motifs' },
    { key: 'joins', heading: 'joins' },
    { key: 'edging', heading: edging },
    { key: 'cord', heading: 'cord' },
    { key: 'tails', heading: 'tails' },
    { key: 'waste', heading: 'waste' },
  ],
  swatch: (units: UnitSystem): string => (units === 'metric' ? '10 cm (4 in)' : '4 in (10 cm)'),
  roundsMeasure: (rounds: number, across: string): string =>
    rounds === 1 ? `round 1 measures ${across}` : `rounds 1–${rounds} measure ${across}`,
  size: (size: PlanSize, units: UnitSystem): string => {
    const other = units === 'metric' ? 'imperial' : 'metric'
    const { low, high } = size.range
    const told = `${formatSize(size.width, size.height, units)} (${formatSize(size.width, size.height, other)})`
    const range = `${formatSize(low.width, low.height, units)} to ${formatSize(high.width, high.height, units)}`
    return low.width < high.width ? `${told}; it may come out ${range}` : told
  },
  halves: (halves: number): string =>
    `${counted(halves, 'half motif')} at the ends of rows, each worked back and forth, with a little over half (about ${formatNumber(HALF_SHARE * 100)} %) of the yarn of a whole one`,
  split: (yarns: string, terms: Terms): string => saying(terms)`one weight for several colours: ${yarns}`,
  weighed: (yarns: string): string =>
    `${yarns}: needed and on hand are what is still to be used and what was left at the weighing; what is to be bought follows from them and how much the motifs made so far took, not the range`,
  counted: (yarns: string): string =>
    `${yarns}: needed and on hand are what is still to be used and what there was when it was last counted; what is to be bought follows from them, at the high end`,
  ends: (ends: number): string => `${formatNumber(ends)} to weave in`,
  needle: (isSewn: boolean): string =>
    isSewn
      ? 'a blunt tapestry needle, to sew with and to weave in ends'
      : 'a blunt tapestry needle, to weave in ends',
  markers: (marks: number): string =>
    `${formatNumber(marks)} for each circle that is not yet joined all round`,
  waste: (percent: string): string =>
    `${percent}\u00a0% more than the work itself takes, for swatches, knots and mistakes`,
  buying: (terms: Terms): string =>
    saying(
      terms,
    )`The ${termWord('balls', terms)} are counted from the high end of each range. Buy each colour in one dye lot.`,
  /** To who can plan it again. */
  again: 'Finish ten motifs, weigh and measure them, and plan again: from then on the numbers are yours.',
} as const

const EDGING_STYLES: Readonly<Record<string, string>> = {
  follow: 'follows the edge',
  bridge: 'bridges the dips with chains',
  level: 'levels the dips',
}

/** The fillers in words: how many, of what, how large the openings are, how often they are joined. */
export function fillerWords({ plan, units }: Job): string {
  return fillersByMotif(plan)
    .map((own) => {
      const { account, fillers, joins } = own
      const name = account.name || account.id
      return `${formatNumber(fillers.length)} × ${name} ${openingWords(own, units)}, joined ${counted(joins, 'time')} in all`
    })
    .join('; ')
}

/** "100 g (3.5 oz), 200 m (219 yd)": what one ball is, as far as somebody entered it; else ''. */
export const ballSize = ({ ballGrams, ballMetres }: Yarn): string =>
  [
    ...(ballGrams ? [`${formatMass(ballGrams, 'metric')} (${formatMass(ballGrams, 'imperial')})`] : []),
    ...(ballMetres
      ? [`${formatYarnLength(ballMetres, 'metric')} (${formatYarnLength(ballMetres, 'imperial')})`]
      : []),
  ].join(', ')

/** "One skein of Cream is 100 g (3.5 oz), 200 m (219 yd); of Moss and Sage 50 g (1.8 oz), 125 m (137 yd)." */
export function ballSizes(yarns: readonly Yarn[], ball: string): string {
  const bySize = new Map<string, string[]>()
  for (const yarn of yarns) {
    const { id, name } = yarn
    const sizes = ballSize(yarn)
    if (sizes !== '') bySize.set(sizes, [...(bySize.get(sizes) ?? []), name || id])
  }
  const told = [...bySize].map(
    ([size, names], i) =>
      `${i === 0 ? `One ${ball} of` : 'of'} ${listed(names)} ${i === 0 ? 'is ' : ''}${size}`,
  )
  return told.length === 0 ? '' : `${told.join('; ')}.`
}

/** How the first round of an edging meets the edge. */
export function firstRoundWords(
  edging: EdgingAccount,
  { plan, terms, units }: Pick<Job, 'plan' | 'terms' | 'units'>,
  stitch: string,
): string {
  const { style, rounds } = edging
  const { stitches, chains } = rounds[0]!
  if (style === 'bridge' && chains > 0) {
    const between =
      gapWords(rounds[0]!, plan, stitch, terms) ??
      (edging.loops?.length ? `chains between: see ${edgingTitle(terms)} for how many` : null) ??
      `${chainsMade(formatNumber(Math.round(chains / stitches)), terms)} between`
    const straight = rounds[0]!.straight ?? edging.loops?.map(({ bridged }) => bridged?.straight ?? []) ?? []
    return `${stitch} ${inEveryTip(plan, straight.flat())}, ${between}`
  }
  if (style === 'bridge') return `${stitch} ${inEveryTip(plan)}`
  const dips = style === 'level' ? levelWords(edging, terms, units) : []
  if (dips.length > 0) return `${stitch} along the tips${cornerWords(rounds[0]!)}, and ${dips.join('; ')}`
  return `${stitch} evenly along the edge${cornerWords(rounds[0]!)}`
}

/** "Round 1: 606 sc. Round 2: 614 sc." */
const roundsInShort = (
  { rounds, dips }: EdgingAccount,
  { plan, settled, terms }: Pick<Job, 'plan' | 'settled' | 'terms'>,
): string =>
  rounds
    .map((round) => {
      const stitch = translateStitch(round.stitch, settled.terms, terms) ?? round.stitch
      const chains = round.chains > 0 ? ` and ${counted(round.chains, 'chain')}` : ''
      const unit = dips && round.number === 1 ? 'stitches' : stitch
      return `Round ${round.number}: ${formatNumber(round.stitches)} ${unit}${chains}${plainByLine(round, plan)}.`
    })
    .join(' ')

/** The edging in words, round by round, or null when there is none. */
export function edgingWords(
  edging: EdgingAccount | null,
  job: Pick<Job, 'plan' | 'settled' | 'terms' | 'units'>,
): string | null {
  if (!edging) return null
  const from = job.settled.terms
  const yarn = job.settled.yarns.find((each) => each.id === edging.yarn)?.name || edging.yarn
  const style = EDGING_STYLES[edging.style] ?? edging.style
  const written = writtenOf(edging).length
  const rounds = edging.rounds.slice(0, edging.rounds.length - written).map((round, i) => {
    const stitch = translateStitch(round.stitch, from, job.terms) ?? round.stitch
    const chains = round.chains > 0 ? ` and ${counted(round.chains, 'chain')}` : ''
    const all =
      i === 0 && edging.dips
        ? counted(round.stitches, 'stitch', 'stitches')
        : `${formatNumber(round.stitches)} ${stitch}${chains}`
    return `Round ${i + 1}: ${i === 0 ? firstRoundWords(edging, job, stitch) : laterWords(round, stitch, edging.rounds[i - 1], undefined, undefined, hasHalfCorners(job.plan))}: ${all}${plainByLine(round, job.plan)}.`
  })
  // Its own page tells the rest.
  if (written === 0)
    return `In ${yarn}; it ${style}. ${roundsInShort(edging, job)} See ${edgingTitle(job.terms)}.`
  const [first, last] = [edging.rounds.length - written + 1, edging.rounds.length]
  const inWords = `${written === 1 ? `Round ${first}` : `Rounds ${first}–${last}`} in words: see ${edgingTitle(job.terms)}.`
  return [`In ${yarn}; it ${style}.`, ...rounds, inWords].join(' ')
}

/** What the finished work measures, and what it may come out as; of a motif alone the measure that it is known by. */
export function finishedSize({ plan: { motif, size }, units, isAlone }: Job): string {
  if (!isAlone || !motif) return MATERIAL_WORDS.size(size, units)
  const { range, overTips } = motif
  const share = leadingMeasure(motif).value / (overTips || 1)
  const [low, high] = [range.low * share, range.high * share].map((value) => formatRough(value, units))
  const told = measureWords(motif, units)
  return low === high ? told : `${told}; it may come out ${low} to ${high}`
}
