/** The account of yarn and edging. Masses in g, yarn lengths in m. */
import type { Range } from './plan'

/** How one weight of a motif was split over its colours where nobody split it: each part is ±25 %. */
export type WeightSplit = 'stitches' | 'areas' | 'evenly'

/** Numbers of a yarn that may follow from a ball band which nobody entered. */
/** What the hours of a work are made of, in minutes (M43). */
export interface TimeParts {
  readonly motifs: number
  /** At points, or along whole sides by their stitches. */
  readonly joins: number
  /** What each join at a point takes, and whether nobody said so; null where all are told by their stitches. */
  readonly eachJoin: { readonly minutes: number; readonly assumed: boolean } | null
  readonly edging: number
  readonly cord: number
  /** Sewing down, of an appliqué. */
  readonly sewing?: number
  readonly ends: number
}

export type YarnNumber = 'grams' | 'metres' | 'balls' | 'onHand' | 'toBuy' | 'leftover' | 'cost'

export interface YarnNeed {
  readonly id: string
  readonly grams: Range
  readonly metres: Range | null
  /** Whole balls for the whole need; null where the ball's weight is unknown. */
  readonly balls: number | null
  /** Grams on hand in all, whether they were weighed or counted in balls. */
  readonly onHand: number
  /** Whole balls to buy after the stash; none of a yarn of which no more can be had. */
  readonly toBuy: number | null
  /** No more of it can be had: the grams that are missing then, by the high end; 0 where it is enough. */
  readonly noMore?: { readonly missing: number }
  /** It was weighed or counted again: what is to be bought is held against what is left to make. */
  readonly again?: true
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
  /**
   * Ids of the motifs in this yarn of which nobody knows how much of it they take: then it is not known how much is
   * needed, its grams are 0 and all that follows from them is null; `parts` has what is known. Left out where there are
   * none.
   */
  readonly lacking?: readonly string[]
}

export interface EdgingRound {
  /** From 1. */
  readonly number: number
  /** The stitch as written in the project's terms; of a written round its words. */
  readonly stitch: string
  readonly stitches: number
  readonly chains: number
  readonly length: number
  readonly metres: number
  /** mm that it adds. */
  readonly height: number
  /** Id of its yarn, or '' where nobody knows it. */
  readonly yarn: string
  /** Of a written round: how often its repeat is worked, along all lines. */
  readonly repeats?: number
  /** Of a plain round along several lines, both ends of what is joined in the round among them: stitches on each. */
  readonly byLine?: readonly number[]
  /** Of a plain round with corners: stitches in each of its `corners`; it says how much a round grows. */
  readonly inCorner?: number
  /**
   * Of a plain round along an edge that goes in and out, in place of its corners: at how many places it has so many
   * stitches more than one in one place (tips), or so many fewer, as they are worked together (dips, below zero).
   */
  readonly bends?: readonly {
    readonly count: number
    readonly more: number
    /** Where all of them stand at corners: which, from 0 on through all lines. */
    readonly corners?: readonly number[]
    /** Where they are: the line, and how far along it the way it is worked, as a share of its length. */
    readonly places?: readonly { readonly line: number; readonly along: number }[]
  }[]
  /** Outward corners, picots in it, and what is worked in it by US key: chains one by one, every leg of a decrease. */
  readonly corners?: number
  /** Only of written rounds. */
  readonly picots?: number
  /** Of a round that bridges the dips: chains after each tip, along each line. */
  readonly gaps?: readonly (readonly number[])[]
  /** Of one along half motifs: stitches after each tip along the straight side that begins there, 0 where there is none. */
  readonly straight?: readonly (readonly number[])[]
  readonly worked?: Readonly<Partial<Record<string, number>>>
}

/** A corner, tip or dip of an edging's line. */
export interface EdgingMark {
  readonly kind: 'corner' | 'tip' | 'dip'
  /** Stitches of the set-up round before the one that stands there. */
  readonly at: number
  /** Where it is along its line the way it is worked, as a share of its length. */
  readonly along: number
  readonly chains: number
}

/**
 * Written rounds along one line of an edging, the way it is worked: with the right side facing a closed edge goes
 * counterclockwise for right-handers, clockwise for left-handers.
 */
export interface EdgingLoop {
  /** Stitches of the first round from mark to mark, where the written rounds are worked into a later one. */
  readonly first?: readonly number[]
  /** Index into `edgingLines`. */
  readonly line: number
  /** Stitches that the written rounds are worked into, and from mark to mark. */
  readonly stitches: number
  readonly stretches: readonly number[]
  readonly marks: readonly EdgingMark[]
  /** The written rounds in words for it, with plain counts. */
  readonly texts: readonly string[]
  /** Stitches that stand at the end of each of them, how often its repeat is worked, and its picots. */
  readonly made: readonly number[]
  readonly repeats: readonly number[]
  readonly picots: readonly number[]
  /** Of a set-up round that bridges the dips: chains after each tip, and in or behind which tip each mark stands. */
  readonly bridged?: {
    readonly gaps: readonly number[]
    /** Stitches along straight sides of half motifs in place of chains. */
    readonly straight?: readonly number[]
    readonly marks: readonly { readonly tip: number; readonly chain: number }[]
  }
}

/** Dips of the edge that a levelling edging fills in one way. */
export interface EdgingDip {
  /** How many there are. */
  readonly count: number
  /** mm, before blocking: from tip to tip, and how deep the edge lies under that line, the most of them all. */
  readonly width: number
  readonly depth: number
  /** The first round from tip to tip: so many stitches of each kind in a row, by US key. */
  readonly work: readonly { readonly stitch: string; readonly count: number }[]
  /** Stitches of each of the rows that fill it before that, from the bottom; none where taller stitches do. */
  readonly rows: readonly number[]
  /** Their stitch, by US key. */
  readonly rowStitch?: string
  /** Deeper in its middle than the tallest stitch reaches, and so narrow there that this closes it from both sides. */
  readonly cleft: boolean
}

export interface EdgingAccount {
  readonly style: string
  /** Closed length of the line that it runs along, in mm before blocking; its lines are the plan's `edgingLines`. */
  readonly length: number
  readonly height: number
  readonly rounds: readonly EdgingRound[]
  readonly yarn: string
  /** Of one that levels: how its first round fills the dips; left out where there are none. */
  readonly dips?: readonly EdgingDip[]
  /** Of an edging with written rounds: how they are worked along each line. */
  readonly loops?: readonly EdgingLoop[]
  /** Of one of plain rounds alone, unless it bridges: the first of them along each line, from corner to corner. */
  readonly plain?: readonly EdgingLoop[]
  /** Stitches that they come out even on: so many, times whatever, plus some, in all or from mark to mark. */
  readonly multiple?: { readonly of: number; readonly plus: number; readonly by: 'stretch' | 'round' }
  /** mm, before blocking: a stitch's width, and heights by US key. */
  readonly gauge?: { readonly width: number; readonly heights: Readonly<Record<string, number>> }
}

/** A yarn of which the motifs may take so much and no more. */
export interface YarnForMotifs {
  readonly id: string
  readonly name: string
  /** Grams that joins, edging, fillers and half motifs leave of what there is. */
  readonly left: number
  /** Grams that one motif takes of it by colourway: with the allowance, and as the high value of its range. */
  readonly each: Readonly<Record<string, number>>
  /** Likewise of the motifs beside the first, in their order. */
  readonly others?: readonly Readonly<Record<string, number>>[]
  /** No more of it can be had: before it goes beyond what there is, all others do. */
  readonly noMore?: true
  /** What is left hangs on the colours too (half motifs, another motif, joins): no filling can be ruled out by it. */
  readonly isShared?: true
}

/** Motifs of a blanket that take another colourway than its pattern gives them, so that limits are kept. */
export interface LeavingOrder {
  readonly motifs: number
  /** The limits that the pattern alone would pass, and that are kept: grams of yarns, and motifs of colourways. */
  readonly yarns: readonly { readonly id: string; readonly most: number }[]
  readonly colourways: readonly { readonly id: string; readonly most: number }[]
}
