/** What the plan of an appliqué has besides what every plan has. Lengths in mm. */
import type { Point } from './plan'
import type { PanelShape } from './project'

/** The ground of an appliqué, from the top left of its box. */
export interface PanelAccount {
  readonly shape: PanelShape
  /** The edge, closed, clockwise on paper. */
  readonly outline: readonly Point[]
  /** Width of the seam allowance that nothing may enter. */
  readonly allowance: number
  /** What the allowance leaves: one piece, or several where it cuts through a narrow place. */
  readonly inner: readonly (readonly Point[])[]
}

/** Smallest distances of an appliqué. */
export interface Clearances {
  /** From item to item, 0 where they overlap; null for fewer than two. */
  readonly items: number | null
  /** From an item to the panel's edge; below zero by how far one sticks out; null without items. */
  readonly edge: number | null
}

/** Two items of which one lies partly on the other. */
export interface Overlap {
  readonly below: string
  readonly above: string
  /** mm². */
  readonly area: number
}

/** What it takes to sew the items down. */
export interface Stitching {
  /** All outlines together, in mm. */
  readonly outline: number
  /** Sewing thread in m, tails included. */
  readonly thread: number
  /** Tails of thread, two for each item. */
  readonly tails: number
}

/** What the plan of an appliqué has besides what every plan has. */
export interface AppliqueFields {
  /** Left out where there is nothing to lay anything on. */
  readonly panel?: PanelAccount
  readonly clearances: Clearances
  /** Every item from the lowest to the topmost, by id. */
  readonly stacking: readonly string[]
  readonly overlaps: readonly Overlap[]
  readonly stitching: Stitching
}
