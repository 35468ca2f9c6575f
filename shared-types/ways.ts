/** Ways to a size: what the engine offers to change so that a blanket comes out as large as was asked for. */
import type { Holds } from './plan'

export const WAY_KINDS = [
  'edging',
  'blocking',
  'joining',
  'gauge',
  'hook',
  'count',
  'round',
  'outline',
] as const
export type WayKind = (typeof WAY_KINDS)[number]

/** A size in mm that was asked for; a side that nobody asked for may be anything. */
export interface WishedSize {
  readonly width?: number
  readonly height?: number
}

/** One field of the project that changes: its path, and what stands there then; without a value it goes. */
export interface FieldEdit {
  readonly at: readonly (string | number)[]
  readonly value?: unknown
}

export interface SizeWay extends Holds {
  /** What to do, for people. */
  readonly change: string
  readonly kinds: readonly WayKind[]
  /** What the hand will feel, where the fabric changes. */
  readonly fabric?: string
  /** mm: the size that the plan has with it. */
  readonly size: { readonly width: number; readonly height: number }
  /** Size minus wish, in mm, of the sides that were asked for. */
  readonly error: WishedSize
  /** Size minus the present one, in mm. */
  readonly difference: { readonly width: number; readonly height: number }
  readonly motifs: number
  /** For a child: how wide across the widest opening is that stays, in mm. */
  readonly opening?: number
  /** Balls that are to be bought with it; left out where none are. */
  readonly buy?: readonly { readonly id: string; readonly balls: number }[]
  /** Grams of yarns that are missing with it and of which no more can be had; left out where none are. */
  readonly missing?: readonly { readonly id: string; readonly grams: number }[]
  /** Grams and balls are without the motifs: what these take of a yarn is not known yet. */
  readonly unweighed?: true
  /** Limits of the colours that it goes beyond: a yarn by grams, a colourway by motifs; left out where none. */
  readonly beyond?: readonly (
    | { readonly yarn: string; readonly grams: number }
    | { readonly colourway: string; readonly motifs: number }
  )[]
  /** Ids of the yarns that the edging is worked in then, where it changes or these do; left out where nothing of it does. */
  readonly edgingIn?: readonly string[]
  /** `difference`: grams more than now, below zero for fewer. */
  readonly yarns: readonly {
    readonly id: string
    readonly grams: number
    readonly difference: number
    readonly assumed?: true
  }[]
  readonly edit: readonly FieldEdit[]
}
