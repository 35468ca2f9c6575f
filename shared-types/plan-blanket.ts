/** What stands in a blanket beside its motifs, and what joining it in the round makes of it. Lengths in mm. */
import type { PlacedMotif, Point } from './plan'
import type { Seam } from './project'

/** A place of a blanket that was left out by hand: where its motif would stand. */
export interface LeftOutPlace {
  /** "row,place" */
  readonly id: string
  readonly x: number
  readonly y: number
}

export interface HoleKind {
  /** How many motifs stand round it. */
  readonly sides: number
  readonly count: number
  /** Radius of the largest circle that fits, in mm. */
  readonly radius: number
}

/** A kind of openings: those between the same motifs that are as large. Lengths in mm. */
export interface OpeningsOfKind {
  /** Ids of the motifs round each, in the order of the blanket's motifs. */
  readonly between: readonly string[]
  /** Among the kinds between the same motifs: 1 the largest. */
  readonly nth: number
  readonly count: number
  /** Of the largest circle that fits. */
  readonly radius: number
  /** Id of the motif that stands in them; null where they stay open. */
  readonly filler: string | null
  /** How it lies in the one that `around` tells of, in degrees clockwise; of several the first. */
  readonly turn: number
  /** Where it stands in that one, about its middle, and how it lies: once, or in each lobe; empty where it stays open. */
  readonly stands: readonly (Point & { readonly turn: number })[]
  /** The motifs round one of them, about its middle. */
  readonly around: readonly (Point & { readonly motif: string; readonly turn: number })[]
}

/** How what stands between and beside the motifs lies, as they do: a half motif as the whole one that it is half of. */
type Laid = Pick<PlacedMotif, 'label' | 'x' | 'y' | 'turn' | 'firstPetal' | 'colourway'>

/** A filler motif in an opening between motifs. Lengths in mm, `x`, `y` from the top left of the finished size. */
export interface PlacedFiller extends Laid {
  /** Its address: the motifs that it is joined to, "1,1+1,2+2,1+2,2". */
  readonly id: string
  /** Id of the motif that it is. */
  readonly motif: string
  /** Of the largest circle that fits there. */
  readonly radius: number
  /** Ids of the placed motifs that it is joined to. */
  readonly motifs: readonly string[]
  /** How often it is joined: once to each of them. */
  readonly joins: number
  /** Where it is joined. */
  readonly points?: readonly Point[]
  /** The widest gap that its joins bridge, and by how much it reaches too far into the motifs round it. */
  readonly bridge: number
  readonly overlap: number
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
export interface PlacedHalf extends Laid {
  /** Its address: "row,left" or "row,right". */
  readonly id: string
  /** At which end of its row it stands. Its cut edge, at `x`, faces that side. */
  readonly side: 'left' | 'right'
  readonly row: number
  /** Id of the motif that it is a half of, in a blanket of several. */
  readonly motif?: string
  /** How many of its places are joined to neighbours. */
  readonly joins: number
  /** Where it is joined, beside the join points that the motifs have of their own. */
  readonly points?: readonly Point[]
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
  /** How far its edges go in and out, of the height told; 0 where they are straight. */
  readonly depth: Readonly<Record<OpenEnd, number>>
}

/** The two ends of what is joined in the round: at row 1, and at the last row. */
export type OpenEnd = 'mouth' | 'bottom'

/** An end that is closed: laid flat, front and back are sewn along their edges. */
export interface ClosedEnd {
  readonly end: OpenEnd
  /** Of the seam, in mm. */
  readonly length: number
  readonly stitches: number
  /** How far the edge goes in and out, in mm; 0 where it is straight. */
  readonly depth: number
  readonly seam: Seam
  /** Id of its yarn, or '' where nobody knows it. */
  readonly yarn: string
  /** Of yarn, with a tail at both ends. */
  readonly metres: number
}
