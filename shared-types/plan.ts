/**
 * What the engine answers. Lengths in mm, masses in g, yarn lengths in m, angles in degrees, time in minutes.
 * The fields that `docs/command-line.md` lists are a contract; more may be added.
 */
import type { Finding } from './finding'
import type { CodePointRanges } from './fonts'
import type { AppliqueFields } from './plan-applique'
import type {
  ClosedEnd,
  FillerStep,
  HoleKind,
  OpeningsOfKind,
  LeftOutPlace,
  PlacedFiller,
  PlacedHalf,
  RoundAccount,
} from './plan-blanket'
import type { GarlandFields, KitAccount } from './plan-garland'
import type { EdgingAccount, LeavingOrder, TimeParts, YarnForMotifs, YarnNeed } from './plan-materials'
import type { MotifAccount, MotifBeside } from './plan-motif'
import type { Marks, Progress } from './plan-progress'
import type { AlternateRows, Arrangement } from './project'
import type { Settled } from './settled'

export type * from './plan-applique'
export type * from './plan-blanket'
export type * from './plan-garland'
export type * from './plan-materials'
export type * from './plan-motif'
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
  /** Chains that the two are joined across by a rule of their own; left out where all like them are joined so. */
  readonly chains?: number
  /** Of a filler: the side at whose middle this is, is joined all along. */
  readonly along?: true
}

/** What a placed piece of a blanket is. */
export type PieceKind = 'motif' | 'filler' | 'half'

export interface OrderStep {
  readonly kind: PieceKind
  /** Id of the placed motif, of the filler or of the half motif. */
  readonly motif: string
  /** Anchors worked without joining, in working direction from the motif's own start (its `firstPetal`). */
  readonly free: readonly string[]
  readonly joins: readonly OrderJoin[]
  /** The whole step in words, without the motif's own number. */
  readonly words: string
  /** The same with each working number in braces, “{12}”: alike for steps that differ in their numbers alone. */
  readonly pattern: string
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

/** How what is made hangs together. It holds in one piece, with no motif on a single join point. */
export interface Holds {
  /** Separate pieces; 1 hangs together, 0 where nothing is placed. */
  readonly pieces: number
  /** Motifs that hang on a single join point. */
  readonly single: number
}

/** Join points with a gap that does not close by itself: how many of all there are, the widest, and what closes, in mm. */
export interface WideGaps {
  readonly joins: number
  readonly of: number
  readonly widest: number
  readonly closes: number
}

/** Join points at which a motif lies between two of its spaces, and how many there are of all. */
export interface BetweenSpaces {
  readonly joins: number
  readonly of: number
}

/** Sides that are sewn to others, or joined to them stitch for stitch: how many, how long and of how many stitches together. */
export interface JoinedSides {
  readonly count: number
  readonly length: number
  readonly stitches: number
  /** Of these sides, those whose stitches the last round of a motif counts; the others are told by their length. */
  readonly counted: number
  /** Stitches of each, where all have as many; else null. */
  readonly each: number | null
  /** Of the join points that are counted, those that lie on them and are no joins by themselves. */
  readonly points: number
}

/** What every plan has, whatever is planned; lists of what a kind of layout does not have are empty. */
export interface CommonPlan extends Holds {
  /** What it is the plan of, with every default that it was made with. */
  readonly settled: Settled
  /** What those fonts cover that were chosen for other scripts; none unless told. */
  readonly covered?: readonly CodePointRanges[]
  readonly size: PlanSize
  /** `motifs` and `byColourway` count whole motifs; fillers and half motifs stand beside them. */
  readonly counts: {
    readonly motifs: number
    readonly byColourway: Readonly<Record<string, number>>
    readonly fillers?: number
    readonly halves?: number
    /** Of a blanket: the places at which something is joined, those of fillers and half motifs too. */
    readonly joins?: number
    /** What is joined along whole sides; left out where nothing is. */
    readonly sides?: JoinedSides
    /** Of these between motifs, those whose gap is wider than what closes by itself; left out where none is. */
    readonly wide?: WideGaps
    /** Of these between motifs, those at which one lies between two of its spaces; left out where none does. */
    readonly between?: BetweenSpaces
  }
  readonly pitch: { readonly column: number; readonly row: number; readonly rows: readonly [number, number] }
  readonly arrangement: Arrangement | null
  readonly motifs: readonly PlacedMotif[]
  readonly joins: readonly JoinNode[]
  readonly order: readonly OrderStep[]
  readonly holes: readonly HoleKind[]
  /** For a child: how wide across the widest opening is that no filler closes, in mm; 0 where none stays. */
  readonly opening?: number
  /** The openings between three or more motifs by kind, the largest first, whether fillers stand in them or not. */
  readonly openings: readonly OpeningsOfKind[]
  readonly fillers: readonly PlacedFiller[]
  /** How the fillers are worked, in working order. */
  readonly fillerSteps: readonly FillerStep[]
  readonly halves: readonly PlacedHalf[]
  /** Places of a blanket that were left out by hand; absent where none was. */
  readonly leftOut?: readonly LeftOutPlace[]
  readonly edging: EdgingAccount | null
  /** Left out where nothing is joined in the round. */
  readonly round?: RoundAccount
  /** The ends of it that are closed at last, in the order in which they are; left out where none is. */
  readonly closed?: readonly ClosedEnd[]
  /**
   * The closed lines that the edging runs along, one where the blanket hangs together: the edge, from tip to tip,
   * or the hull, as its style wants; one round each hole that was left, running the other way. In the round, the open
   * lines along both ends, from where it closes. In mm from the top left of the finished size.
   */
  readonly edgingLines: readonly (readonly Point[])[]
  /** The dips that a levelling edging fills, each as the edge runs from tip to tip; left out where there are none. */
  readonly edgingDips?: readonly (readonly Point[])[]
  readonly yarns: readonly YarnNeed[]
  readonly ends: number
  readonly minutes: Range | null
  /** What those are made of; left out where they are not known. */
  readonly time?: TimeParts
  readonly findings: readonly Finding[]
  /**
   * Account of the motif that a blanket is made of, of several the first, or null. The places of a round motif are
   * those where its neighbours touch.
   */
  readonly motif: MotifAccount | null
  /** Accounts of the motifs that fill openings; none without fillers. */
  readonly fillerMotifs: readonly MotifAccount[]
  /** Accounts of the motifs of a layout that places several; none of a blanket of one motif. */
  readonly accounts: readonly MotifAccount[]
  /** Motifs that go with those that are placed; left out where none does. */
  readonly beside?: readonly MotifBeside[]
  /** Left out where nothing is sold as a kit. */
  readonly kit?: KitAccount
  /** Motifs that leave the pattern so that limits are kept. */
  readonly leaving?: LeavingOrder
  /** How far the work has come. */
  readonly progress: Progress
  /** Which pieces that is. */
  readonly marks: Marks
}

/** None of the fields of other kinds: who has not asked for the kind finds nothing there. */
type Without<Fields> = { readonly [Name in keyof Fields]?: undefined }

/** The plan of a blanket, and of a project that has no layout yet. */
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

/** What stops the largest arrangement from the yarn on hand from being larger. */
export interface FitStops {
  /** What one more row, or ring, would need: its motifs, and grams of yarns that are missing for it. */
  readonly next?: {
    readonly of: 'row' | 'ring'
    readonly motifs: number
    readonly missing: readonly { readonly id: string; readonly grams: number }[]
  }
  /** Rules of the colours that cost motifs, and how many more there were without each: told of the first alone. */
  readonly rules: readonly { readonly rule: 'apart' | 'limits' | 'symmetry'; readonly motifs: number }[]
}

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
  | 'opening'
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
  /** The shape that it is cut out in, as large as it is then; left out where nothing is cut out. */
  readonly outline?: { readonly size?: number; readonly height?: number }
  /** How many motifs stand in each row of what is cut out, from the top. */
  readonly lengths?: readonly number[]
  readonly size: { readonly width: number; readonly height: number }
  /** Size minus wish, in mm. */
  readonly error: { readonly width: number; readonly height: number }
  readonly motifs: number
  /** The places at which something is joined. */
  readonly joins?: number
  /** Join points whose gap is wider than what closes by itself; left out where none is. */
  readonly wide?: WideGaps
  /** Join points at which a motif lies between two of its spaces: joined across a chain; left out where none is. */
  readonly between?: BetweenSpaces
  /** For a child: how wide across the widest opening is that stays, in mm. */
  readonly opening?: number
  /** Of motifs with straight sides: how wide across the openings are that it leaves between them, in mm; left out where they close. */
  readonly leaves?: number
  /** `assumed`: the grams follow from a ball band that nobody entered. */
  readonly yarns: readonly { readonly id: string; readonly grams: number; readonly assumed?: true }[]
  /** Counted with colours that stay within the yarn on hand, which the project does not ask for: to be taken with it. */
  readonly withinStash?: true
  /** From the yarn on hand: what stops it from being larger. */
  readonly stops?: FitStops
  /** Motifs that are left over, of so many that there are. */
  readonly left?: number
  /** Of motifs that are made already, by colourway: how many of each it takes, and how many beyond those that there are. */
  readonly byColourway?: Readonly<Record<string, number>>
  readonly beyond?: number
  /** Motifs more than were asked for; fewer where it is below zero. */
  readonly more?: number
}
