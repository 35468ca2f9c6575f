import type { Finding } from '../../shared-types/finding'
import type {
  ClosedEnd,
  EdgingAccount,
  MotifAccount,
  MotifBeside,
  Range,
  YarnNeed,
  TimeParts,
} from '../../shared-types/plan'
import type { BlanketLayout, Motif, Project } from '../../shared-types/project'
import type { Settled } from '../../shared-types/settled'
import type { Border } from '../edging/border'
import type { ResolvedGauge } from '../stitches/gauge'
import type { Millimetres } from '../units/quantity'
import type { GoesWith } from './beside'
import type { Closing } from './closing'
import type { EdgingBase } from './edging'
import type { YarnUse } from './ledger'

/** How often one motif is made, in all and by colourway ('' = none chosen). */
export interface MotifCounts {
  readonly motifs: number
  readonly byColourway: Readonly<Record<string, number>>
}

/** A motif that is made several times: the layout's own, its fillers, the items of a garland. */
export interface Piece {
  readonly motif: Motif
  readonly account: MotifAccount | null
  readonly counts: MotifCounts
  /** Yarn and time of one, as a share of a whole motif; 1 where it is left out. */
  readonly share?: number
}

/** Work besides motifs, joins and edging: the cord of a garland, and fastening things to it. */
export interface OtherWork {
  readonly use: YarnUse
  readonly yarn: string
  /** Length of yarn in it, without tails. */
  readonly millimetres: Millimetres
  /** Tails, each an end to weave in. */
  readonly tails: number
  /** Loops of yarn: what its time is reckoned by. */
  readonly loops: number
}

/** What is counted with, whatever is made: the yarns, who wears which, and what is allowed for. */
export type Basis = Readonly<Pick<Settled, 'yarns' | 'colourways' | 'allowance' | 'units' | 'terms'>>

/** Joins that are worked with so many joining chains each. */
export interface Bridges {
  readonly chains: number
  readonly operations: number
}

/** Whole sides that are joined: how many, the joins at points that they close, and the stitches in them. */
export interface Stitched {
  readonly count: number
  readonly joins: number
  readonly stitches: number
}

/** Geometry that is already known; this room only counts. Lengths in mm. */
export interface MaterialsInput {
  readonly basis: Basis
  /** How motifs are joined to each other, and how long one join takes. */
  readonly joining: Project['joining']
  /** The edging that is asked for, worked along `edgingBase`. */
  readonly edging?: BlanketLayout['edging']
  readonly motif: Motif | null
  readonly account: MotifAccount | null
  /** The gauge that joins and edging are worked in. */
  readonly gauge: ResolvedGauge
  readonly counts: MotifCounts
  /** Other motifs than the layout's own. */
  readonly others?: readonly Piece[]
  /** Motifs that go with some of these, and have no place of their own. */
  readonly beside?: readonly GoesWith[]
  /** Slip stitches into a neighbour: the sum over all meeting points of members − 1. */
  readonly joinOperations: number
  /** Of these, those beyond the first at their join point: where three meet, they are one join by its time. */
  readonly joinsAgain?: number
  /** Of these, those that are worked with joining chains. */
  readonly bridges?: readonly Bridges[]
  /** Slip stitches that hang fillers in: they cost time and no yarn of their own. */
  readonly fillerJoins?: number
  /** Of all these, the joins that run along whole sides, whose time goes by their stitches: sewn, and those of fillers. */
  readonly sides?: { readonly seams: Stitched; readonly along: Stitched }
  /** All seams together, and how many pieces of yarn they are sewn with. */
  readonly seams: { readonly length: Millimetres; readonly count: number }
  /** The line that the chosen edging style runs along, or null without an edging. */
  readonly edgingBase: EdgingBase | null
  /** Its written rounds, worked along that line. */
  readonly border?: Border | null
  readonly works?: readonly OtherWork[]
  /** Ends of a round that are closed once all else is done. */
  readonly closings?: readonly Closing[]
  /**
   * How often its own motif is made by colourway as far as the yarn of joins and edging goes, where that is not `counts`:
   * of a part of a work the whole of it, of a pattern within limits the pattern.
   */
  readonly whole?: MotifCounts
  /** Motifs and half motifs that join; left out: all but the first. */
  readonly joiners?: number
}

export interface Materials {
  readonly yarns: YarnNeed[]
  readonly edging: EdgingAccount | null
  readonly ends: number
  readonly minutes: Range | null
  readonly time?: TimeParts
  readonly closed?: readonly ClosedEnd[]
  readonly beside?: readonly MotifBeside[]
  readonly findings: Finding[]
}
