/** The project as a sentence, in parts: each part that a person can change names the field it tells. */
import { closedInShort } from './closing-words'
import { formName } from '../motif/forms'
import { knownSize, leadingMeasure } from '../motif/ruler'
import type { MotifAccount, Plan } from '../../shared-types/plan'
import type { Terms, UnitSystem } from '../../shared-types/project'
import type { Settled } from '../../shared-types/settled'
import { readBlocks } from '../layout/blocks'
import { blanketOf, byKind } from '../plans/layouts'
import { termWord } from '../stitches/terms'
import { lengthsIn, formatLength, formatMeasure, formatNumber, formatSize } from '../units/format'
import { appliqueSentence } from './applique-sentence'
import { garlandSentence } from './garland-sentence'
import { listOf } from '../joins/words'
import { emptyWords } from './missing'
import { mapRows } from './rows'
import { capital, counted, numbered, numeral, plural } from './words'

export type SentenceField =
  | 'count'
  | 'motif'
  | 'motif-size'
  | 'arrangement'
  | 'columns'
  | 'rings'
  | 'joining'
  | 'gaps'
  | 'size'
  | 'size-with-edging'
  | 'sequence'
  | 'spacing'
  | 'cord'
  | 'swags'
  | 'panel'
  | 'items'
  | 'clearance'

export interface SentencePart {
  readonly text: string
  readonly field?: SentenceField
}

const SIDED: Readonly<Record<number, readonly [string, string]>> = {
  4: ['square', 'squares'],
  6: ['hexagon', 'hexagons'],
  8: ['octagon', 'octagons'],
}

/** What a motif is, by its shape: "six-petal flower", "six-petal flowers", "square", "leaves". */
export function shapeName(motif: MotifAccount, many: boolean): string {
  if (motif.shape === 'petals') return `${numeral(motif.petals)}-petal ${many ? 'flowers' : 'flower'}`
  if (motif.shape === 'round') return many ? 'circles' : 'circle'
  if (motif.shape === 'leaf') return formName(motif, many)
  const [one, several] = SIDED[motif.petals] ?? ['motif', 'motifs']
  return many ? several : one
}

/** A length in the chosen units, and in the others behind it where `both`. */
function bothSizes(width: number, height: number, units: UnitSystem): string {
  const other = units === 'metric' ? 'imperial' : 'metric'
  return `${formatSize(width, height, units)} (${formatSize(width, height, other)})`
}

/** Tips farther apart than this share of a motif lie side by side. */
const NESTLED = 0.01

/** How the motifs are joined, in words: "joined tip to tip", "sewn together", "laid 5 mm apart". */
export function joiningWords(
  { joining, units }: Pick<Settled, 'joining' | 'units'>,
  motif: MotifAccount | null,
  joins: Plan['joins'] = [],
): string {
  switch (joining.rule) {
    case 'edges':
      if (motif?.shape === 'straight') return 'joined along the sides'
      return joins.length > 0 && motif ? edgesWords(motif, joins) : 'joined at tips and shoulders'
    case 'bridge': {
      const chains = joining.bridgeChains
      return chains > 0 ? `joined with chains of ${chains}` : 'joined with a slip stitch'
    }
    case 'seam':
      return joining.seam === 'sc' || joining.seam === 'slip-stitch' || joining.seam === 'flat-braid'
        ? 'crocheted together'
        : 'sewn together'
    case 'apart':
      return `laid ${formatLength(joining.gap, units)} apart`
    default:
      if (motif?.shape === 'straight') return 'joined at the corners'
      return motif?.shape === 'petals' ? tipsWords(motif, joins) : 'joined where they touch'
  }
}

/** Where flowers nestle, tips lie side by side and three may meet: that is not tip to tip. */
const tipsWords = (motif: MotifAccount, joins: Plan['joins']): string =>
  joins.some((join) => join.members.length > 2 || join.spread > NESTLED * motif.overTips)
    ? 'joined at their tips'
    : 'joined tip to tip'

/** Which of the places that may be joined are: a plan may join tips alone, or shoulders alone. */
function edgesWords(motif: MotifAccount, joins: Plan['joins']): string {
  if (motif.shape !== 'petals') return 'joined where they touch'
  const anchors = joins.flatMap(({ members }) => members.map(({ anchor }) => anchor))
  const shoulders = anchors.filter((anchor) => anchor.startsWith('shoulder-')).length
  if (shoulders === 0) return tipsWords(motif, joins)
  return shoulders < anchors.length ? 'joined at tips and shoulders' : 'joined at their shoulders'
}

function arrangementParts(plan: Plan): SentencePart[] {
  const rows = mapRows(plan)
  if (plan.arrangement === 'rings') {
    const rings = (rows.length - 1) / 2
    return [
      { text: ' in ' },
      { text: rings === 1 ? 'a ring' : numbered(rings, 'ring'), field: 'rings' },
      { text: ' round one in the middle' },
    ]
  }
  const isStraight = plan.arrangement === 'straight-rows'
  const large = isStraight ? largeMotifs(plan) : NO_LARGE
  // A row is as long as the small motifs alone would make it, where a large one takes places of it.
  const inRows = new Map(rows.map(({ row, motifs }) => [row, motifs.length]))
  for (const [row, more] of large.more) inRows.set(row, (inRows.get(row) ?? 0) + more)
  const lengths = [...new Set(inRows.values())]
  // Straight rows are as long as each other but for places that are left out.
  const each =
    isStraight && lengths.length === 2
      ? `up to ${formatNumber(Math.max(...lengths))}`
      : lengths.length > 2
        ? 'different lengths'
        : lengths.map((length) => formatNumber(length)).join(' and ')
  const kind = isStraight ? 'straight rows' : 'offset rows'
  if (rows.length === 1) return [{ text: ' in ' }, { text: 'one row', field: 'arrangement' }]
  return [
    { text: large.words ? ` in ${formatNumber(inRows.size)} ` : ' in ' },
    { text: kind, field: 'arrangement' },
    { text: ' of ' },
    { text: each, field: 'columns' },
    ...(large.words ? [{ text: `, with ${large.words}` }] : []),
  ]
}

interface LargeMotifs {
  /** "one large motif in the place of 3 × 3"; empty where none takes more than one place. */
  readonly words: string
  /** How many more places a row has than motifs are counted in it, because large ones take them. */
  readonly more: ReadonlyMap<number, number>
}

const NO_LARGE: LargeMotifs = { words: '', more: new Map() }

/** M19: the motifs that take a block of places, as many of each size as stand there. */
function largeMotifs({ motifs, settled }: Plan): LargeMotifs {
  const layout = blanketOf(settled)
  if (!layout?.cells?.large) return NO_LARGE
  const standing = new Set(motifs.map(({ id }) => id))
  const { columns = 0, rows = 0 } = layout
  const counts = { arrangement: 'straight-rows', columns, rows, rings: 0, alternateRows: 'same' } as const
  const { blocks, covered } = readBlocks(layout.cells.large, counts, (id) => standing.has(id))
  const more = new Map<number, number>()
  for (const id of covered) {
    const row = Number(id.split(',')[0])
    more.set(row, (more.get(row) ?? 0) + 1)
  }
  const sizes = [...blocks.values()].sort((a, b) => b - a)
  const told = [...new Set(sizes)].map((size, i) => {
    const count = sizes.filter((each) => each === size).length
    const what = i === 0 ? ` large ${plural(count, 'motif', 'motifs')}` : ''
    return `${numeral(count)}${what} in the place of ${size} × ${size}${count > 1 ? ' each' : ''}`
  })
  return { words: listOf(told), more }
}

/** "120 six-petal flowers of 78 mm". */
const motifParts = (motif: MotifAccount, count: number, units: UnitSystem): SentencePart[] => [
  { text: formatNumber(count), field: 'count' },
  { text: ' ' },
  { text: shapeName(motif, count !== 1), field: 'motif' },
  { text: ' of ' },
  { text: formatMeasure(knownSize(motif), units), field: 'motif-size' },
]

/** "48 motifs (24 six-petal flowers of 78 mm and 24 squares of 60 mm)". */
function severalParts({ accounts, motifs, settled }: Plan): SentencePart[] {
  const told = accounts.flatMap((account) => {
    const count = motifs.filter(({ motif }) => motif === account.id).length
    if (count === 0) return []
    const size = formatMeasure(knownSize(account), settled.units)
    return `${formatNumber(count)} ${shapeName(account, count !== 1)} of ${size}`
  })
  return [
    { text: counted(motifs.length, 'motif'), field: 'count' },
    { text: ' (' },
    { text: listOf(told), field: 'motif' },
    { text: ')' },
  ]
}

/** What stands between the motifs and at the ends of rows: ", with 110 fillers and 14 half motifs". */
function gapParts({ fillers, halves }: Plan): SentencePart[] {
  const parts: string[] = []
  if (fillers.length > 0) parts.push(counted(fillers.length, 'filler'))
  if (halves.length > 0) parts.push(counted(halves.length, 'half motif'))
  return parts.length > 0 ? [{ text: ', with ' }, { text: parts.join(' and '), field: 'gaps' }] : []
}

/** The project in one sentence, by what it is made into. */
export const projectSentence = (plan: Plan, terms: Terms = plan.settled.terms): SentencePart[] =>
  byKind(plan, {
    blanket: (own) => own.motif && own.motifs.length > 0 && blanketSentence(own, own.motif, terms),
    garland: (own) => own.garland && garlandSentence(own, own.garland, shapeName, terms),
    applique: (own) => own.panel && appliqueSentence(own, own.panel),
  }) || [{ text: emptyWords(plan) }]

/**
 * "120 six-petal flowers of 78 mm in offset rows of 12, joined tip to tip:
 * 97.5 × 68.6 cm (38⅜ × 27 in)." With an edging both sizes are told, before it and with it.
 */
function blanketSentence(plan: Plan, motif: MotifAccount, terms: Terms): SentencePart[] {
  const { settled } = plan
  const units = settled.units
  const count = plan.motifs.length
  const parts = plan.accounts.length > 0 ? severalParts(plan) : motifParts(motif, count, units)
  // "3⅛ in in rows" would trip the tongue.
  if (units === 'imperial') parts.push({ text: ',' })
  parts.push(
    ...arrangementParts(plan),
    { text: ', ' },
    { text: joiningWords(settled, motif, plan.joins), field: 'joining' },
    ...gapParts(plan),
    ...(plan.round ? [{ text: `, joined in the round${closedInShort(plan)}` }] : []),
  )
  const { width, height } = plan.size
  if (plan.round) {
    const lengths = [width, plan.round.flat, height]
    const [around, flat, high] = lengths.map(lengthsIn(units, lengths))
    parts.push(
      { text: ': ' },
      { text: `${around} around, ${flat} wide laid flat and ${high} high`, field: 'size' },
    )
    return [...parts, { text: '.' }]
  }
  if (!plan.edging || plan.edging.height <= 0) {
    parts.push({ text: ': ' }, { text: bothSizes(width, height, units), field: 'size' }, { text: '.' })
    return parts
  }
  const edge = 2 * plan.edging.height
  const word = termWord('edging', terms)
  parts.push(
    { text: ': ' },
    { text: bothSizes(width - edge, height - edge, units), field: 'size' },
    { text: ` before the ${word}, ` },
    { text: formatSize(width, height, units), field: 'size-with-edging' },
    { text: ' with it.' },
  )
  return parts
}

/** The measure that a motif is known by, in both units: "89 mm (3½ in) through its tips". */
export function measureWords(motif: MotifAccount, units: UnitSystem): string {
  const { value, words } = leadingMeasure(motif)
  const other = units === 'metric' ? 'imperial' : 'metric'
  return `${formatMeasure(value, units)} (${formatMeasure(value, other)}) ${words}`
}

/** A motif printed alone: "Six-petal flower, 97 mm (3⅞ in) tip to tip."; '' where there is none. */
export const aloneSentence = ({ motif, settled: { units } }: Plan): string =>
  motif ? capital(`${shapeName(motif, false)}, ${measureWords(motif, units)}.`) : ''

/** The sentence as plain text. */
export const sentenceText = (parts: readonly SentencePart[]): string =>
  capital(parts.map((part) => part.text).join(''))
