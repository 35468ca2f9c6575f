/** `petalyard plan` for people: what it becomes, how it is joined and worked, what yarn it takes. */
import {
  byLineWords,
  plainRoundsWords,
  ENDS_WORDS,
  levelWords,
  writtenOf,
  wrongIn,
} from '../../../src-core/edging/words'
import { plainSidesWords } from '../../../src-core/figures/edging-sides'
import { fillersByMotif, openingWords } from '../../../src-core/figures/filler-list'
import { leavingWords } from '../../../src-core/figures/leaving-words'
import { byName } from '../../../src-core/by-name'
import { closingsTold, heightWords, openWords } from '../../../src-core/figures/closing-words'
import { cutOutWords } from '../../../src-core/figures/outline-words'
import { capital, counted } from '../../../src-core/figures/words'
import type {
  EdgingAccount,
  EdgingRound,
  OrderStep,
  Plan,
  YarnNeed,
  YarnNumber,
} from '../../../shared-types/plan'
import type { Project } from '../../../shared-types/project'
import { holdingWords, isGapTold } from '../../../src-core/figures/holding-words'
import {
  formatLength,
  lengthsIn,
  formatMassRange,
  formatMass,
  formatMinutes,
  formatMoney,
  formatNumber,
  formatRange,
  formatSize,
  formatYarnLength,
  totalMass,
} from '../../../src-core/units/format'
import { timeWords } from '../../../src-core/figures/time-words'
import { sensitivityWords } from '../../../src-core/figures/sensitivity'
import { PENNY, wholeCost } from '../../../src-core/materials/whole-cost'
import {
  isAssumed,
  isNeedKnown,
  lengthAlone,
  NOT_KNOWN,
  splitRemark,
  starred,
  aloneWords,
  noMoreWords,
  starWords,
  sumRemark,
  wholeCostWords,
} from '../../../src-core/figures/yarn-words'
import { blanketOf, byKind } from '../../../src-core/plans/layouts'
import { pointsAlone, seamYarn, sidesJoined } from '../../../src-core/figures/seam-words'
import { saying } from '../../../src-core/stitches/spelling'
import { madeYarnAdvice } from '../../../src-core/progress/words'
import { termWord } from '../../../src-core/stitches/terms'
import { pieceWords } from '../../../src-core/figures/piece-words'
import { joinPoints, pieceAt } from '../../../src-core/layout/placed'
import { suggestedHalf } from '../../../src-core/half-motif/half-motif'
import { joiningRounds } from '../../../src-core/joining-round/joining-round'
import { titleOf } from '../../../src-core/joining-round/words'
import { legendsOf, marksIn } from '../../../src-core/joins/words'
import { listing, table, wrap } from '../text'
import { appliqueFacts, itemSection } from './applique'
import { findingSection } from './findings'
import { progressSection } from './progress'
import { cordSection, garlandFacts } from './garland'
import { kitSection } from './kit'
import { joiningWords } from '../../../src-core/figures/sentence'
import { ARRANGEMENT_WORDS, ballWord, termsOf, currencyOf, unitsOf } from './words'

/** Steps of the order that are shown unless all are asked for. */
const STEPS_SHOWN = 3

export function planReport(project: Project, plan: Plan, width: number, wholeOrder: boolean): string[] {
  return [
    project.title || 'Untitled project',
    ...(plan.motifs.length > 0 ? ['', ...listing(facts(project, plan), width)] : []),
    ...byKind(plan, {
      blanket: () => [],
      garland: ({ garland }) => (garland ? cordSection(project, garland, width, wholeOrder) : []),
      applique: (own) => (own.panel ? itemSection(project, own, width) : []),
    }),
    ...yarnSection(project, plan, width),
    ...(plan.kit ? kitSection(project, plan.settled, plan.kit, width) : []),
    ...progressSection(plan, width, wholeOrder),
    ...halfSection(plan, width),
    ...orderSection(plan, width, wholeOrder),
    ...joiningSection(plan, width),
    ...findingSection(plan.findings, width),
  ]
}

function facts(project: Project, plan: Plan): [string, string][] {
  const own = byKind(plan, {
    blanket: () => null,
    garland: ({ garland }) => garland && garlandFacts(project, plan, garland),
    applique: (laid) => laid.panel && appliqueFacts(laid, laid.panel, project),
  })
  const pairs = own ?? blanketFacts(project, plan)
  pairs.push(['Ends', `${formatNumber(plan.ends)} to weave in`])
  if (plan.minutes) {
    const parts = plan.time ? `; ${timeWords(plan.time, termsOf(project))}` : ''
    pairs.push(['Time', formatRange(plan.minutes, formatMinutes) + parts])
  }
  return pairs
}

function blanketFacts(project: Project, plan: Plan): [string, string][] {
  const units = unitsOf(project)
  const length = (mm: number) => formatLength(mm, units)
  const { size, pitch, edging } = plan
  const low = formatSize(size.range.low.width, size.range.low.height, units)
  const high = formatSize(size.range.high.width, size.range.high.height, units)
  const spread = low === high ? '' : ` (${low.replace(/ \w+$/, '')} – ${high})`
  const pairs: [string, string][] = [
    ['Size', formatSize(size.width, size.height, units) + spread],
    ['', sensitivityWords(size.sensitivity, units)],
    ['Motifs', motifWords(plan)],
  ]
  const leaving = leavingWords(plan)
  if (leaving) pairs.push(['', leaving])
  if (plan.accounts.length > 0) pairs.push(...kindWords(plan))
  const cut = cutOutWords(plan)
  if (cut) pairs.push(['Outline', cut])
  if (plan.round) {
    const { circumference, flat, joins } = plan.round
    const isSewn = project.joining?.rule === 'seam'
    const points = counted(joins, 'join point closes', 'join points close')
    // A seam closes each place at which a row comes round to its first motif.
    const closing = isSewn && plan.counts.sides ? 'seams close' : points
    const [around, wide] = [circumference, flat].map(lengthsIn(units, [circumference, flat]))
    pairs.push(
      ['Round', `${around} around, ${wide} wide laid flat; ${closing} it`],
      ...[heightWords(plan), openWords(plan)].filter(Boolean).map((words): [string, string] => ['', words]),
      ...closingsTold(plan, termsOf(project)).map(([name, words]): [string, string] => [
        '',
        `${name}. ${words}`,
      ]),
    )
  }
  if (plan.fillers.length > 0) pairs.push(['Fillers', fillerWords(project, plan)])
  if (plan.halves.length > 0) pairs.push(['Halves', halfWords(plan)])
  if (plan.arrangement) {
    const rows = pitch.rows.map(length)
    const down = rows[0] === rows[1] ? length(pitch.row) : `${rows.join(' and ')} alternating`
    pairs.push([
      saying(termsOf(project))`Centres`,
      `${length(pitch.column)} apart in a row, rows ${down} apart`,
    ])
  }
  pairs.push(['Joins', joinWords(project, plan)])
  if (project.joining?.rule !== 'apart') pairs.push(['Holds', holdingWords(plan)])
  if (edging) pairs.push(...edgingFacts(plan, edging, length))
  return pairs
}

/** The edging in a line, and a line for each of its written rounds. */
function edgingFacts(plan: Plan, edging: EdgingAccount, length: (mm: number) => string): [string, string][] {
  const { round: isRound, settled, findings } = plan
  const { rounds, height, loops = [] } = edging
  const written = writtenOf(edging)
  const plain = rounds.slice(0, rounds.length - written.length)
  const stitches = rounds.reduce((sum, round) => sum + round.stitches, 0)
  const chains = plain.reduce((sum, round) => sum + round.chains, 0)
  const names = [
    ...plain.map(({ stitch }) => stitch),
    ...(loops.length > 0 ? [counted(written.length, 'written round')] : []),
  ]
  return [
    [
      capital(termWord('edging', settled.terms)),
      `${names.join(', ')}: ${counted(stitches, 'stitch', 'stitches')}${chains > 0 ? ` and ${counted(chains, 'chain')}` : ''}, ${length(height)} wide${isRound ? `, ${ENDS_WORDS[blanketOf(settled)?.edging?.ends ?? 'both']}` : ''}`,
    ],
    ...plainFacts(plain, plan),
    ...plainSidesWords(plan, settled.terms).map((words): [string, string] => ['', words]),
    ...levelWords(edging, settled.terms, settled.units).map((words): [string, string] => [
      '',
      capital(words),
    ]),
    ...(loops.length > 0 ? written : []).map((round, i): [string, string] => {
      if (wrongIn({ findings }, round)) return ['', `Round ${round.number}: does not work out yet`]
      const own = byLineWords(plan, i)
      const corners = round.corners ? `, ${counted(round.corners, 'corner')}` : ''
      const picots = round.picots ? `, ${counted(round.picots, 'picot')}` : ''
      const told = `${counted(round.stitches, 'stitch', 'stitches')}, ${counted(round.repeats ?? 0, 'repeat')}${corners}${picots}`
      return ['', `Round ${round.number}: ${own ? `${own}; in all ${told}` : told}`]
    }),
  ]
}

/** What plain rounds have in each corner and along each line, where there are corners or several lines. */
const plainFacts = (plain: readonly EdgingRound[], plan: Plan): [string, string][] =>
  plainRoundsWords(plain, plan).map((words) => ['', words])

/** How often each of several motifs is made. */
const kindWords = (plan: Plan): [string, string][] =>
  plan.accounts.map(({ id, name }) => {
    const count = plan.motifs.filter(({ motif }) => motif === id).length
    return ['', `${formatNumber(count)} × ${name || id}`]
  })

/** "A 40, B 40". */
function byColourway({ settled }: Plan, counts: Readonly<Record<string, number>>): string {
  const ways = settled.colourways
  const codes = new Map(ways.map(({ id, code }) => [id, code]))
  // As everywhere in the order of the project, with what has none at the end.
  const rank = new Map(ways.map(({ id }, i) => [id, i]))
  const last = ways.length
  return Object.entries(counts)
    .sort(([a], [b]) => (rank.get(a) ?? last) - (rank.get(b) ?? last))
    .map(
      ([id, count]) => `${codes.get(id) || id || saying(settled.terms)`no colourway`} ${formatNumber(count)}`,
    )
    .join(', ')
}

function howOften(pieces: readonly { readonly colourway: string }[]): Record<string, number> {
  const counts = byName<number>()
  for (const { colourway } of pieces) counts[colourway] = (counts[colourway] ?? 0) + 1
  return counts
}

function fillerWords(project: Project, plan: Plan): string {
  return fillersByMotif(plan)
    .map((own) => {
      const { account, fillers, joins } = own
      const code = byColourway(plan, howOften(fillers))
      const openings = openingWords(own, unitsOf(project))
      return `${formatNumber(fillers.length)} of ${account.name || account.id}, ${openings}, joined ${counted(joins, 'time')}: ${code}`
    })
    .join('; ')
}

function halfWords(plan: Plan): string {
  const counts = howOften(plan.halves)
  return `${counted(plan.halves.length, 'half motif')} at the ends of rows: ${byColourway(plan, counts)}`
}

function motifWords(plan: Plan): string {
  const kinds = byColourway(plan, plan.counts.byColourway)
  const where = plan.arrangement ? ` in ${ARRANGEMENT_WORDS[plan.arrangement]}` : ''
  return `${formatNumber(plan.counts.motifs)}${where}${kinds === '' ? '' : `: ${kinds}`}`
}

function joinWords(project: Project, plan: Plan): string {
  const rule = joiningWords(plan.settled, plan.motif, plan.joins)
  if (plan.joins.length === 0) return `none (${rule})`
  const widest = plan.joins.reduce((most, node) => Math.max(most, node.spread), 0)
  const gap = isGapTold(widest)
    ? `largest gap at the join ${formatLength(widest, unitsOf(project))}`
    : 'no gap at any join'
  const { counts, settled } = plan
  const points = counts.sides ? pointsAlone(counts) : joinPoints(plan).length
  const alone = points > 0 || !counts.sides ? counted(points, 'join point') : ''
  const told = [sidesJoined(counts, settled), alone].filter(Boolean).join('; ')
  const yarn = seamYarn(plan)
  return `${told}, ${rule}${yarn === '' ? '' : ` in ${yarn}`}; ${gap}`
}

function yarnSection(project: Project, plan: Plan, width: number): string[] {
  if (plan.yarns.length === 0) return []
  const units = unitsOf(project)
  const names = new Map((project.yarns ?? []).map((yarn) => [yarn.id, yarn.name || yarn.id]))
  const money = (amount: number) => formatMoney(amount, currencyOf(project))
  const cell = (value: number | null, format: (value: number) => string, assumed: boolean) =>
    value === null ? '–' : starred(format(value), assumed)
  const hasStash = plan.yarns.some(({ onHand }) => onHand > 0)
  const anyAssumed = (number: YarnNumber) => plan.yarns.some((yarn) => isAssumed(yarn, number))
  const onHandOf = (yarn: YarnNeed) =>
    hasStash ? [cell(yarn.onHand, (grams) => formatMass(grams, units), isAssumed(yarn, 'onHand'))] : []
  const row = (yarn: YarnNeed) =>
    isNeedKnown(yarn)
      ? knownRow(yarn)
      : [nameOf(yarn), NOT_KNOWN, lengthOf(yarn), '–', ...onHandOf(yarn), '–', '–', '–']
  const lengthOf = (yarn: YarnNeed) => {
    const length = lengthAlone(yarn)
    return length ? formatYarnLength(length.expected, units) : '–'
  }
  const nameOf = ({ id }: YarnNeed) => names.get(id) ?? id
  const knownRow = (yarn: YarnNeed) => [
    nameOf(yarn),
    starred(formatMassRange(yarn.grams, units), isAssumed(yarn, 'grams')),
    starred(yarn.metres ? formatYarnLength(yarn.metres.expected, units) : '–', isAssumed(yarn, 'metres')),
    cell(yarn.balls, formatNumber, isAssumed(yarn, 'balls')),
    ...onHandOf(yarn),
    cell(yarn.toBuy, formatNumber, isAssumed(yarn, 'toBuy')),
    cell(yarn.leftover, (grams) => formatMass(grams, units), isAssumed(yarn, 'leftover')),
    cell(yarn.cost, money, isAssumed(yarn, 'cost')),
  ]
  const costs = plan.yarns.flatMap((yarn) => (yarn.cost === null ? [] : [yarn.cost]))
  const total = totalMass(
    plan.yarns.map(({ grams }) => grams.expected),
    units,
  )
  const columns = [
    ...['Yarn', 'Weight', 'Length', ballWord(termsOf(project))],
    ...(hasStash ? ['on hand'] : []),
    ...['to buy', 'left over', 'cost'],
  ]
  const sum = columns.map(() => '')
  sum[0] = 'Together'
  sum[1] = starred(formatMass(total, units), anyAssumed('grams'))
  const cost = costs.reduce((all, each) => all + each, 0)
  if (costs.length > 0) sum[columns.length - 1] = starred(money(cost), anyAssumed('cost'))
  const split = splitRemark(plan.yarns, (id) => names.get(id) ?? id)
  const unpriced = sumRemark(plan.yarns, (id) => names.get(id) ?? id)
  const made = madeYarnAdvice(plan.progress, termsOf(project), plan)
  const whole = wholeCost(plan.yarns, project.yarns ?? [])
  const alone = aloneWords(plan.yarns)
  const missing = noMoreWords(plan.yarns, (id) => names.get(id) ?? id, units)
  const remarks = [
    ...(missing ? [`${missing}.`] : []),
    ...(made ? [made] : []),
    ...(alone ? [alone] : []),
    ...(whole !== null && whole - cost > PENNY ? [wholeCostWords(money(whole), termsOf(project))] : []),
    ...(unpriced ? [unpriced] : []),
    ...(split ? [saying(termsOf(project))`One weight for several colours: ${split}.`] : []),
    ...(plan.yarns.some(({ assumed }) => assumed) ? [starWords(termWord('ball', termsOf(project)))] : []),
  ]
  return [
    '',
    ...table(
      columns.map((head, index) => ({ head, align: index === 0 ? 'left' : 'right' })),
      [...plan.yarns.map(row), ...(plan.yarns.length > 1 && plan.yarns.every(isNeedKnown) ? [sum] : [])],
      width,
    ),
    ...remarks.flatMap((remark) => wrap(remark, width)),
  ]
}

/** The rows of half motifs that follow from the rounds of theirs, as suggestions. */
const halfSection = (plan: Plan, width: number): string[] =>
  [...new Set([plan.motif, ...plan.accounts])].flatMap((account) => {
    const lines = account ? suggestedHalf(plan, account, termsOf(plan.settled)) : []
    if (!account || lines.length === 0) return []
    return ['', `Half of ${account.name || account.id}`, ...lines.flatMap((line) => wrap(line, width))]
  })

function orderSection(plan: Plan, width: number, whole: boolean): string[] {
  if (plan.order.length === 0) return []
  const pair = (step: OrderStep): [string, string] => {
    const piece = pieceAt(plan, step.motif)
    return piece ? [piece.label, `${pieceWords(plan, piece)}: ${step.words}`] : [step.motif, step.words]
  }
  const shown = whole ? plan.order : plan.order.slice(0, STEPS_SHOWN)
  const rest = plan.order.length - shown.length
  return [
    '',
    'Working order',
    ...legendsOf(
      shown.map((step) => step.words),
      marksIn([plan.motif, ...plan.accounts]),
    ).flatMap((legend) => wrap(legend, width)),
    ...listing(shown.map(pair), width),
    ...(rest > 0 ? [`… and ${formatNumber(rest)} more: --order shows all, the map prints them.`] : []),
  ]
}

/** The last round for each way in which a motif is joined; nothing where none is. */
function joiningSection(plan: Plan, width: number): string[] {
  const rounds = joiningRounds(plan, plan.settled.terms)
  if (!rounds.some(({ joins }) => joins > 0)) return []
  const isSeveral = new Set(rounds.map(({ motif }) => motif)).size > 1
  return [
    '',
    'Joining round',
    ...rounds.flatMap((round) => [
      ...wrap(titleOf(round, isSeveral), width),
      ...wrap(round.words, width - 2).map((line) => `  ${line}`),
    ]),
  ]
}
