/** The places in one or two lines each, so that their list is a summary of the project. */
import { say, spelled } from './say'
import { capital, counted, listed } from '../../src-core/figures/words'
import type { Finding } from '../../shared-types/finding'
import type { Plan, Provenance, YarnNumber } from '../../shared-types/plan'
import type { Motif, Project } from '../../shared-types/project'
import {
  isAssumed,
  isNeedKnown,
  lengthAlone,
  marked,
  noMoreWords,
  NOT_KNOWN,
} from '../../src-core/figures/yarn-words'
import { termWord } from '../../src-core/stitches/terms'
import { weighedColours } from '../../src-core/materials/weighed-colours'
import { leadingMeasure } from '../../src-core/motif/ruler'
import {
  formatLength,
  formatMass,
  formatMinutes,
  formatMoney,
  formatNumber,
  totalMass,
  formatYarnLength,
  totalYarnLength,
} from '../../src-core/units/format'
import { othersWords } from '../../src-core/progress/pieces'
import { hasBegun } from '../../src-core/progress/words'
import { kindOf } from '../kinds/kinds'
import { kitOf } from './edits/kit'
import { mainMotif, slotsOf } from './edits/motif'
import { findYarn } from './edits/yarn'
import { isShownAt } from './places-of-findings'
import type { PlaceId } from './view.svelte'
import { settled } from '../../src-core/settled'

interface PlaceSummary {
  readonly lines: readonly string[]
  /** The worst thing about it, in few words; null where all is well. */
  readonly warning: string | null
}

export const PLACE_NAMES: Readonly<Record<PlaceId, string>> = {
  motif: 'Motif',
  arrangement: 'Arrangement',
  joins: 'Joins',
  get colours() {
    return say`Colours`
  },
  yarn: 'Yarn',
  progress: 'Progress',
  kit: 'Kit',
  paper: 'Paper',
}

export { counted, listed }

/** Behind the size of a motif. */
const SOURCES: Readonly<Record<Provenance, string>> = {
  measured: ', measured',
  'other-hook': ', measured with another hook',
  stated: ', stated',
  aimed: ', not measured yet',
  gauge: '',
  'rule-of-thumb': '',
}

const isShort = (finding: Finding): boolean => finding.code === 'yarn/stash-short'

function shortly(project: Project, plan: Plan, findings: readonly Finding[]): string | null {
  const worst = findings.find((finding) => finding.severity !== 'note')
  if (!worst) return null
  if (isShort(worst)) {
    const names = findings
      .filter(isShort)
      .map(({ target }) => findYarn(project, target?.yarn)?.name ?? 'a yarn')
    // Of the others there is none on hand, so that nothing runs out: they are to be bought all the same.
    const all = Math.max(names.length, plan.yarns.filter(({ toBuy }) => toBuy).length)
    const others = all > names.length ? `, ${counted(all - names.length, 'other')} to buy` : ''
    const short =
      names.length > 2
        ? `${counted(names.length, 'yarn')} run short`
        : `${listed(names)} ${names.length > 1 ? 'run' : 'runs'} short`
    return short + others
  }
  return capital(firstSentence(worst.message))
}

/** What is wrong, without how wrong: the place itself says the rest. */
const firstSentence = (message: string): string => message.split(/\.(?=\s+\p{Lu})/u, 1)[0]!.replace(/\.$/, '')

/** Grams of one motif where they are known; null elsewhere. */
export function motifGrams(motif: Motif): number | null {
  // Yarn is counted by the grams of the colours where they are all known.
  const grams =
    motif.kind === 'measured' ? (motif.slots ?? []).map((slot) => slot.grams) : gramsOfRounds(motif)
  if (grams.length > 0 && grams.every((gram) => gram !== undefined))
    return grams.reduce((sum, gram) => sum! + gram!, 0)!
  return motif.weighed?.grams && motif.weighed.motifs ? motif.weighed.grams / motif.weighed.motifs : null
}

/** What was weighed of each colour of written rounds by itself. */
function gramsOfRounds(motif: Motif): (number | undefined)[] {
  const slots = slotsOf(motif)
  const alone = weighedColours(motif, slots)
  return slots.map((slot) => alone.get(slot))
}

function motifLines(project: Project, plan: Plan): string[] {
  const motif = mainMotif(project)
  if (!motif) return ['none yet']
  const { units } = settled(project)
  const placed = plan.accounts
  const first = placed.find(({ id }) => id === motif.id) ?? placed[0]
  if (first && placed.length > 1) {
    const size = formatLength(leadingMeasure(first).value, units)
    const fillers = plan.fillerMotifs.filter(({ id }) => placed.every((each) => each.id !== id))
    const others = placed.length - 1 + fillers.length
    return [`${first.name || first.id} of ${size}`, `and ${counted(others, 'other')}`]
  }
  const account = plan.motif ?? first
  const lead = account ? leadingMeasure(account) : null
  const source = account ? SOURCES[account.provenance] : ''
  const grams = motifGrams(motif)
  const facts = [
    grams === null ? '' : formatMass(grams, units),
    motif.minutes === undefined ? '' : formatMinutes(motif.minutes),
  ].filter(Boolean)
  return [
    lead ? `${formatLength(lead.value, units)} ${lead.words}${source}` : (motif.name ?? 'no measures yet'),
    facts.length > 0 ? facts.join(' · ') : 'not weighed yet',
  ]
}

/** Colourways that a summary counts before it says how many more there are. */
const WAYS_SHOWN = 5

function colourLines(project: Project, plan: Plan): string[] {
  const ways = project.colourways ?? []
  if (ways.length === 0) return [say`no colourways yet`]
  const placed = ways
    .map((way) => ({ code: way.code ?? way.name ?? way.id, count: plan.counts.byColourway[way.id] ?? 0 }))
    .filter((way) => way.count > 0)
  if (placed.length === 0) return [spelled(counted(ways.length, 'colourway')), 'none placed yet']
  // "1 more" would take the room of the one that it leaves out.
  const shown = placed.length <= WAYS_SHOWN + 1 ? placed : placed.slice(0, WAYS_SHOWN)
  const left = placed.length - shown.length
  const told = shown.map((way) => `${way.code} ${formatNumber(way.count)}`)
  return [[...told, ...(left > 0 ? [`${left} more`] : [])].join(' · ')]
}

function yarnLines(project: Project, plan: Plan): string[] {
  const yarns = project.yarns ?? []
  if (yarns.length === 0) return ['no yarn yet']
  const toBuy = plan.yarns.reduce((sum, yarn) => sum + (yarn.toBuy ?? 0), 0)
  const { units } = settled(project)
  const grams = totalMass(
    plan.yarns.map((yarn) => yarn.grams.expected),
    units,
  )
  if (plan.yarns.length > 0 && grams === 0) {
    const lengths = plan.yarns.map((need) => lengthAlone(need)?.expected ?? null)
    const all = lengths.every((length) => length !== null)
      ? `${formatYarnLength(totalYarnLength(lengths, units), units)} in `
      : ''
    return [all + counted(plan.yarns.length, 'yarn'), `weight ${NOT_KNOWN}`]
  }
  const word = termWord('ball', settled(project).terms)
  const assumes = (number: YarnNumber): boolean => plan.yarns.some((need) => isAssumed(need, number))
  const known = plan.yarns.filter(isNeedKnown).length
  const unknown = known > 0 && known < plan.yarns.length ? `, ${plan.yarns.length - known} ${NOT_KNOWN}` : ''
  const used = counted(known || plan.yarns.length, 'yarn') + unknown
  const mass = marked(formatMass(grams, units), assumes('grams'))
  // What is bought for a kit is bought for the whole batch.
  const { kit } = plan
  if (kit && plan.yarns.length > 0 && grams > 0) {
    const balls = kit.run.map((run) => run.balls)
    const all = balls.every((count) => count !== null) ? balls.reduce((sum, count) => sum + count, 0) : null
    const guessed = kit.run.some(({ assumed }) => assumed)
    const batch = `for the batch of ${formatNumber(kit.count)}`
    return [
      `${mass} in ${used} for one`,
      all === null
        ? `what is bought ${batch} is ${NOT_KNOWN}`
        : marked(`${counted(all, word)} to buy ${batch}`, guessed),
    ]
  }
  return [
    plan.yarns.length === 0 ? 'none in use' : grams > 0 ? `${mass} in ${used}` : used,
    toBuy > 0
      ? marked(`${counted(toBuy, word)} to buy`, assumes('toBuy'))
      : noMoreWords(plan.yarns, (id) => findYarn(project, id)?.name ?? id, units) || 'nothing to buy',
  ]
}

function progressLines(_: Project, { progress, motifs, counts }: Plan): string[] {
  if (!hasBegun(progress)) return ['nothing made yet']
  const { made, left } = progress
  const hours =
    left.minutes && left.minutes.expected > 0 ? `, about ${formatMinutes(left.minutes.expected)}` : ''
  const rest = [
    ...(left.motifs > 0 || left.others === 0 ? [counted(left.motifs, 'motif')] : []),
    ...(left.others > 0 ? [othersWords({ counts }, left.others)] : []),
  ].join(' and ')
  return [
    `${formatNumber(made)} of ${formatNumber(motifs.length)} made`,
    left.motifs + left.others > 0 || hours ? `${rest} left${hours}` : 'nothing left',
  ]
}

function kitLines(project: Project, plan: Plan): string[] {
  const given = kitOf(project)
  if (!given) return ['not sold as a kit']
  const { kit } = plan
  const count = counted(kit?.count ?? given.count ?? 1, 'kit')
  if (!kit) return [count]
  const money = (amount: number): string => formatMoney(amount, settled(project).currency)
  if (kit.asked) {
    const taxed = kit.asked.tax > 0 ? ' with tax' : ''
    const told = (amount: number): string => marked(money(amount), kit.assumed?.includes('cost') ?? false)
    return [`${count} at ${told(kit.asked.withTax)}${taxed}`, `the batch costs ${told(kit.runCost ?? 0)}`]
  }
  return [count, `${counted(kit.extras.length, 'extra')}, no price yet`]
}

const LINES: Readonly<Record<PlaceId, (project: Project, plan: Plan) => string[]>> = {
  motif: motifLines,
  arrangement: (project, plan) => kindOf(project).summary.arrangement(project, plan),
  joins: (project, plan) => kindOf(project).summary.joins(project, plan),
  colours: colourLines,
  yarn: yarnLines,
  progress: progressLines,
  kit: kitLines,
  paper: (project) => [
    `${settled(project).sheet.paper}, ${settled(project).sheet.terms} terms`,
    project.sheet?.style === 'ink' ? 'black ink' : say`colour, letters and textures`,
  ],
}

/** What stands under the name of a place. */
export function placeSummary(
  place: PlaceId,
  project: Project,
  plan: Plan,
  findings: readonly Finding[] = plan.findings,
): PlaceSummary {
  const here = findings.filter((finding) => isShownAt(finding, place))
  return { lines: LINES[place](project, plan), warning: shortly(project, plan, here) }
}
