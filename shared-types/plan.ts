/**
 * What the engine answers. Lengths in mm, masses in g, yarn lengths in m, angles in degrees, time in minutes.
 * The fields that `docs/command-line.md` lists are a contract; more may be added.
 */
import type { Finding } from './finding'
import type { AppliqueFields } from './plan-applique'
import type { GarlandFields, KitAccount } from './plan-garland'
import type { Marks, Progress } from './plan-progress'
import type { AlternateRows, Arrangement, Ruler } from './project'
import type { Settled } from './settled'

export type * from './plan-applique'
export type * from './plan-garland'
export type * from './plan-progress'

export interface Point {
  readonly x: number
  readonly y: number
}

export interface Range {
  readonly low: number
  readonly expected: number
  readonly high: number
}

/** Where an estimate comes from. */
export type Provenance = 'measured' | 'gauge' | 'rule-of-thumb'

export type AnchorKind = 'tip' | 'shoulder' | 'valley' | 'corner' | 'side'

/** A place on a motif where a join can be made, about the motif's centre, before its turn. */
export interface Anchor {
  readonly id: string
  readonly kind: AnchorKind
  /** Number of the petal, corner or side, in working direction from 12 o'clock, from 1. */
  readonly petal: number
  readonly x: number
  readonly y: number
  /** Unit vector away from the motif. */
  readonly outward: Point
  /** The address in words: "petal 3", "between petals 2 and 3", "corner 1". */
  readonly address: string
}

export interface MeasuredRound {
  readonly number: number
  readonly outerRadius: number
  readonly stitches: number
  readonly flatness: number
  /** How it lies (M17); null for rounds that are not judged: the first two, petals, open loops. */
  readonly lies: Lie | null
}

export type Lie = 'flat' | 'may-cup' | 'cups' | 'may-ruffle' | 'ruffles'

/** The account of one motif. `outline` is closed, clockwise on screen (y down), about the centre, unturned. */
export interface MotifAccount {
  readonly id: string
  readonly name: string
  readonly shape: 'petals' | 'round' | 'straight' | 'leaf'
  /** Petals, or corners of a straight-sided motif; 0 for a round. */
  readonly petals: number
  /** Diameter through tips (corners), and through valleys (side to side). */
  readonly overTips: number
  readonly overValleys: number
  /** How a flower with an odd number of petals was measured; absent where nobody said it. */
  readonly ruler?: Ruler
  readonly range: { readonly low: number; readonly high: number }
  readonly provenance: Provenance
  readonly rounds: readonly MeasuredRound[]
  /** slot → stitch → count; empty for a measured motif. */
  readonly stitches: Readonly<Record<string, Readonly<Record<string, number>>>>
  /** slot → metres in one motif, where it is known. */
  readonly metres: Readonly<Record<string, number>>
  readonly outline: readonly Point[]
  readonly anchors: readonly Anchor[]
  /** Colour sections for drawing, the outermost (the outline) first: each covers the middle of the one before. */
  readonly layers: readonly MotifLayer[]
  readonly findings: readonly Finding[]
}

export interface MotifLayer {
  readonly slot: string
  readonly outline: readonly Point[]
}

export interface PlacedMotif {
  /** "row,place": the key that painted cells and orders use. */
  readonly id: string
  /** Working number, from 1. */
  readonly label: string
  readonly row: number
  readonly column: number
  /** Centre from the top left of the finished size. */
  readonly x: number
  readonly y: number
  /** Degrees clockwise. */
  readonly turn: number
  /** Id of the colourway, or '' where none is given. */
  readonly colourway: string
  /** Id of the motif, in a layout that places several. */
  readonly motif?: string
  /** Lies with the wrong side up: its outline is mirrored left to right before it is turned. */
  readonly flipped?: boolean
  /**
   * The petal (corner) of its account that the hand works first on it: words and pictures count from there.
   * Left out where nothing is worked in an order: petal 1.
   */
  readonly firstPetal?: number
}

export interface JoinMember {
  readonly motif: string
  readonly anchor: string
}

/** A meeting point. `x`, `y` from the top left of the finished size. */
export interface JoinNode {
  readonly x: number
  readonly y: number
  /** Largest distance between two members: the gap to bridge. */
  readonly spread: number
  /** Placed motif that was there first: everyone later joins into its space. */
  readonly host: string
  readonly members: readonly JoinMember[]
  /** The gap is wider than what stretches without harm; left out where it is not. */
  readonly stretched?: true
  /** Joins the last motif of a row to the first: it lies at the first, and once round from there at the last. */
  readonly wraps?: true
}

export interface OrderJoin {
  /** Anchor of the motif in hand. */
  readonly anchor: string
  readonly with: readonly JoinMember[]
  /** One instruction that a hand can follow. */
  readonly words: string
}

export interface OrderStep {
  readonly kind: PieceKind
  /** Id of the placed motif, of the filler or of the half motif. */
  readonly motif: string
  /** Anchors worked without joining, in working direction from the motif's own start (its `firstPetal`). */
  readonly free: readonly string[]
  readonly joins: readonly OrderJoin[]
  /** The whole step in words, without the motif's own number. */
  readonly words: string
}

/** How one weight of a motif was split over its colours where nobody split it: each part is ±25 %. */
export type WeightSplit = 'stitches' | 'areas' | 'evenly'

/** Numbers of a yarn that may follow from a ball band which nobody entered. */
export type YarnNumber = 'grams' | 'metres' | 'balls' | 'onHand' | 'toBuy' | 'leftover' | 'cost'

export interface YarnNeed {
  readonly id: string
  readonly grams: Range
  readonly metres: Range | null
  /** Whole balls for the whole need; null where the ball's weight is unknown. */
  readonly balls: number | null
  /** Grams on hand in all, whether they were weighed or counted in balls. */
  readonly onHand: number
  /** Whole balls to buy after the stash. */
  readonly toBuy: number | null
  /** Grams expected to be left of what is on hand and bought. */
  readonly leftover: number | null
  /** Cost of what is to be bought; null where there is no price. */
  readonly cost: number | null
  /** What the expected grams are made of. */
  readonly parts: {
    readonly motifs: number
    readonly joins: number
    readonly edging: number
    readonly tails: number
    readonly waste: number
    /** The cord of a garland; only there where one is worked. */
    readonly cord?: number
  }
  /** Where a part of it comes from a weight that was split: what it was split by. */
  readonly split?: readonly WeightSplit[]
  /** The numbers that follow from a ball band which nobody entered; left out where there are none. */
  readonly assumed?: readonly YarnNumber[]
}

export interface EdgingRound {
  /** The stitch as written in the project's terms. */
  readonly stitch: string
  readonly stitches: number
  readonly chains: number
  readonly length: number
  readonly metres: number
}

export interface EdgingAccount {
  readonly style: string
  /** Closed length of the line that it runs along, in mm before blocking; its lines are the plan's `edgingLines`. */
  readonly length: number
  readonly height: number
  readonly rounds: readonly EdgingRound[]
  readonly yarn: string
}

export interface HoleKind {
  /** How many motifs stand round it. */
  readonly sides: number
  readonly count: number
  /** Radius of the largest circle that fits, in mm. */
  readonly radius: number
}

/** What a placed piece of a blanket is. */
export type PieceKind = 'motif' | 'filler' | 'half'

/** A filler motif in an opening between motifs. Lengths in mm, `x`, `y` from the top left of the finished size. */
export interface PlacedFiller {
  /** Its address: the motifs round it, "1,1+1,2+2,1+2,2". */
  readonly id: string
  /** Working number: those of fillers and half motifs follow those of the motifs. */
  readonly label: string
  readonly x: number
  readonly y: number
  /** Degrees clockwise. */
  readonly turn: number
  /** The petal (side) of its account that the hand joins first. */
  readonly firstPetal?: number
  /** Of the largest circle that fits the opening. */
  readonly radius: number
  /** Ids of the placed motifs round it. */
  readonly motifs: readonly string[]
  /** How often it is joined: once to each motif round it. */
  readonly joins: number
  /** Where it is joined. */
  readonly points?: readonly Point[]
  /** The widest gap that its joins bridge, and by how much it reaches too far into the motifs round it. */
  readonly bridge: number
  readonly overlap: number
  /** Id of the colourway, or '' where none is given. */
  readonly colourway: string
}

export interface FillerStep {
  /** Index in `fillers`. */
  readonly filler: number
  /** Placed motif after which it is worked: the last one of those round it. */
  readonly after: string
  readonly joins: readonly { readonly motif: string; readonly words: string }[]
  /** "filler between 14, 15, 27 and 28: join at …". */
  readonly words: string
}

/** A half motif at the end of a row: of a whole motif with its centre at `x`, `y` the part away from the side edge. */
export interface PlacedHalf {
  /** Its address: "row,left" or "row,right". */
  readonly id: string
  readonly label: string
  readonly x: number
  readonly y: number
  /** Degrees clockwise, of the whole motif that it is a half of. */
  readonly turn: number
  /** The petal (corner) of its account that the hand works first on it: the one next to its cut. */
  readonly firstPetal?: number
  /** At which end of its row it stands. Its cut edge, at `x`, faces that side. */
  readonly side: 'left' | 'right'
  readonly row: number
  /** Id of the motif that it is a half of, in a blanket of several. */
  readonly motif?: string
  /** How many of its places are joined to neighbours. */
  readonly joins: number
  /** Where it is joined, beside the join points that the motifs have of their own. */
  readonly points?: readonly Point[]
  readonly colourway: string
}

export interface PlanSize {
  readonly width: number
  readonly height: number
  /** Change of width and height when every motif grows by `step` mm. */
  readonly sensitivity: { readonly step: number; readonly width: number; readonly height: number }
  readonly range: {
    readonly low: { readonly width: number; readonly height: number }
    readonly high: { readonly width: number; readonly height: number }
  }
}

/** What is joined in the round, in mm: its size is as wide as once round it. */
export interface RoundAccount {
  /** Once round an open end; laid flat it is half as wide. */
  readonly circumference: number
  readonly flat: number
  /** How wide its map is: opened out, from the first motif to the last. */
  readonly map: number
  /** Join points at which rows close. */
  readonly joins: number
}

/** How what is made hangs together. It holds in one piece, with no motif on a single join point. */
export interface Holds {
  /** Separate pieces; 1 hangs together, 0 where nothing is placed. */
  readonly pieces: number
  /** Motifs that hang on a single join point. */
  readonly single: number
}

/** What every plan has, whatever is planned; lists of what a kind of layout does not have are empty. */
export interface CommonPlan extends Holds {
  /** What it is the plan of, with every default that it was made with. */
  readonly settled: Settled
  readonly size: PlanSize
  /** `motifs` and `byColourway` count whole motifs; fillers and half motifs stand beside them. */
  readonly counts: {
    readonly motifs: number
    readonly byColourway: Readonly<Record<string, number>>
    readonly fillers?: number
    readonly halves?: number
    /** Of a blanket: the places at which something is joined, those of fillers and half motifs too. */
    readonly joins?: number
  }
  readonly pitch: { readonly column: number; readonly row: number; readonly rows: readonly [number, number] }
  readonly arrangement: Arrangement | null
  readonly motifs: readonly PlacedMotif[]
  readonly joins: readonly JoinNode[]
  readonly order: readonly OrderStep[]
  readonly holes: readonly HoleKind[]
  readonly fillers: readonly PlacedFiller[]
  /** How the fillers are worked, in working order. */
  readonly fillerSteps: readonly FillerStep[]
  readonly halves: readonly PlacedHalf[]
  readonly edging: EdgingAccount | null
  /** Left out where nothing is joined in the round. */
  readonly round?: RoundAccount
  /**
   * The closed lines that the edging runs along, one where the blanket hangs together: the edge, from tip to tip,
   * or the hull, as its style wants; one round each hole that was left, running the other way. In the round, the open
   * lines along both ends, from where it closes. In mm from the top left of the finished size.
   */
  readonly edgingLines: readonly (readonly Point[])[]
  readonly yarns: readonly YarnNeed[]
  readonly ends: number
  readonly minutes: Range | null
  readonly findings: readonly Finding[]
  /**
   * Account of the motif that a blanket is made of, of several the first, or null. The places of a round motif are
   * those where its neighbours touch.
   */
  readonly motif: MotifAccount | null
  /** Account of the motif that fills the openings; null without fillers. */
  readonly fillerMotif: MotifAccount | null
  /** Accounts of the motifs of a layout that places several; none of a blanket of one motif. */
  readonly accounts: readonly MotifAccount[]
  /** Left out where nothing is sold as a kit. */
  readonly kit?: KitAccount
  /** How far the work has come. */
  readonly progress: Progress
  /** Which pieces that is. */
  readonly marks: Marks
}

/** None of the fields of other kinds: who has not asked for the kind finds nothing there. */
type Without<Fields> = { readonly [Name in keyof Fields]?: undefined }

/** The plan of a blanket, and of a project that has no layout yet. */
/** A yarn of which the motifs may take so much and no more. */
export interface YarnForMotifs {
  readonly id: string
  readonly name: string
  /** Grams that joins, edging, fillers and half motifs leave of what there is. */
  readonly left: number
  /** Grams that one motif takes of it by colourway: with the allowance, and as the high value of its range. */
  readonly each: Readonly<Record<string, number>>
  /** What is left hangs on the colours too (half motifs, another motif, joins): no filling can be ruled out by it. */
  readonly isShared?: true
}

export interface BlanketPlan extends CommonPlan, Without<GarlandFields>, Without<AppliqueFields> {
  readonly kind: 'blanket'
  /** What there is of yarns with a limit, where the colours had to be chosen by it. */
  readonly stash?: readonly YarnForMotifs[]
}

export interface GarlandPlan extends CommonPlan, GarlandFields, Without<AppliqueFields> {
  readonly kind: 'garland'
}

export interface AppliquePlan extends CommonPlan, AppliqueFields, Without<GarlandFields> {
  readonly kind: 'applique'
}

export type Plan = BlanketPlan | GarlandPlan | AppliquePlan

/**
 * What a plan comes to, without what is drawn and told of each motif: it is known earlier, and light to send.
 * Every plan is one.
 */
export type PlanNumbers = NumbersOf<Plan>

type NumbersOf<Own extends Plan> = Own extends Plan
  ? Pick<Own, NumberField> & { readonly motifs: { readonly length: number } }
  : never

type NumberField =
  | 'kind'
  | 'size'
  | 'counts'
  | 'pieces'
  | 'single'
  | 'yarns'
  | 'ends'
  | 'minutes'
  | 'kit'
  | 'progress'
  | 'garland'
  | 'clearances'
  | 'stitching'

export interface FitArrangement extends Holds {
  readonly arrangement: Arrangement
  readonly columns: number
  readonly rows: number
  readonly rings: number
  readonly alternateRows: AlternateRows
  /** Degrees clockwise: every motif, and what is added on rows 2, 4, 6…. */
  readonly turn: number
  readonly alternateTurn: number
  readonly size: { readonly width: number; readonly height: number }
  /** Size minus wish, in mm. */
  readonly error: { readonly width: number; readonly height: number }
  readonly motifs: number
  /** `assumed`: the grams follow from a ball band that nobody entered. */
  readonly yarns: readonly { readonly id: string; readonly grams: number; readonly assumed?: true }[]
  /** Motifs that are left over, of so many that there are. */
  readonly left?: number
}
