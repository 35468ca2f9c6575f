/** How far a work has come: what is made, what is left, and how far the yarn goes that was weighed again. */
import type { Range, YarnNeed } from './plan'

/** What one yarn still has to give. */
export type YarnLeft = Pick<YarnNeed, 'id' | 'grams' | 'metres' | 'parts'>

export interface Left {
  /** Whole motifs that are not made yet, and half motifs and fillers. */
  readonly motifs: number
  readonly others: number
  /** Of a blanket its join points, of other things their fastenings, where something is still to be joined. */
  readonly joins: number
  /** Hours expected for all that is left, and the range in minutes; null where the minutes of a motif are not known. */
  readonly hours: number | null
  readonly minutes: Range | null
  readonly ends: number
  readonly yarns: readonly YarnLeft[]
}

/** How far a yarn goes at the rate at which it was used up so far, or by the plan. */
export interface Forecast {
  readonly yarn: string
  /** Working number of the last motif that it suffices for. */
  readonly lastsTo: number
  /** It does not suffice for one more motif in it; left out where it does, or for all. */
  readonly spent?: true
  /** Then: the working number of that motif. */
  readonly next?: number
  /** It suffices for all that is left, the edging too. */
  readonly enough: boolean
  /** Grams that will be missing at this rate, or left over; one of them is 0. */
  readonly missing: number
  readonly over: number
  /** What is left over is less than the motifs still to be made may differ by; left out where it is more. */
  readonly tight?: true
  /** Or else it is less than one motif takes; left out where it is more. */
  readonly scant?: true
  /** What was used over what the plan says for the same motifs. */
  readonly rate: number
  /**
   * Nobody knows how fast it was used: grams that the plan says go into all that is left. All else follows from its high
   * end, and the rate is 1. Left out where it was weighed.
   */
  readonly plan?: Range
  /** What it follows from: grams at the start, grams weighed again, and how many motifs were made by then. */
  readonly start: number
  readonly left: number
  readonly at: number
}

/** So many pieces of each kind; left out where there is none. */
export type ByKind = Readonly<Partial<Record<'motif' | 'filler' | 'half', number>>>

/** What was made on one day; '' where no day is known. */
export interface DayOfWork {
  readonly day: string
  readonly pieces: number
}

export type JoinedAs = 'joined' | 'fastened' | 'sewn down'

export interface Progress {
  /** Whole motifs that are made, and how many of those are joined. */
  readonly made: number
  readonly joined: number
  /** What becomes of made motifs: joined to each other, fastened to a cord, sewn down on a panel. */
  readonly joinedAs: JoinedAs
  /** Half motifs and fillers that are made. */
  readonly others: number
  readonly edging: boolean
  readonly left: Left
  readonly forecast: readonly Forecast[]
  /** Day by day, the first one first. */
  readonly days: readonly DayOfWork[]
  /**
   * What the pieces are that were made when a yarn was counted or weighed again, by their number; only where there are
   * others than whole motifs.
   */
  readonly kinds?: Readonly<Record<number, ByKind>>
}

/** Ids of the placed pieces that are made, and of those that are joined. */
export interface Marks {
  readonly made: readonly string[]
  readonly joined: readonly string[]
}
