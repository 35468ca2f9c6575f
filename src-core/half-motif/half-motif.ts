/**
 * M28: the half of a motif in rows, where its rounds say it: every round the same on both sides of the cut. What is told
 * is read again as any pattern is, and told only where that makes the stitches that are meant.
 */
import type { MotifAccount, PlacedHalf, Plan } from '../../shared-types/plan'
import type { Hand, Motif, Terms } from '../../shared-types/project'
import type { Settled } from '../../shared-types/settled'
import { workedRounds } from '../accounts'
import { plural } from '../figures/words'
import { directionOf } from '../geometry/points'
import { joinPlaces } from '../joining-round/places'
import type { JoinPlaces } from '../joining-round/places'
import { listOf } from '../joins/words'
import { halfMeasures } from '../layout/halves'
import { remembered } from '../memo'
import type { RoundsAccount } from '../motif/rounds/account'
import { instructionLines } from '../motif/instructions'
import { readMotif } from '../motif/rounds/read-motif'
import { editionText } from '../notation/translate'
import { saying } from '../stitches/spelling'
import { formatLength } from '../units/format'
import { asideOf, cutsOf } from './cut'
import type { Cut } from './cut'
import { RING, ringsOf } from './rings'
import type { Ring } from './rings'
import { rowsOf } from './rows'
import type { HalfRow } from './rows'
import { ringWords, rowTexts } from './words'

/** A half motif that follows from written rounds. */
export interface HalfPattern {
  /** What it begins with: "Ch 5, join with sl st to form a ring." */
  readonly begin: string
  /** "Row 1: Ch 4 (counts as dc and ch 1), …; turn. (8 dc)". */
  readonly rows: readonly string[]
  /** Stitches of the last row. */
  readonly stitches: number
}

/** Where the cut goes through a motif: through two of its tips or corners, or between them. */
export type CutAt = 'tips' | 'between'

/** Fewer chains make no ring (ours). */
const LEAST_RING = 2

/** Degrees by which a tip may be off the cut and still lie on it. */
const ON_CUT = 1

/** Where a half that is turned so is cut from the top to the bottom; null where that is neither. */
export function cutAt(
  account: Pick<MotifAccount, 'shape' | 'anchors' | 'petals'>,
  turn: number,
): CutAt | null {
  // Round ones are the same wherever they are cut.
  if (account.shape === 'round') return 'between'
  const tips = account.anchors.filter(({ kind }) => kind === 'tip' || kind === 'corner')
  if (tips.length < 2 || account.shape === 'leaf') return null
  const step = 360 / tips.length
  const offs = tips.map((tip) => {
    const off = ((((directionOf(tip) * 180) / Math.PI + turn) % step) + step) % step
    return Math.min(off, step - off)
  })
  if (offs.every((off) => off < ON_CUT)) return 'tips'
  return offs.every((off) => Math.abs(off - step / 2) < ON_CUT) ? 'between' : null
}

/** The cut that goes through the tips, or as far from them as one can. */
function cutFor(rings: readonly Ring[], cuts: readonly Cut[], places: JoinPlaces, at: CutAt): Cut | null {
  const index = places.round.round.index
  const ring = rings[index]
  const tops = places.leading.flatMap((element) => ring?.at.get(element.index) ?? [])
  if (!ring || tops.length === 0) return null
  const aside = (cut: Cut): number =>
    Math.min(...tops.map((top) => asideOf(cut[index]!, top, ring.tops.length)))
  const sorted = [...cuts].sort((a, b) => aside(a) - aside(b))
  return (at === 'tips' ? sorted[0] : sorted.at(-1)) ?? null
}

/** Whether the words, read again, make these rows and no complaint. */
function readsAs(texts: readonly string[], ring: number, rows: readonly HalfRow[], terms: Terms): boolean {
  const foundation = ring > 0 ? { ring: 'chain', chains: ring } : { ring: 'adjustable' }
  const rounds = texts.map((work) => ({ work }))
  const { worked, findings } = readMotif({ id: 'half', kind: 'rounds', foundation, rounds }, terms)
  if (findings.some(({ severity }) => severity !== 'note')) return false
  const read = worked.filter(({ elements }) => elements.some(({ standing }) => standing))
  return read.length === rows.length && read.every((round, i) => isRow(round, rows[i]!, rows[i - 1]))
}

function isRow(
  { places, elements, stitches }: ReturnType<typeof readMotif>['worked'][number],
  { tops }: HalfRow,
  before: HalfRow | undefined,
): boolean {
  if (places.length !== tops.length || stitches !== tops.filter(({ kind }) => kind === 'stitch').length)
    return false
  return places.every(({ kind, element: at, chains }, i) => {
    const top = tops[i]!
    const element = elements[at]
    if (top.kind === 'space') return kind === 'space' && chains === top.chains
    if (kind !== 'stitch' || (element?.countsAs ?? element?.stitch) !== top.stitch) return false
    const [into] = element?.into ?? []
    if (!into) return element?.role === 'beginning'
    // A row is worked from the end of the one before.
    const place = before && into.kind !== 'ring' ? before.tops.length - 1 - into.index : RING
    return place === top.into
  })
}

const derived = remembered(
  (account: MotifAccount, told: RoundsAccount, at: CutAt, hand: Hand, terms: Terms): HalfPattern | null => {
    const rings = ringsOf(told.read.worked)
    const cuts = rings && cutsOf(rings)
    if (!rings || !cuts || cuts.length === 0) return null
    const places = joinPlaces(told, account, hand)
    const cut = account.shape === 'round' ? cuts[0]! : places && cutFor(rings, cuts, places, at)
    const rows = cut && rowsOf(rings, cut)
    if (!rows) return null
    // What is worked into one chain is worked into a ring as well.
    const ring = told.read.ringChains > LEAST_RING ? told.read.ringChains : 0
    const texts = rowTexts(rows, terms)
    if (!readsAs(texts, ring, rows, terms)) return null
    const stitches = rows.at(-1)!.tops.filter(({ kind }) => kind === 'stitch').length
    return { begin: ringWords(ring, terms), rows: texts, stitches }
  },
  2,
)

/** The half of a motif of a project, cut so; null where its rounds do not say it. */
export function halfPattern(project: Settled, account: MotifAccount, at: CutAt): HalfPattern | null {
  const motif = project.motifs.find(({ id }) => id === account.id)
  if (motif?.kind !== 'rounds') return null
  return derived(account, workedRounds(project, motif), at, project.hand, project.terms)
}

/** The half of a motif as it is cut where it stands; null where there is none, or its rounds do not say it. */
export function halfFor(
  project: Settled,
  account: MotifAccount,
  halves: readonly PlacedHalf[],
  first: string | undefined,
): HalfPattern | null {
  const half = halves.find(({ motif = first }) => motif === account.id)
  const at = half ? cutAt(account, half.turn) : null
  return at && halfPattern(project, account, at)
}

/** Whether the instructions of a motif speak of its half. */
export const saysHalf = (motif: Motif): boolean =>
  instructionLines(motif).some((line) => /\bhal(f|ves)\b/i.test(line))

/** What is said above the rows: they are ours, and nobody has worked them yet. */
const suggestedWords = (terms: Terms): string =>
  saying(
    terms,
  )`A suggestion that follows from the rounds, each row in the colour of the round of the same number: work one, lay it beside a whole motif, and change it where it does not fit.`

/** How many colors a motif has, by the names of their parts. */
const partsOf = (motif: Motif): number =>
  motif.kind === 'rounds' ? new Set((motif.rounds ?? []).map(({ slot = '' }) => slot)).size : 1

/** "Rows 2 and 4 are worked with the right side facing.": the last row is, as the last round of a whole one. */
function facingWords(rows: number): string {
  const facing = Array.from({ length: rows }, (_, i) => i + 1).filter((row) => (rows - row) % 2 === 0)
  return `${plural(facing.length, 'Row')} ${listOf(facing)} ${plural(facing.length, 'is', 'are')} worked with the right side facing.`
}

/**
 * What the rows of a half do not say: which side is the right one, what is done where the color changes, and how large
 * it has to be. Empty where nothing follows from the rounds.
 */
export function halfMaking(
  { settled, halves, motif: first }: Plan,
  account: MotifAccount,
  terms: Terms,
): string {
  const motif = settled.motifs.find(({ id }) => id === account.id)
  const half = halves.find(({ motif: own = first?.id }) => own === account.id)
  const told = halfFor(settled, account, halves, first?.id)
  if (!motif || !half || !told) return ''
  const { edge, deep } = halfMeasures(account, half.turn)
  const [long, wide] = [edge, deep].map((mm) => formatLength(Math.round(mm), settled.units))
  return [
    facingWords(told.rows.length),
    ...(partsOf(motif) > 1
      ? [
          saying(
            terms,
          )`Where the next row has another colour, change to it in the last step of the row before and fasten off the old one.`,
        ]
      : []),
    `It has to be ${long} long along its straight edge and ${wide} wide. That edge draws in: work the first and last stitch of each row loosely, and pin it out to that length when you block it.`,
  ].join(' ')
}

/**
 * How the halves that a plan has of a motif are worked, line by line: what the rows are, what they begin with, and the
 * rows. Empty where there are none, where the instructions speak of them, and where nothing follows from the rounds.
 */
export function suggestedHalf(plan: Plan, account: MotifAccount, terms: Terms): readonly string[] {
  const { settled, halves, motif: first } = plan
  const motif = settled.motifs.find(({ id }) => id === account.id)
  const told = motif && !saysHalf(motif) ? halfFor(settled, account, halves, first?.id) : null
  if (!told) return []
  const lines = [told.begin, ...told.rows]
  return [
    `${suggestedWords(terms)} ${halfMaking(plan, account, terms)}`,
    ...(terms === settled.terms ? lines : lines.map((line) => editionText(line, settled.terms, terms))),
  ]
}
