/** What the engine answers about garlands and kits, in the units of the plan: mm, g, m, degrees. */
import type { Point } from './plan'

/** The cord of a garland, in mm and chains; `chains` is null for one that is bought. */
export interface CordPart {
  readonly length: number
  readonly chains: number | null
}

export interface CordAccount extends CordPart {
  /** At each end. */
  readonly ties: CordPart
  /** Both ties and what is between them. */
  readonly whole: CordPart
  readonly yarn: string
  /** Length between the ties under load, where a cord of chains gives. */
  readonly stretched: { readonly low: number; readonly high: number } | null
}

/** What a motif is fastened to a cord by. */
export type FastenedBy = 'petal' | 'corner' | 'place' | 'tip'

/** One thing on the cord, from the left. */
export interface GarlandItem {
  /** The place on the cord that it hangs from, from the top left of the finished size. */
  readonly x: number
  readonly y: number
  /** Degrees clockwise by which the cord turns it; 0 where it hangs straight down. */
  readonly turn: number
  /** Length of cord from the first tie. */
  readonly along: number
  /** Id of the motif, '' for a bead. */
  readonly motif: string
  readonly colourway: string
  /** Name of the bead, '' for a motif. */
  readonly bead: string
  /** Which part of the sequence it is, from 0: its place in the layout's `items`. */
  readonly part: number
  /** The places that it is fastened by, as it hangs, from the top left of the finished size; none for a bead. */
  readonly held: readonly Point[]
  /** Room that it takes along the cord. */
  readonly extent: number
  /** Chains worked since the item before (or since the tie), null for a bought cord. */
  readonly chains: number | null
  /** How it is fastened, in words. */
  readonly words: string
  /** By what a motif is fastened, and the chains of a worked cord between its two places; null for a bead. */
  readonly fastened: { readonly by: FastenedBy; readonly between: number | null } | null
}

export interface SwagAccount {
  readonly count: number
  readonly span: number
  readonly drop: number
  /** The parameter of the catenary; null where the cord is straight. */
  readonly a: number | null
  /** Length of cord in one swag. */
  readonly length: number
  /** Width of the wall: count × span. */
  readonly width: number
}

export interface GarlandAccount {
  /** Chains of a worked cord after the last item, up to the tie; null for a bought one. */
  readonly chainsAfter: number | null
  readonly cord: CordAccount
  readonly items: readonly GarlandItem[]
  readonly swags: SwagAccount | null
  /** Room between neighbours in mm, between edges or centres as the project says. */
  readonly spacing: number
  readonly between: 'edges' | 'centres'
  /** The line of the cord as it hangs, and the points it hangs from, from the top left of the finished size. */
  readonly line: readonly Point[]
  readonly hooks: readonly Point[]
  /** Neighbours that overlap as it hangs, by their places in `items`. */
  readonly collisions: readonly (readonly [number, number])[]
}

export interface BoughtPack {
  readonly grams: number
  readonly price: number | null
  readonly count: number
}

/** What a run of kits takes of one yarn. */
export interface KitYarnRun {
  readonly yarn: string
  /** Wound for the kits themselves: count × grams in one. */
  readonly grams: number
  /** Wound for spares, and lost in winding. */
  readonly spares: number
  readonly loss: number
  /** Packs that go into each bundle as they are; left out where none does, or not the same into each. */
  readonly whole?: { readonly count: number; readonly grams: number }
  /** Grams of each bundle that are wound besides; 0 where it is whole packs alone. */
  readonly wound: number
  /** Balls and other packs to buy for all of this, the cheapest mix; null where no size is known. */
  readonly balls: number | null
  readonly packs: readonly BoughtPack[]
  readonly leftover: number | null
  /** Null where a price is missing. */
  readonly cost: number | null
  /** Bundles, spares among them, whose wound part is joined from what several balls leave; left out where none is. */
  readonly pieced?: number
  /** What is wound or bought follows from a ball band that nobody entered; left out where it does not. */
  readonly assumed?: true
}

export interface KitAccount {
  readonly count: number
  /** Bundles wound in addition to those of the kits. */
  readonly spares: number
  readonly windTo: number
  /** Every portion in whole lengths, or with joined ends. */
  readonly lengths: 'whole' | 'joined'
  readonly perKit: readonly {
    readonly yarn: string
    readonly grams: number
    readonly metres: number | null
    /** The numbers that follow from a ball band which nobody entered; left out where there are none. */
    readonly assumed?: readonly ('grams' | 'metres')[]
  }[]
  readonly run: readonly KitYarnRun[]
  readonly extras: readonly {
    readonly name: string
    readonly perKit: number
    readonly run: number
    readonly price: number | null
    readonly cost: number | null
  }[]
  readonly packaging: number
  /** Cost of the whole run, and of one kit; null where a price is missing. */
  readonly runCost: number | null
  readonly costPerKit: number | null
  /** Before tax, unrounded; null where the cost or the margin does not allow one. */
  readonly price: number | null
  /** What is asked for one, to the smallest coin: beforeTax + tax = withTax. */
  readonly asked: { readonly beforeTax: number; readonly tax: number; readonly withTax: number } | null
  /** Kits that must be sold, at the price that is asked, to get back what the run costs. */
  readonly breakEven: number | null
  /** What is still missing when all are sold, since the price was rounded down; left out where nothing is. */
  readonly shortByRounding?: number
  /** Weight of what is in one kit; null where a part is not known. */
  readonly postageGrams: number | null
  /** What follows from a ball band that nobody entered: all costs and prices, the weight to post; left out where nothing does. */
  readonly assumed?: readonly ('cost' | 'postageGrams')[]
}

/** What the plan of a garland has besides what every plan has. */
export interface GarlandFields {
  /** Left out where nothing can be hung. */
  readonly garland?: GarlandAccount
}
