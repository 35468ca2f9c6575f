/** Every word of the assembly map, in English with the trade's US and UK words. */
import { dayIn } from '../../src-core/progress/days'
import { formatNumber } from '../../src-core/units/format'
import type { MotifAccount, Plan } from '../../shared-types/plan'
import type { EdgingEnds, Hand, Terms } from '../../shared-types/project'
import type { Settled } from '../../shared-types/settled'
import { ENDS_WORDS } from '../../src-core/edging/words'
import { counted } from '../../src-core/figures/words'
import type { ColourwayMark } from '../../src-core/figures/marks'
import { cribWord, KIND_WORDS } from '../../src-core/figures/kind-words'
import type { Caution } from '../../src-core/figures/kind-words'
import { tickWords } from '../../src-core/figures/made-ticks'
import { SMALL_PARTS } from '../../src-core/figures/kit-words'
import { shapeName } from '../../src-core/figures/sentence'
import { layoutKindOf } from '../../src-core/plans/layouts'
import { listOf } from '../../src-core/joins/words'
import { LETTERED } from '../../src-core/page/colour-names'
import { isColour, partName } from './words-colours'
import { colourSpelled, saying } from '../../src-core/stitches/spelling'
import { termWord } from '../../src-core/stitches/terms'

export const PAGE_NAMES = {
  title: 'Title page',
  overview: 'Overview',
  key: 'Key',
  joins: 'Joins',
  order: 'Order of work',
  materials: 'Materials',
  progress: 'Progress',
  motif: 'The motif',
  motifs: 'The motifs',
  cautions: 'Take care',
  notes: 'Notes',
  card: 'Kit card',
  garland: 'The garland',
  cord: 'Along the cord',
  packing: 'Packing list',
  labels: 'Labels',
} as const

export const UNTITLED = 'Untitled project'

/** The day as every other one on paper, in UTC so that the same date always prints the same. A sheet for the left hand says so on every page: it must not be mixed with the other one. */
export const footerLeft = (title: string, date: Date, terms: Terms, hand: Hand = 'right'): string =>
  `${title} · version of ${dayIn(date.toISOString().slice(0, 10), terms)}${hand === 'left' ? ' · left-handed' : ''}`
/** "Orchard wall throw by Ada Loop"; nothing is added where nobody is named. */
export const creditedTitle = (title: string, designer: string): string =>
  designer === '' ? title : `${title} by ${designer}`
export const footerRight = (page: number, pages: number): string => `page ${page} of ${pages}`

/** What one motif is called in running text: "flower", "square", "motif". */
export const motifWord = (motif: MotifAccount | null): string => {
  if (!motif) return 'motif'
  if (motif.shape === 'petals') return 'flower'
  return shapeName(motif, false)
}

/** The same for several. */
export const motifWords = (motif: MotifAccount | null): string => {
  if (!motif) return 'motifs'
  return motif.shape === 'petals' ? 'flowers' : shapeName(motif, true)
}

interface MapFacts {
  readonly numbered: boolean
  readonly lettered: boolean
  /** Colours within a motif that the rounds call by a letter which is also that of a colourway: "color A". */
  readonly colourLetters: readonly string[]
  /** Parts that rings round the numbers show, the outermost first. */
  readonly rings: readonly string[]
  /** What the marks of its join points mean. */
  readonly joins: string
  /** What the marks of pairs with a way of joining of their own mean. */
  readonly pairs: string
  readonly arrows: boolean
  /** A line runs from number to number. */
  readonly path: boolean
  readonly placesOnTop: boolean
  readonly edging: boolean
  /** What the marks of its corners mean. */
  readonly corners: string
  /** What the ticks on made motifs mean. */
  readonly ticks: string
  /** It is joined in the round. */
  readonly round?: boolean
  /** At which of its ends the edging is. */
  readonly ends: EdgingEnds
  readonly fillers: boolean
  /** Some filler is joined at a place that the clock tells. */
  readonly clock: boolean
  readonly halves: boolean
  readonly sheets: number
  readonly firstRow: number
}

/** What the rings round the numbers stand for. */
const ringWords = (slots: readonly string[]): string =>
  slots.length === 1
    ? `The ring round a number shows the ${small(slots[0]!)} under it.`
    : `The rings round a number show what is under it, from the outside: ${listOf(slots.map(small))}.`

/** What the ticks on a map mean; empty where nothing is made. */
export function tickSentence({ marks, progress }: Pick<Plan, 'marks' | 'progress'>): string {
  const [made, joined] = [marks.made.length, marks.joined.length]
  if (made === 0) return ''
  const words = tickWords(progress.joinedAs)
  const told = [
    ...(made > joined ? [`A dark tick on light ground: ${words.made}`] : []),
    ...(joined > 0 ? [`${made > joined ? 'a' : 'A'} light tick on dark ground: ${words.joined}`] : []),
  ]
  return `${told.join('; ')}.`
}

/** "How to read it" beside the map. */
export function howToRead(facts: MapFacts, terms: Terms): string {
  const say = saying(terms)
  const parts: string[] = []
  const order = 'the order of work'
  if (facts.sheets > 0) {
    parts.push(
      `The map is printed on ${counted(facts.sheets, 'sheet')}; the frames show which part is on which.`,
      `On the sheets the number is ${order}${facts.lettered ? say`, the letter the colourway` : ''}.`,
    )
  } else if (facts.numbered) {
    parts.push(`The number is ${order}${facts.lettered ? say`, the letter the colourway` : ''}.`)
  }
  if (facts.colourLetters.length > 0)
    parts.push(
      facts.colourLetters.length === 1
        ? say`It stands for a whole motif; ${listOf(facts.colourLetters)} of the rounds is a colour within each motif.`
        : say`It stands for a whole motif; ${listOf(facts.colourLetters)} of the rounds are colours within each motif.`,
    )
  if (facts.rings.length > 0) parts.push(ringWords(facts.rings))
  if (facts.joins !== '') parts.push(facts.joins)
  if (facts.pairs !== '') parts.push(facts.pairs)
  if (facts.arrows) parts.push('Arrows show the way each row is worked.')
  if (facts.path) parts.push('The line with arrows leads from each number to the next.')
  if (facts.halves)
    parts.push(
      'Half motifs are worked back and forth. Their numbers come after those of all motifs, but each is joined as soon as all the motifs beside it are there.',
    )
  if (facts.fillers)
    parts.push(
      'The small ones are fillers. Their numbers come after those of all motifs, but each is joined as soon as all the motifs round it are there.',
      ...(facts.clock ? ['Clock times have 12 at the top of the map: slip stitch into the edge there.'] : []),
    )
  if (facts.edging && !facts.round) parts.push(`The band round it is the ${termWord('edging', terms)}.`)
  if (facts.corners !== '') parts.push(facts.corners)
  if (facts.ticks !== '') parts.push(facts.ticks)
  if (facts.round) {
    parts.push(
      'The dashed lines are one and the same: there the last motif of each row is joined to the first.',
    )
    parts.push(
      'The mouth is at the top, the bottom at the foot of the map.',
      ...(facts.edging ? [`The ${termWord('edging', terms)} is worked ${ENDS_WORDS[facts.ends]}.`] : []),
    )
  }
  parts.push(
    `Right side up, row ${facts.firstRow} at the top${facts.placesOnTop ? '' : '; motifs count from the left'}.`,
  )
  return parts.join(' ')
}

export const HEADINGS = {
  howToRead: 'How to read it',
  joining: 'Joining',
  key: (terms: Terms): string => saying(terms)`Colourways`,
  joins: 'How the motifs meet',
  joinPoints: 'Join points',
  seams: 'Seams',
  marks: 'What the marks mean',
  example: (label: string): string => `Number ${label}, step by step`,
  order: 'Order of work',
  materials: 'Materials',
  progress: 'Progress',
  days: 'Day by day',
  yarn: 'Yarn',
  parts: 'What the yarn is for',
  also: 'What else to know',
  motif: 'The motif',
  motifs: 'The motifs',
  measures: 'Measures',
  rounds: 'Rounds as written',
  cautions: 'Take care',
  notes: 'Notes',
} as const

/** At the head of a sheet, for notes that have pages of their own. */
export const seeNotes = 'The designer’s notes stand on the page “Notes”.'

/** How often a colourway is worked: "× 120", "× 120 and 6 halves", "× 88 fillers". */
export function keyCount({
  count,
  halves,
  fillers,
}: Pick<ColourwayMark, 'count' | 'halves' | 'fillers'>): string {
  if (fillers > 0) return `× ${counted(fillers, 'filler')}`
  const half = counted(halves, 'half', 'halves')
  if (count === 0 && halves > 0) return `× ${half}`
  return `× ${formatNumber(count)}${halves > 0 ? ` and ${half}` : ''}`
}

export const noColourway = (terms: Terms): string => saying(terms)`No colourway`

/** "Middle" within a line: "middle"; names with more capitals stay as they are. */
const small = (text: string): string =>
  text.slice(1) === text.slice(1).toLowerCase() ? text.charAt(0).toLowerCase() + text.slice(1) : text

/** What the part of a motif of one color is called, by the program or by most: beside its yarn it says nothing. */
const ONLY_PART = /^(motif|all)$/i

/** "Brick petals, Straw centre"; "pink: Cream" of a colour that the pattern names; of a motif of one colour "Brick". */
export function slotWords(slots: readonly { slot: string; yarnName: string }[], terms: Terms): string {
  const [first, ...others] = slots
  if (first && ONLY_PART.test(first.slot) && others.length === 0) return first.yarnName
  return slots
    .map(({ slot, yarnName }) => {
      const part = small(partName(slot, terms))
      return isColour(slot) ? `${part}: ${yarnName}` : `${yarnName} ${part}`
    })
    .join(', ')
}

/** Those of some parts whose letter is that of a colourway as well. */
export function colourLetters(
  marks: readonly { readonly code: string; readonly slots: readonly { readonly slot: string }[] }[],
  terms: Terms,
): string[] {
  const codes = new Set(marks.map(({ code }) => code))
  const slots = new Set(marks.flatMap((mark) => mark.slots.map(({ slot }) => slot)))
  return [...slots]
    .filter((slot) => codes.has(LETTERED.exec(slot)?.[1]?.toUpperCase() ?? '\n'))
    .map((slot) => small(colourSpelled(slot, terms)))
}

/** The same below the name of its colourway, which may be that of its yarn. */
export function slotLines(
  { name, slots }: { readonly name: string; readonly slots: readonly { slot: string; yarnName: string }[] },
  terms: Terms,
): string[] {
  const words = slotWords(slots, terms)
  return words.toLowerCase() === name.toLowerCase() ? [] : [words]
}

export const sheetTitle = (number: number, of: number): string => `Sheet ${number} of ${of}`

/** "rows 1–14, motifs 1–20". */
export function sheetRange(
  rows: readonly [number, number] | null,
  places: readonly [number, number] | null,
): string {
  const range = (word: string, span: readonly [number, number]): string =>
    span[0] === span[1] ? `${word} ${span[0]}` : `${word}s ${span[0]}–${span[1]}`
  return [rows && range('row', rows), places && range('motif', places)].filter(Boolean).join(', ')
}

export const sheetAdvice = (overlap: string, terms: Terms): string =>
  saying(
    terms,
  )`Sheets overlap by ${overlap}: cut one of two neighbours along the ticks and lay it on the other.`

/** Cautions that apply, as paragraphs under short headings; they always defer to local rules. */
export function cautions(settled: Settled, terms: Terms): Caution[] {
  const list = KIND_WORDS[layoutKindOf(settled)].cautions(cribWord(terms), settled.forChild)
  if (settled.layout?.kit) list.push({ title: 'Kits', text: SMALL_PARTS })
  if (settled.forChild || settled.layout?.kit) {
    list.push({
      title: 'If you sell what you make',
      text: saying(
        terms,
      )`Check what applies where it is sold: toy safety if a child will play with it, product safety, fibre labelling and care labelling. Including somebody’s pattern needs their permission.`,
    })
  }
  return list
}
