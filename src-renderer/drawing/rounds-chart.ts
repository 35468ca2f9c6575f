/** The symbol chart of a motif for the window: pure, drawn beside it, and small enough for a message. */
import type { Project } from '../../shared-types/project'
import { workedRounds } from '../../src-core/accounts'
import { chartFigures, leftOutWords, segmentFigures } from '../../src-core/figures/chart'
import type { ChartFigure, SegmentFigure } from '../../src-core/figures/chart'
import type { FigureItem } from '../../src-core/figures/figure'
import type { Span } from '../../src-core/notation/tokens'
import { settled } from '../../src-core/settled'
import { pathData } from './figure-data'

/** A stitch that can be pressed. */
export interface ShownMark {
  /** Its worked round, by index. */
  readonly round: number
  /** Its words in the whole text of the rounds. */
  readonly span: Span
  /** The path of its symbol. */
  readonly d: string
}

export interface ShownChart {
  /** mm. */
  readonly width: number
  readonly height: number
  readonly items: readonly FigureItem[]
  /** Numbers of the rounds that it shows. */
  readonly rounds: readonly number[]
  /** Of one repeat: how often it is worked in a round. */
  readonly repeats?: number
  readonly marks: readonly ShownMark[]
}

export interface RoundsChart {
  /** One for most motifs: what is worked behind petals has one of its own. */
  readonly whole: readonly ShownChart[]
  /** One repeat of each, larger; none where nothing repeats. */
  readonly repeats: readonly ShownChart[]
  /** What is said under it of rounds that are not drawn; empty where all are. */
  readonly missing: string
}

/** Room of the drawing in mm; on screen it is scaled to the room that there is. */
const ROOM = 130

/** The chart of a motif's rounds in the hand of its project; null where they have none. */
export function drawRounds(project: Project, motifId: string): RoundsChart | null {
  const facts = settled(project)
  const motif = project.motifs?.find(({ id }) => id === motifId)
  const drawing = motif?.kind === 'rounds' ? workedRounds(facts, motif).drawing() : null
  if (!drawing) return null
  const { located, beginning } = drawing
  const options = { hand: facts.hand, style: 'colour', width: ROOM, height: ROOM } as const
  return {
    whole: chartFigures(located, beginning, options).map(shown),
    repeats: segmentFigures(located, beginning, options).map(shown),
    missing: leftOutWords(drawing.left),
  }
}

const shown = (figure: ChartFigure | SegmentFigure): ShownChart => ({
  width: figure.width,
  height: figure.height,
  items: figure.items,
  rounds: figure.rounds,
  ...('repeats' in figure && { repeats: figure.repeats }),
  marks: figure.marks.map(({ round, element, ink }) => ({
    round: round.round.index,
    span: element.span,
    d: pathData(ink.strokes) + pathData(ink.fills),
  })),
})
