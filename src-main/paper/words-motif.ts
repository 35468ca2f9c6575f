/** The words of the motif's page. */
import type { MotifAccount, Provenance } from '../../shared-types/plan'
import type { Hand, Motif, RoundsMotif, Terms, UnitSystem } from '../../shared-types/project'
import type { ChartFigure, SegmentFigure } from '../../src-core/figures/chart'
import type { Dimension } from '../../src-core/figures/motif-figure'
import { inSpelling, saying } from '../../src-core/stitches/spelling'
import { partName } from './words-colours'
import { termWord } from '../../src-core/stitches/terms'
import { capital, listed, numeral } from '../../src-core/figures/words'
import { areNeeds } from '../../src-core/motif/instructions'
import { DEFAULT_VALLEY_SHARE } from '../../src-core/motif/constants'
import { readingsOf } from '../../src-core/motif/ruler'
import { asMeasured, formatNumber, lengthsIn } from '../../src-core/units/format'

const from = (gauge: string): Readonly<Record<Provenance, string>> => ({
  measured: 'Measured.',
  'other-hook': 'Measured with another hook; make one with this one and measure it.',
  stated: 'As the pattern states it, not measured yet; make one and measure it.',
  aimed: 'Worked out from what was measured before; make one and measure it.',
  gauge: `Worked out from the ${gauge}.`,
  'rule-of-thumb': `A rule of thumb: there is no ${gauge}.`,
})

export const MOTIF_WORDS = {
  assumed: ' (assumed)',
  lifeSize: 'Drawn at its full size when printed at 100\u00a0%.',
  /** Said of several. */
  lifeSizes: 'Each is drawn at its full size when printed at 100\u00a0%.',
  scaled: (scale: number): string => `Drawn at ${formatNumber(scale * 100)}\u00a0% of its size.`,
  numbering: (
    hand: Hand,
    { shape, spaces }: Pick<MotifAccount, 'shape' | 'spaces'>,
    terms: Terms,
  ): string => {
    const way = hand === 'left' ? 'clockwise' : inSpelling('anticlockwise', terms)
    if (spaces?.marks)
      return `Divide its edge evenly in ${numeral(spaces.count)} with stitch markers before its last round: they are counted in the direction of work, ${way} seen from the right side; mark 1 is where the round begins and ends.`
    const what = spaces ? 'Spaces of the last round' : shape === 'straight' ? 'Corners' : 'Petals'
    if ((shape === 'round' && !spaces) || shape === 'leaf') return `Worked ${way}, seen from the right side.`
    return `${what} are numbered in the direction of work, ${way} seen from the right side; number 1 is where the round begins.`
  },
  /** How a motif lies on the map that is drawn upright here; '' where it lies so. */
  lies: (rotated: number, sector: number, shape: MotifAccount['shape'], isPointed: boolean): string => {
    const ways = shape === 'straight' ? ['a corner', 'a side'] : ['a petal', 'a dip']
    const [drawn, there] = isPointed ? ways : ways.toReversed()
    if (Math.abs(rotated - sector / 2) < 1)
      return `On the map it lies with ${there} at the top, not ${drawn}.`
    const clockwise = rotated < sector / 2
    return `On the map it lies rotated by ${formatNumber(clockwise ? rotated : sector - rotated)}° ${clockwise ? 'to the right' : 'to the left'}.`
  },
  /** Where number 1 is on a map of motifs that are joined as they are made, or sewn. */
  first: (shape: MotifAccount['shape'], joinedAsYouGo: boolean): string =>
    joinedAsYouGo
      ? `On the map each counts from where its own free ${shape === 'straight' ? 'corners' : 'petals'} begin.`
      : `Sewn to others, any ${shape === 'straight' ? 'corner' : 'petal'} of it can be number 1.`,
  range: (provenance: Provenance, low: string, high: string, what: string, terms: Terms): string =>
    `${from(termWord('gauge', terms))[provenance]} The next one may come out ${low} to ${high} ${what}.`,
  /** `written`: the terms of the designer's own words; `kept`: those that the project has them in. */
  rounds: (written: Terms, printed: Terms, kept = written): string =>
    written !== printed
      ? `Rounds in ${printed} terms, translated from ${written}`
      : kept === printed
        ? `Rounds as written, in ${written} terms`
        : `Rounds in ${printed} terms`,
  /** Of a motif that is known by its measures alone. */
  elsewhere: 'Its rounds are not in these pages: work it from the pattern of the motif that was measured.',
  /** Of a motif without a place of its own. */
  beside: (name: string, each: number | null, count: number | null): string =>
    each === null || count === null
      ? `It goes with each ${name}.`
      : `Make ${formatNumber(each)} with each ${name}: ${formatNumber(count)} in all.`,
  foundation: 'Foundation',
  instructions: 'Instructions',
  /** Over what the pattern asks for, where nothing else of it stands there. */
  needs: 'What the pattern asks for',
  abbreviations: 'Abbreviations',
  special: 'Special stitches',
  half: 'Half motif',
  joiningRound: 'Joining round',
  goesOn: (heading: string): string => `${heading}, continued`,
  chart: 'Chart',
  key: 'Key to the chart',
  part: (rounds: readonly number[], onCarriers: boolean, behind: boolean): string => {
    const words =
      rounds.length === 1
        ? `Round ${rounds[0]}`
        : rounds.length === 2
          ? `Rounds ${listed(rounds.map(String))}`
          : `Rounds ${rounds[0]} to ${rounds.at(-1)}`
    const told = behind ? `${words}, worked behind` : words
    return onCarriers ? `${told}. Lighter: the stitches that they are worked into.` : told
  },
  repeat: (repeats: number): string => `One of ${repeats} repeats, larger. `,
  chartAdvice: (hand: Hand, terms: Terms): string =>
    `Read from the middle outward, ${hand === 'left' ? 'clockwise' : inSpelling('anticlockwise', terms)}. The number of a round stands where it begins.`,
  leafAdvice: 'Read around the foundation chain, from the number and with the arrow.',
  colours: (slots: readonly string[], terms: Terms): string =>
    slots.length < 2
      ? ''
      : saying(
          terms,
        )`Colours from the middle outward: ${listed(slots.map((slot) => partName(slot, terms)))}.`,
  round: (number: number): string => `Round ${number}`,
  afterBlocking: 'After blocking',
  beforeBlocking: 'Before blocking',
} as const

/** The heading over the designer's lines. */
export const instructionsHeading = (lines: readonly string[]): string =>
  areNeeds(lines) ? MOTIF_WORDS.needs : MOTIF_WORDS.instructions

/** The heading over rounds that are printed: a page in other terms was put into those of the project. */
export const roundsHeading = (motif: RoundsMotif, kept: Terms, printed: Terms): string =>
  MOTIF_WORDS.rounds(motif.page?.terms ?? kept, printed, kept)

/** What a drawing of the chart shows. */
export function partWords(figure: ChartFigure | SegmentFigure): string {
  const { rounds, carriers, marks } = figure
  const behind = marks.some((mark) => mark.element.behind)
  const part = MOTIF_WORDS.part(rounds, carriers.length > 0, behind)
  return 'repeats' in figure ? MOTIF_WORDS.repeat(figure.repeats) + part : part
}

/** The measure as it was typed, under the name that a dimension has in the file. */
function typed(source: Motif | undefined, { words, reading }: Dimension): number | undefined {
  if (!source) return undefined
  const measures = source.kind === 'measured' ? source : source.measured
  if (!measures) return undefined
  if (reading) {
    const { overTips, overValleys } = measures
    if (overTips === undefined) return undefined
    return readingsOf(reading.laying, { overTips, overValleys }, DEFAULT_VALLEY_SHARE)[reading.part]
  }
  const names: Readonly<Record<string, number | undefined>> = {
    across: measures.across,
    'side to side': measures.sideToSide,
    'point to point': measures.pointToPoint,
    width: measures.width,
    length: measures.length,
    height: measures.length,
  }
  return names[words]
}

/** A measure: its name, its value in the chosen units, and in the others. */
type MeasureRow = readonly [label: string, value: string, other: string]

interface MeasureBlock {
  /** "Before blocking", "After blocking", or nothing where it was not said. */
  readonly heading: string
  readonly rows: readonly MeasureRow[]
}

/** The measures before and after blocking, as far as they are known. */
export function measureBlocks(
  source: Motif | undefined,
  dimensions: readonly Dimension[],
  units: UnitSystem,
): MeasureBlock[] {
  const blocked = source?.kind === 'measured' ? source.blocked : source?.measured?.blocked
  const other = units === 'metric' ? 'imperial' : 'metric'
  const lengths = dimensions.map(({ length }) => length)
  const [own, others] = [lengthsIn(units, lengths), lengthsIn(other, lengths)]
  const row = (label: string, mm: number): MeasureRow => {
    const [told, inOthers] = units === 'metric' ? [asMeasured(mm), mm] : [mm, asMeasured(mm)]
    return [label, own(told), others(inOthers)]
  }
  const outermost = [...dimensions].reverse()
  // Of a flower that was measured over its tips alone the dips follow from the usual share.
  const isAssumed = ({ length }: Dimension) =>
    source?.kind === 'measured' &&
    source.outline === 'petals' &&
    source.overValleys === undefined &&
    length === Math.min(...lengths)
  const after = outermost.map((each) =>
    row(`${capital(each.words)}${isAssumed(each) ? MOTIF_WORDS.assumed : ''}`, each.length),
  )
  if (blocked === undefined) return [{ heading: '', rows: after }]
  const blocks: MeasureBlock[] = [{ heading: MOTIF_WORDS.afterBlocking, rows: after }]
  if (blocked) return blocks
  const before = outermost.flatMap((dimension) => {
    const mm = typed(source, dimension)
    return mm === undefined ? [] : [row(capital(dimension.words), mm)]
  })
  return [{ heading: MOTIF_WORDS.beforeBlocking, rows: before }, ...blocks]
}
