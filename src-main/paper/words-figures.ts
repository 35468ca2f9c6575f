/** What is read aloud in the place of a drawing: what it shows that the words around it do not say. */
import type { GarlandAccount, Plan } from '../../shared-types/plan'
import type { Terms } from '../../shared-types/project'
import type { ChartFigure, SegmentFigure } from '../../src-core/figures/chart'
import type { JoinWay } from '../../src-core/figures/order-list'
import { counted, plural } from '../../src-core/figures/words'
import { saying } from '../../src-core/stitches/spelling'
import { neighboursWords, wayName } from './words-order'

/** "120 motifs in 10 rows, 22 half motifs and 99 fillers". */
function piecesOf({ motifs, halves, fillers }: Plan): string {
  const rows = new Set(motifs.map(({ row }) => row)).size
  const added = [
    ...(halves.length > 0 ? [counted(halves.length, 'half motif')] : []),
    ...(fillers.length > 0 ? [counted(fillers.length, 'filler')] : []),
  ]
  const placed = `${counted(motifs.length, 'motif')}${rows > 1 ? ` in ${counted(rows, 'row')}` : ''}`
  return [placed, ...added].join(', ')
}

export const FIGURE_WORDS = {
  /** The map of everything; `numbered` where its numbers can be read. */
  map: (plan: Plan, numbered: boolean, terms: Terms): string =>
    `Map of the whole: ${piecesOf(plan)}. ${
      numbered
        ? saying(terms)`Each has its number in the order of work and the letter of its colourway.`
        : 'The order of work says the same in words.'
    }`,
  /** Where a sheet lies on the whole map. */
  keyMap: 'The whole map with this sheet marked on it',
  sheet: (title: string, range: string): string => `${title} of the map: ${range}`,
  whole: (sentence: string): string => `Picture of the finished work. ${sentence}`,
  logo: (name: string): string => (name.trim() === '' ? 'Logo' : `Logo of ${name.trim()}`),
  swatch: (name: string, terms: Terms): string =>
    name === '' ? 'The motif' : saying(terms)`The motif in colourway ${name}`,
  motif: (name: string): string => `${name} drawn with its measures, as in the table`,
  chart: (figure: ChartFigure | SegmentFigure, terms: Terms): string => {
    const rounds = `${plural(figure.rounds.length, 'round')} ${span(figure.rounds)}`
    const what = 'repeats' in figure ? `one of ${figure.repeats} repeats of ${rounds}` : rounds
    return saying(terms)`Symbol chart of ${what}, as written in words`
  },
  chartKey: (entries: readonly string[]): string => `Key of the symbols: ${entries.join('; ')}`,
  joins: (label: string): string =>
    `Motif ${label} with those around it, enlarged, with the marks of their join points`,
  joinLegend: (words: readonly string[]): string => `Marks of the drawing: ${words.join('; ')}`,
  way: (way: JoinWay): string => `${wayName(way)} drawn with those that it joins: ${neighboursWords(way)}`,
  edge: 'The edge with its corners numbered',
  garland: (garland: GarlandAccount): string =>
    `The whole garland with ${counted(garland.items.length, 'thing')} along its cord`,
  garlandPart: 'A part of the garland, enlarged and numbered along the cord',
  panel: (plan: Plan): string => `The panel with ${counted(plan.motifs.length, 'motif')} in their places`,
  template: (plan: Plan, sheets: number): string =>
    `The panel with ${counted(plan.motifs.length, 'motif')} and the frames of ${counted(sheets, 'sheet')}`,
  window: (name: string): string => `Window ${name} of the template, full size, with the outlines to mark`,
  templateKey: (names: string): string => `The panel with window ${names} marked on it`,
  square: (side: string): string => `Test square: ${side} on each side`,
} as const

/** "1–4", "7". */
const span = (numbers: readonly number[]): string =>
  numbers.length < 2 ? numbers.join('') : `${Math.min(...numbers)}–${Math.max(...numbers)}`
